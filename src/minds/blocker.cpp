#include <algorithm>
#include <cmath>

#include "athlete/reach.hpp"
#include "base/numbers.hpp"
#include "minds/offense.hpp"
#include "minds/pursuit.hpp"
#include "minds/traffic.hpp"

namespace gapsound {
namespace {

constexpr double kNotAgain = 1.2;  // s, for which he leaves a man alone whom he has given to a mate

const BlockJob& jobOf(const AttackerView& v) {
  return v.sheet.jobs[static_cast<std::size_t>(v.glimpse.selfIndex())];
}

bool leadsThrough(BlockKind k) {
  return k == BlockKind::wrap || k == BlockKind::lead || k == BlockKind::insert;
}
bool kicks(BlockKind k) { return k == BlockKind::kick || k == BlockKind::log; }
bool shields(BlockKind k) { return k == BlockKind::hinge || k == BlockKind::stalk; }
bool walls(BlockKind k) {
  return k == BlockKind::hinge || k == BlockKind::cutoff || k == BlockKind::scoop || k == BlockKind::wall;
}

bool isBehindLine(const AttackerView& v) { return v.glimpse.self().pos.y < -0.4; }

bool runsFree(const AttackerView& v, const BlockJob& job) {
  return job.pull != PullStyle::none || leadsThrough(job.kind) || kicks(job.kind) || walls(job.kind) ||
         v.glimpse.self().pos.y < -1.9 || job.kind == BlockKind::stalk || job.kind == BlockKind::arc ||
         job.kind == BlockKind::crack || job.kind == BlockKind::climb;
}

bool isOnHim(const AttackerView& v, const BlockJob& job, int target) {
  return !runsFree(v, job) && target != kNobody &&
         distance(v.glimpse.self().pos, v.glimpse.place(target)) < v.model.fire_within_yd;
}

double paceOf(const AttackerView& v, const BlockJob& job, int target) {
  if (job.pull != PullStyle::none) return v.model.pull_pace * v.body.top_speed;
  if (job.kind == BlockKind::stalk || job.kind == BlockKind::arc || job.kind == BlockKind::crack)
    return 0.6 * v.body.top_speed;
  if (leadsThrough(job.kind) || kicks(job.kind) || v.glimpse.self().pos.y < -1.9)
    return v.model.lead_pace * v.body.top_speed;
  const Glimpse& g = v.glimpse;
  const bool on_him = target != kNobody && distance(g.self().pos, g.place(target)) < v.model.fire_within_yd;
  return (on_him ? v.model.fire_pace : v.model.climb_pace) * v.body.top_speed;
}

Meeting meet(const AttackerView& v, int man, double pace) {
  const Glimpse& g = v.glimpse;
  return firstMeeting(g.self().pos, g.self().vel, pace, g.place(man), g.man(man).vel, 0.85);
}

// Where he puts his helmet against this man: between him and the ball's path, by the kind of block.
Vec2 aimAt(const AttackerView& v, const BlockJob& job, int man, Vec2 met) {
  const Glimpse& g = v.glimpse;
  const Vec2 me = g.self().pos;
  if (kicks(job.kind)) {
    const bool inside = g.place(man).x < me.x + 0.45 && distance(me, g.place(man)) < v.model.log_sees_yd;
    if (job.kind == BlockKind::log || (job.may_log && inside)) return met + Vec2{0.45, -0.1};
    return met + Vec2{-v.model.kick_inside_yd, -0.1};
  }
  if (leadsThrough(job.kind)) return met + 0.25 * unit(Vec2{aimNow(v), 0.0} - met);
  if (walls(job.kind)) return met + 0.45 * unit(Vec2{v.sheet.run.aim_x, -1.0} - met);
  if (job.kind == BlockKind::reach) return met + Vec2{0.45, 0.0};
  if (job.kind == BlockKind::base || job.kind == BlockKind::combo)
    return met + Vec2{v.model.zone_head_yd, -0.1};
  if (job.kind == BlockKind::stalk) return met + 0.7 * unit(backPlace(g) - met);
  if (man == job.climb_to || job.kind == BlockKind::climb)
    return met + v.model.climb_head_yd * unit(Vec2{v.sheet.run.aim_x, 0.5} - met);
  return met;
}

bool mateHas(const AttackerView& v, int man) {
  const Glimpse& g = v.glimpse;
  for (int i = 0; i < kOffense; ++i) {
    if (i == g.selfIndex() || i == jobOf(v).partner) continue;
    if (g.man(i).engaged == man && !g.man(i).down) return true;
  }
  return false;
}

// A nearer mate who starts for this man and has nobody yet.
bool mateNearer(const AttackerView& v, int man, double own) {
  const Glimpse& g = v.glimpse;
  for (int i = 0; i < kOffense; ++i) {
    if (i == g.selfIndex() || i == v.sheet.carrier || i == v.sheet.passer || g.man(i).engaged != kNobody)
      continue;
    if (distance(g.place(i), g.place(man)) < own && !g.man(i).down) return true;
  }
  return false;
}

int bestTarget(const AttackerView& v, const BlockerMemory& memory) {
  const Glimpse& g = v.glimpse;
  const Vec2 ball = backPlace(g);
  int best = kNobody;
  double least = 2.4;
  for (int d = kOffense; d < kMen; ++d) {
    if (g.man(d).down || mateHas(v, d) || (d == memory.left_man && g.clock() < memory.left_until_s)) continue;
    const Meeting m = meet(v, d, 0.75 * v.body.top_speed);
    double cost = m.t + 0.12 * distance(g.place(d), ball);
    if (g.place(d).y < ball.y - 1.0) cost += 1.5;
    if (mateNearer(v, d, distance(g.self().pos, g.place(d)))) cost += 0.6;
    if (d == jobOf(v).climb_to) cost -= 0.3;
    if (cost < least) {
      least = cost;
      best = d;
    }
  }
  return best;
}

bool targetIsLost(const AttackerView& v, const BlockerMemory& memory) {
  const Glimpse& g = v.glimpse;
  if (memory.target == kNobody) return true;
  if (g.man(memory.target).down) return true;
  const bool shared = g.man(memory.target).engaged != kNobody && mateHas(v, memory.target);
  if (shared) return true;
  const bool own_job = memory.target == jobOf(v).target;
  const bool on_his_way = g.clock() < 1.2 || (jobOf(v).pull != PullStyle::none && !memory.turned_up) ||
                          (leadsThrough(jobOf(v).kind) && isBehindLine(v));
  if (own_job && on_his_way) return false;
  const double t = meet(v, memory.target, 0.8 * v.body.top_speed).t;
  const bool behind = g.place(memory.target).y < g.self().pos.y - 0.9 && jobOf(v).pull == PullStyle::none &&
                      g.man(memory.target).vel.y < -1.0;
  return t > 1.5 || behind;
}

// The man of a double slants out of his reach into the mate: the mate takes him, he goes up.
bool passesOff(const AttackerView& v, BlockerMemory& memory) {
  const Glimpse& g = v.glimpse;
  const BlockJob& job = jobOf(v);
  if (job.kind != BlockKind::combo || job.partner == kNobody || memory.target != job.target) return false;
  if (g.man(job.partner).engaged != memory.target) return false;
  if (distance(g.self().pos, g.place(memory.target)) < v.model.pass_off_yd) return false;
  memory.left_man = memory.target;
  memory.left_until_s = g.clock() + kNotAgain;
  return true;
}

void reconsider(const AttackerView& v, BlockerMemory& memory) {
  const Glimpse& g = v.glimpse;
  if (g.clock() < memory.next_look_s) return;
  memory.next_look_s = g.clock() + 0.16;
  if (g.clock() < 0.35 || !(passesOff(v, memory) || targetIsLost(v, memory))) return;
  const int climb = jobOf(v).climb_to;
  if (memory.target != climb && climb != kNobody && !g.man(climb).down && !mateHas(v, climb) &&
      meet(v, climb, 0.8 * v.body.top_speed).t < 1.6) {
    memory.target = climb;
    return;
  }
  const int next = bestTarget(v, memory);
  if (next != kNobody || !leadsThrough(jobOf(v).kind))
    memory.target = next;  // who leads keeps an old man for none
}

// The wrapper turns up through the door, or tight round it when it is shut.
Vec2 wrapGate(const AttackerView& v) {
  const SeenDoor door = doorOf(v);
  if (door.shut) return {door.outer + v.model.wrap_round_yd, -0.2};
  const ReadJob& read = v.sheet.read;  // on a sweep with a read he leads the quarterback inside
  const bool for_keeper = read.who != kNobody && read.keeps_if_wide;
  return {(for_keeper ? read.keep_aim_x : aimNow(v)) + 0.2, -0.2};
}

// Through an open door he comes square, his speed across gone when he is there; round a shut one he runs on.
Vec2 intoDoor(const AttackerView& v, Vec2 gate, double pace) {
  const Vec2 way = gate - v.glimpse.self().pos;
  const Vec2 straight = pace * unit(way);
  const double across = std::sqrt(2.0 * v.body.lateral * std::abs(way.x));
  if (across > std::abs(straight.x) || doorOf(v).shut) return straight;
  return {signOf(way.x) * across, std::sqrt(pace * pace - across * across)};
}

// A pass set: two steps back, hands up. Past: a step away from the man left to the trap before he climbs.
bool shows(const AttackerView& v, const BlockerMemory& memory, Intent& intent) {
  const Glimpse& g = v.glimpse;
  const Show show = jobOf(v).show;
  const double since = g.clock() - memory.start_s;
  if (show == Show::none || since > (show == Show::pass_set ? v.model.show_set_s : v.model.show_past_s))
    return false;
  const double x = g.spot(g.selfIndex()).x;
  const int left = jobOf(v).spares;
  const double away = left == kNobody ? signOf(x) : signOf(x - g.spot(left).x);
  intent.want = show == Show::pass_set ? Vec2{0.3 * signOf(x), -1.8} : Vec2{2.2 * away, 1.2};
  intent.face = {0.0, 1.0};
  return true;
}

// A fake as with the ball: wide and shallow. A man in motion runs on at his speed.
Intent runFake(const AttackerView& v) {
  Intent intent;
  const double upfield = v.glimpse.self().pos.y < -3.0 ? 0.3 : 0.0;
  intent.want = unit(Vec2{static_cast<double>(jobOf(v).fake_side), upfield}) * (0.6 * v.body.top_speed);
  intent.face = unit(intent.want);
  return intent;
}

// Pullers run flat behind the line, then turn up a good two yards before they get where they are going.
bool onPullPath(const AttackerView& v, BlockerMemory& memory, Intent& intent) {
  const Glimpse& g = v.glimpse;
  const BlockJob& job = jobOf(v);
  if (job.pull == PullStyle::none || memory.turned_up) return false;
  const double goal_x =
      kicks(job.kind) && memory.target != kNobody ? g.place(memory.target).x - 0.4 : wrapGate(v).x;
  const double turn_x = goal_x - (kicks(job.kind) ? v.model.kick_turn_yd : v.model.wrap_turn_yd);
  const Vec2 me = g.self().pos;
  if (me.x >= turn_x) {
    memory.turned_up = true;
    return false;
  }
  const double y = -(v.model.pull_depth + job.pull_depth);
  const double to_go = std::max(turn_x - me.x, 0.8);
  const bool needs_depth = me.y - y > v.model.pull_bucket_yd;  // first a step back, out of the wash
  intent.want = paceOf(v, job, memory.target) *
                unit(Vec2{needs_depth ? std::min(to_go, 0.8) : to_go, 1.6 * (y - me.y)});
  intent.face = unit(intent.want + Vec2{0.0, 2.0});
  intent.takes_any = true;
  return true;
}

// A man who leads runs to the hole first; on a zone run he has none and goes straight at his man.
bool makesForGate(const AttackerView& v, const BlockJob& job, int target) {
  const bool zone_lead = job.kind == BlockKind::lead && v.sheet.run.bends;
  const bool close = distance(v.glimpse.place(target), v.glimpse.self().pos) < v.model.wrap_near_yd;
  return leadsThrough(job.kind) && !zone_lead && isBehindLine(v) && !close;
}

// On the way up he goes round pairs; who leaves a double of a gap run goes up off the man they have driven.
bool climbsRound(const AttackerView& v, const BlockJob& job, int target) {
  return job.kind == BlockKind::climb || (v.sheet.run.bends && target == job.climb_to);
}

// At a man on his head he takes short steps, with power under him; at one beside him and in space he runs.
Intent runAt(const AttackerView& v, BlockerMemory& memory) {
  const Glimpse& g = v.glimpse;
  const BlockJob& job = jobOf(v);
  Intent intent;
  intent.hands_on = memory.target;
  intent.takes_any = true;
  if (onPullPath(v, memory, intent)) return intent;
  const double pace =
      memory.turned_up ? v.model.turn_up_pace * v.body.top_speed : paceOf(v, job, memory.target);
  const Vec2 me = g.self().pos;
  if (memory.target == kNobody) {
    intent.want = Vec2{0.6 * signOf(aimNow(v) - me.x), 2.2};
    return intent;
  }
  const Meeting met = meet(v, memory.target, pace);
  const bool to_gate = makesForGate(v, job, memory.target);
  const Vec2 aim = to_gate ? wrapGate(v) : aimAt(v, job, memory.target, met.point);
  intent.want = to_gate && memory.turned_up ? intoDoor(v, aim, pace) : pace * unit(aim - me);
  if (climbsRound(v, job, memory.target)) intent.want = roundTraffic(g, v.model, intent.want);
  if (isOnHim(v, job, memory.target)) {
    const double beside = std::max(std::abs(g.place(memory.target).x - me.x), std::abs(met.point.x - me.x));
    intent.want.y = std::min(intent.want.y, v.model.fire_forward + v.model.fire_slant * beside);
  }
  intent.face = unit(g.place(memory.target) - me);
  return intent;
}

// Off to the backer as soon as his hands are on, whether the mate can hold the man alone or not.
bool climbsEarly(const AttackerView& v, BlockerMemory& memory) {
  for (const Fault& fault : v.faults) {
    if (fault.kind != FaultKind::early_climb) continue;
    memory.erred |= 1U << static_cast<unsigned>(fault.kind);
    return true;
  }
  return false;
}

bool climbs(const AttackerView& v, BlockerMemory& memory) {
  const Glimpse& g = v.glimpse;
  const BlockJob& job = jobOf(v);
  if (!job.leaves || job.climb_to == kNobody || memory.touched_s < 0.0) return false;
  if (job.partner == kNobody || g.man(job.partner).engaged != g.self().engaged) return false;
  if (g.man(job.climb_to).down || mateHas(v, job.climb_to)) return false;
  if (climbsEarly(v, memory)) return true;
  const double held = g.clock() - memory.touched_s;
  if (held < v.model.climb_hold_s) return false;
  const bool zone = v.sheet.run.bends;
  const double level = zone ? v.model.climb_level_zone : v.model.climb_level_gap;
  return g.place(job.climb_to).y < level ||
         g.clock() > (zone ? v.model.climb_latest_zone : v.model.climb_latest_gap);
}

Intent holdBlock(const AttackerView& v, BlockerMemory& memory) {
  const Glimpse& g = v.glimpse;
  const BlockJob& job = jobOf(v);
  Intent intent;
  if (memory.touched_s < 0.0) memory.touched_s = g.clock();
  const int man = g.self().engaged;
  intent.hands_on = man;
  intent.face = unit(g.place(man) - g.self().pos);
  if (climbs(v, memory)) {
    memory.left_man = man;
    memory.left_until_s = g.clock() + kNotAgain;
    memory.target = job.climb_to;
    memory.touched_s = -1.0;
    intent.lets_go = true;
    intent.hands_on = memory.target;
    intent.want = paceOf(v, job, memory.target) * unit(g.place(memory.target) - g.self().pos);
    return intent;
  }
  if (kicks(job.kind)) intent.drive = Drive::kick_out;
  if (shields(job.kind)) intent.drive = Drive::shield;
  if (job.partner != kNobody && g.man(job.partner).engaged == man) {
    intent.drive = Drive::double_team;
    intent.stand = g.spot(g.selfIndex()).x < g.spot(job.partner).x ? -1.0 : 1.0;
  }
  return intent;
}

}  // namespace

Intent decideBlocker(const AttackerView& v, BlockerMemory& memory) {
  const Glimpse& g = v.glimpse;
  if (g.clock() < memory.start_s && jobOf(v).kind != BlockKind::fake) return {};
  if (g.self().engaged != kNobody) return holdBlock(v, memory);
  if (jobOf(v).kind == BlockKind::fake) return runFake(v);
  Intent shown;
  if (shows(v, memory, shown)) return shown;
  memory.touched_s = -1.0;
  reconsider(v, memory);
  return runAt(v, memory);
}

PlaySheet playSheetOf(const Setup& setup) {
  PlaySheet sheet;
  for (int i = 0; i < kOffense; ++i) {
    const BlockJob& job = setup.men[static_cast<std::size_t>(i)].block;
    sheet.jobs[static_cast<std::size_t>(i)] = job;
    if (kicks(job.kind)) sheet.kicker = i;
    if (leadsThrough(job.kind)) sheet.wrapper = i;
  }
  sheet.run = setup.run;
  sheet.read = setup.read;
  sheet.carrier = setup.carrier;
  sheet.passer = setup.passer;
  return sheet;
}

}  // namespace gapsound
