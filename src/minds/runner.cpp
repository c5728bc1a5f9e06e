#include <algorithm>
#include <array>
#include <cmath>

#include "athlete/reach.hpp"
#include "base/numbers.hpp"
#include "minds/offense.hpp"
#include "minds/pursuit.hpp"

namespace gapsound {
namespace {

// A way to go: a straight leg, then (behind the line) a bend upfield at `corner`.
struct Way {
  Vec2 first;       // unit
  double corner_s;  // yards along the first leg to the bend
  Vec2 second;      // unit
  double speed;     // yd/s
  double delay_s;   // price of the cut
};

Vec2 along(const Way& w, Vec2 from, double t) {
  const double s = w.speed * std::max(t - w.delay_s, 0.0);
  if (s <= w.corner_s) return from + s * w.first;
  return from + w.corner_s * w.first + (s - w.corner_s) * w.second;
}

// The ground a defender can reach by each sampled time: a disc.
struct Threat {
  std::array<Vec2, ReachSamples::kNear> centre;
  std::array<double, ReachSamples::kNear> radius2;
};

struct Threats {
  std::array<Threat, kMen - kOffense> of;
  std::size_t count = 0;
};

bool screened(const AttackerView& v, int d) {
  const Glimpse& g = v.glimpse;
  const Vec2 ball = g.self().pos;
  for (int i = 0; i < kOffense; ++i) {
    if (i == g.selfIndex() || i == v.sheet.passer || g.man(i).engaged != kNobody || g.man(i).down) continue;
    const Vec2 mate = g.place(i);
    const double gap = distance(mate, g.place(d));
    const bool his = v.sheet.jobs[static_cast<std::size_t>(i)].target == d;
    if (his && gap < 4.0) return true;
    if (gap < 1.9 && dot(mate - g.place(d), ball - g.place(d)) > 0.0) return true;
  }
  return false;
}

Threat blockedThreat(const Model& m, Vec2 place, Vec2 vel) {
  const ReachSamples& s = reachSamples();
  Threat t;
  for (std::size_t k = 0; k < ReachSamples::kNear; ++k) {
    const double r = m.run_blocked_reach + m.run_blocked_growth * std::max(s.t[k] - 0.6, 0.0);
    t.centre[k] = place + std::min(s.t[k], 0.5) * vel;
    t.radius2[k] = r * r;
  }
  return t;
}

Threat freeThreat(Vec2 place, Vec2 vel, double start_s) {
  constexpr double kTop = 0.85 * 9.5;  // yd/s
  const ReachSamples& s = reachSamples();
  Threat t;
  for (std::size_t k = 0; k < ReachSamples::kNear; ++k) {
    const double late = std::max(s.t[k] - start_s, 0.0);
    const double share = s.t[k] > 0.0 ? late / s.t[k] : 0.0;
    const double r = 0.85 + kTop * s.reach[k] * share * share;
    t.centre[k] = place + s.carry[k] * vel;
    t.radius2[k] = r * r;
  }
  return t;
}

Threats threatsSeen(const AttackerView& v) {
  const Glimpse& g = v.glimpse;
  Threats all;
  for (int d = kOffense; d < kMen; ++d) {
    const Pose& man = g.man(d);
    if (man.down) continue;
    all.of[all.count++] = man.engaged != kNobody
                              ? blockedThreat(v.model, g.place(d), man.vel)
                              : freeThreat(g.place(d), man.vel, screened(v, d) ? v.model.run_screen_s : 0.0);
  }
  return all;
}

bool reaches(const Threat& t, Vec2 p, std::size_t k) {
  const Vec2 off = p - t.centre[k];
  return dot(off, off) <= t.radius2[k];
}

struct Rating {
  double value = -99.0;
  double free_s = 0.0;
  double contact_y = 0.0;
};

double matesInWay(const AttackerView& v, const Way& w) {
  const Glimpse& g = v.glimpse;
  double cost = 0.0;
  for (int i = 0; i < kOffense; ++i) {
    if (i == g.selfIndex() || i == v.sheet.passer) continue;
    const Vec2 mate = g.place(i);
    for (const double t : {0.3, 0.6, 0.9}) {
      const Vec2 p = along(w, g.self().pos, t);
      const Vec2 q = mate + t * g.man(i).vel;
      if (dot(p - q, p - q) < 0.36) {
        cost = std::max(cost, v.model.run_mate_cost * (1.4 - t));
        break;
      }
    }
  }
  return cost;
}

Rating rate(const AttackerView& v, const Threats& threats, const Way& w) {
  const ReachSamples& s = reachSamples();
  const Vec2 from = v.glimpse.self().pos;
  Rating r;
  for (std::size_t k = 0; k < ReachSamples::kNear; ++k) {
    const Vec2 p = along(w, from, s.t[k]);
    bool met = false;
    for (std::size_t i = 0; i < threats.count && !met; ++i) met = reaches(threats.of[i], p, k);
    r.contact_y = p.y;
    r.free_s = s.t[k];
    if (met) break;
  }
  r.value = r.contact_y + (r.free_s > 1.5 ? 1.5 : 0.0) - matesInWay(v, w);
  return r;
}

double cutDelay(const AttackerView& v, Vec2 d, double speed) {
  return v.model.run_cut_cost * length(v.glimpse.self().vel - speed * d) / v.body.brake;
}

void taste(const AttackerView& v, RunnerMemory& memory) {
  if (v.glimpse.clock() < memory.bias_until_s) return;
  memory.bias = memory.luck.normal();
  memory.bias_until_s = v.glimpse.clock() + 0.25;
}

constexpr int kCrossings = 25;
double crossingX(int k) { return -6.0 + 0.625 * k; }

/// 1 at the aim, falling with the distance of each crossing from it.
std::array<double, kCrossings> nearness(double aim) {
  std::array<double, kCrossings> near{};
  for (int k = 0; k < kCrossings; ++k) {
    const double off = crossingX(k) - aim;
    near[static_cast<std::size_t>(k)] = fixedExp(-off * off / 8.0);
  }
  return near;
}

Way wayToLine(const AttackerView& v, double x) {
  const Vec2 me = v.glimpse.self().pos;
  const Vec2 corner{x, std::max(0.9, me.y + 0.5)};
  const double cruise = v.model.run_cruise * v.body.top_speed;
  Way w;
  w.first = unit(corner - me);
  w.corner_s = distance(me, corner);
  w.second = unit(Vec2{0.25 * w.first.x, 1.0});
  w.speed = 0.5 * (length(v.glimpse.self().vel) + cruise);
  w.delay_s = cutDelay(v, w.first, w.speed);
  return w;
}

// How hard he presses toward his aim: harder far from the line, less once that lane is seen to be shut.
double pressOf(const AttackerView& v, double at_aim) {
  const Model& m = v.model;
  const double depth = std::max(-v.glimpse.self().pos.y - 1.5, 0.0);
  const double open = ramp(at_aim, m.run_shut_y, m.run_shut_y + 1.5);
  return (m.run_press + m.run_press_far * depth) * (m.run_press_shut + (1.0 - m.run_press_shut) * open);
}

void chooseLane(const AttackerView& v, RunnerMemory& memory) {
  const Model& m = v.model;
  const Threats threats = threatsSeen(v);
  const double aim = aimNow(v);
  const double press = pressOf(v, rate(v, threats, wayToLine(v, aim)).contact_y);
  const auto near_aim = nearness(aim);
  double best = -999.0;
  double best_x = memory.choice_x;
  for (int k = 0; k < kCrossings; ++k) {
    const double x = crossingX(k);
    const Rating r = rate(v, threats, wayToLine(v, x));
    const double off = x - aim;
    double value = r.value + m.run_aim_bonus * near_aim[static_cast<std::size_t>(k)] - press * std::abs(off);
    if (memory.chosen) value -= m.run_change_cost * std::min(std::abs(x - memory.choice_x), 2.0);
    value += m.run_taste * memory.bias * (off > 0.0 ? 1.0 : -1.0);
    if (value > best) {
      best = value;
      best_x = x;
      memory.free_s = r.free_s;
    }
  }
  memory.choice_x = best_x;
  memory.chosen = true;
}

constexpr int kHeadings = 13;

void chooseHeading(const AttackerView& v, RunnerMemory& memory) {
  const Model& m = v.model;
  const Threats threats = threatsSeen(v);
  double best = -999.0;
  Vec2 chosen = memory.heading;
  for (int k = 0; k < kHeadings; ++k) {
    const int step = k - kHeadings / 2;
    const double angle = step * 0.21;  // +-1.26 rad from straight upfield
    const Vec2 cs = fixedDirection(angle);
    const Vec2 d{cs.y, cs.x};
    Way w{d, 99.0, d, 0.5 * (length(v.glimpse.self().vel) + 0.9 * v.body.top_speed), 0.0};
    w.delay_s = cutDelay(v, d, w.speed);
    const Rating r = rate(v, threats, w);
    const double value =
        r.value - m.run_change_cost * length(d - memory.heading) + m.run_taste * memory.bias * d.x;
    if (value > best) {
      best = value;
      chosen = d;
      memory.free_s = r.free_s;
    }
  }
  memory.heading = chosen;
}

// He does not outrun his lead blocker: he gets to the line when the block is about to be made.
double patientSpeed(const AttackerView& v, double speed) {
  const Glimpse& g = v.glimpse;
  const int lead = v.sheet.wrapper;
  if (!v.sheet.run.patient || lead == kNobody || g.man(lead).engaged != kNobody || g.man(lead).down)
    return speed;
  const int man = v.sheet.jobs[static_cast<std::size_t>(lead)].target;
  if (man == kNobody || g.place(lead).y > g.place(man).y) return speed;
  const double meets = firstMeeting(g.place(lead), g.man(lead).vel, v.model.patience_lead_yps, g.place(man),
                                    g.man(man).vel, 0.95)
                           .t;
  if (meets >= kNever) return speed;
  const double in_time = std::max(-g.self().pos.y, 0.0) / std::max(meets - v.model.patience_early_s, 0.1);
  return std::min(speed, std::max(in_time, v.model.patience_least_yps));
}

// He waits until an even, brisk acceleration brings him to the mesh on time, running.
double paceToMesh(const Model& m, double way, double left, double speed) {
  const double acceleration = 2.0 * (way - speed * left) / (left * left);
  if (speed < 0.6 && acceleration < m.back_burst) return 0.3;
  return speed + 1.3 * m.loco_response_s * acceleration;
}

}  // namespace

Intent decideApproach(const AttackerView& v, RunnerMemory& memory) {
  const Glimpse& g = v.glimpse;
  const BackJob& run = v.sheet.run;
  Intent intent;
  if (g.clock() < memory.start_s) return intent;
  const int legs = static_cast<int>(run.steps.size());
  const Vec2 me = g.self().pos;
  if (memory.leg < legs && distance(me, run.steps[static_cast<std::size_t>(memory.leg)]) < 0.45) ++memory.leg;
  Vec2 goal = memory.leg < legs ? run.steps[static_cast<std::size_t>(memory.leg)] : run.mesh;
  double way = distance(me, goal);
  if (memory.leg < legs) way += distance(goal, run.mesh);
  const double left = run.mesh_s - g.clock();
  const double pace = left > 0.05 ? paceToMesh(v.model, way, left, length(g.self().vel)) : v.model.mesh_pace;
  if (distance(me, run.mesh) < 0.5 || left < 0.0)
    goal = Vec2{run.aim_x, 0.0};                                               // runs on through the exchange
  if (v.sheet.read.who != kNobody && me.y > -1.5) goal = me + Vec2{0.0, 3.0};  // and on with the fake
  intent.want = clamped(pace, 0.3, v.model.mesh_pace) * unit(goal - me);
  intent.face = unit(intent.want + Vec2{0.0, 3.0});
  return intent;
}

Intent decideRunner(const AttackerView& v, RunnerMemory& memory) {
  const Glimpse& g = v.glimpse;
  const Model& m = v.model;
  const Vec2 me = g.self().pos;
  const bool behind = me.y < -0.4;
  taste(v, memory);
  if (g.clock() >= memory.next_look_s) {
    memory.next_look_s = g.clock() + 0.07;
    if (behind)
      chooseLane(v, memory);
    else
      chooseHeading(v, memory);
  }
  const Vec2 d = behind ? wayToLine(v, memory.choice_x).first : memory.heading;
  if (behind) memory.heading = d;
  const double share =
      behind
          ? clamped(m.run_pace_base + m.run_pace_daylight * memory.free_s, m.run_pace_least, m.run_pace_most)
          : clamped(m.run_open_base + m.run_pace_daylight * memory.free_s, m.run_pace_least, m.run_open_most);
  const double speed = share * v.body.top_speed;
  Intent intent;
  intent.want = (behind ? patientSpeed(v, speed) : speed) * d;
  intent.face = unit(d + Vec2{0.0, 0.4});
  intent.push = d;
  return intent;
}

}  // namespace gapsound
