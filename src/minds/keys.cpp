#include "minds/keys.hpp"

#include <cmath>

#include "base/numbers.hpp"
#include "minds/pursuit.hpp"

namespace gapsound {

double headingX(const Glimpse& g, int i) { return g.man(i).pos.x - g.spot(i).x + 0.25 * g.man(i).vel.x; }

namespace {

bool isLineman(Group g) { return g == Group::guard || g == Group::center || g == Group::off_tackle; }
bool movesInBackfield(Group g) { return g == Group::fullback || g == Group::tight_end; }

// A puller on his way, or one who has already come a long way across.
bool crossesBehind(const Glimpse& g, int i) {
  const Pose& p = g.man(i);
  const bool has_crossed = std::abs(p.pos.x - g.spot(i).x) > 1.9;
  const bool on_the_way =
      p.engaged == kNobody && p.pos.y < -0.75 && std::abs(p.vel.x) > 1.6 && std::abs(headingX(g, i)) > 0.7;
  return has_crossed || on_the_way;
}

double pullEvidence(const Glimpse& g) {
  double sum = 0.0;
  for (int i = 0; i < kOffense; ++i) {
    if (!crossesBehind(g, i)) continue;
    if (isLineman(g.group(i))) sum += signOf(headingX(g, i));
    if (movesInBackfield(g.group(i))) sum += 0.5 * signOf(headingX(g, i));
  }
  return clamped(sum, -1.0, 1.0);
}

double lineEvidence(const Glimpse& g) {
  double sum = 0.0;
  int n = 0;
  for (int i = 0; i < kOffense; ++i) {
    if (!isLineman(g.group(i)) || crossesBehind(g, i)) continue;
    sum += clamped(headingX(g, i) / 0.7, -1.0, 1.0);
    ++n;
  }
  return n > 0 ? sum / n : 0.0;
}

double keyEvidence(const Glimpse& g, int key) {
  if (key == kNobody || isLineman(g.group(key))) return 0.0;
  const double side = signOf(g.spot(key).x);
  const double inward = -side * headingX(g, key);
  const bool blocks = g.man(key).engaged != kNobody || inward > 0.25;
  return blocks ? side : 0.0;
}

}  // namespace

namespace {

int deepestBack(const Glimpse& g) {
  int best = g.carrier() >= 0 ? g.carrier() : 0;
  double deepest = 0.0;
  for (int i = 0; i < kOffense; ++i)
    if (g.group(i) == Group::back && g.spot(i).y < deepest) {
      best = i;
      deepest = g.spot(i).y;
    }
  return best;
}

}  // namespace

bool pullerSeen(const Glimpse& g) {
  for (int i = 0; i < kOffense; ++i)
    if ((isLineman(g.group(i)) || movesInBackfield(g.group(i))) && crossesBehind(g, i)) return true;
  return false;
}

bool keeperRuns(const Glimpse& g) {
  constexpr double kUpfield = 2.0, kSideways = 3.0;  // yd/s
  constexpr double kApart = 1.5;                     // yd from the back
  if (g.carrier() < 0 || g.group(g.carrier()) != Group::quarterback) return false;
  const Vec2 vel = g.ballVelocity();
  const bool apart = distance(g.ball(), g.place(deepestBack(g))) > kApart;
  return vel.y > kUpfield || (apart && std::abs(vel.x) > kSideways);
}

int watchedBack(const Glimpse& g) {
  const bool past = g.carrier() >= 0 && g.group(g.carrier()) != Group::quarterback;
  return past || keeperRuns(g) ? g.carrier() : deepestBack(g);
}

double evidenceOf(const Glimpse& g, const KeyWeights& w, int key_man) {
  const double back = clamped(headingX(g, watchedBack(g)) / 1.1, -1.0, 1.0);
  return w.back * back + w.pull * pullEvidence(g) + w.line * lineEvidence(g) +
         w.key_man * keyEvidence(g, key_man);
}

void updateRead(const Glimpse& g, const Model& m, double evidence, ReadProgress& progress, Reading& reading) {
  if (g.clock() < progress.due_s) return;
  const double enough = m.read_evidence * (1.0 - ramp(g.clock() - progress.due_s, 0.0, m.read_patience_s));
  if (reading.direction == 0) {
    if (std::abs(evidence) <= enough || evidence == 0.0) return;
    reading.direction = signOf(evidence);
    reading.since_s = g.clock();
    return;
  }
  if (evidence * reading.direction > -m.read_evidence) {
    progress.against_since = -1.0;
    return;
  }
  if (progress.against_since < 0.0) progress.against_since = g.clock();
  if (g.clock() - progress.against_since < m.read_turn_s) return;
  reading.direction = -reading.direction;
  reading.since_s = g.clock();
  progress.against_since = -1.0;
}

namespace {

// The lane between the end and the next body inside him at line depth, edge to edge.
double doorInside(const Glimpse& g, int end, int direction) {
  const double outer = direction * g.man(end).pos.x;
  double inner = -99.0;
  for (int i = 0; i < kMen; ++i) {
    const Pose& p = g.man(i);
    const double x = direction * p.pos.x;
    if (i == end || p.down || x > outer - 0.3 || std::abs(p.pos.y - 0.5) > 2.0 || p.engaged == end) continue;
    if (p.engaged == kNobody) continue;
    inner = x > inner ? x : inner;
  }
  return outer - inner - 0.62;
}

}  // namespace

EndState seenEnd(const Glimpse& g, const Model& m, const TeamPlan::Side& side, Structure structure,
                 int direction) {
  const int end = side.end;
  if (end == kNobody) return EndState::open;
  const Pose& e = g.man(end);
  const double moved_in = direction * (g.spot(end).x + side.end_slant - e.pos.x);
  if (e.engaged == kNobody) {
    if (e.pos.y < m.state_upfield_y) return EndState::upfield;
    if (structure == Structure::box && moved_in > 1.2) return EndState::crossed_inside;
    const bool too_high = e.pos.y < m.state_high_y && moved_in < 0.2;  // nobody has to kick him far
    return structure == Structure::spill && too_high ? EndState::kicked : EndState::open;
  }
  const Pose& b = g.man(e.engaged);
  const double helmet = direction * (b.pos.x - e.pos.x);  // > 0: the blocker has the outside
  const Vec2 from = g.spot(e.engaged);
  const bool came_from_inside = from.y < -2.0 || direction * (from.x - g.spot(end).x) < -2.6;
  if (!came_from_inside) {
    if (moved_in > m.state_washed_yd) return EndState::washed;
    if (helmet > 0.12) return structure == Structure::spill ? EndState::reached : EndState::pinned;
    return EndState::open;
  }
  if (helmet > 0.0) {
    if (structure == Structure::box) return EndState::crossed_inside;
    return helmet > 0.45 ? EndState::logged : EndState::spilled;
  }
  if (structure == Structure::spill) return EndState::kicked;
  return doorInside(g, end, direction) < m.state_door_wide ? EndState::boxed_firm : EndState::boxed_wide;
}

namespace {

constexpr double kHelmet = 0.1, kShoulder = 0.2;  // yd across

/// His blocker stands at least `far` to the run's side of him (side +1) or behind it (-1).
bool isBlockedFrom(const Glimpse& g, const Pose& man, int side, double far) {
  return man.engaged != kNobody && side * (g.man(man.engaged).pos.x - man.pos.x) > far;
}

// Through the line and downhill while the ball was still behind it: he shot, and what came of it.
BackerState shotOf(const Glimpse& g, const Pose& b) {
  constexpr double kThrough = 0.9, kTouch = 1.3, kPast = 2.4;  // yd
  const Vec2 ball = g.ball();
  if (b.engaged != kNobody || b.pos.y > kThrough) return BackerState::reading;
  const double off = distance(ball, b.pos);
  if (off < kTouch && ball.y < kThrough) return BackerState::shot_hit;
  const bool gone_by = b.down || ball.y > b.pos.y + 0.3 || std::abs(ball.x - b.pos.x) > kPast;
  return gone_by && off > kTouch ? BackerState::shot_miss : BackerState::reading;
}

// Inside a lineman who is held there, while the ball goes outside him.
bool isUnderPile(const Glimpse& g, const Pose& b, int tackle, int direction) {
  if (tackle == kNobody || g.man(tackle).engaged == kNobody) return false;
  const Vec2 pile = g.place(tackle);
  constexpr double kNear = 1.8, kOutside = 1.0;  // yd
  return direction * (pile.x - b.pos.x) > 0.2 && b.pos.y < pile.y + kNear &&
         direction * (projectedCrossing(g) - pile.x) > kOutside;
}

}  // namespace

LineState seenLine(const Glimpse& g, const Model& m, int lineman, int direction) {
  const Pose& d = g.man(lineman);
  if (d.pos.y < m.state_penetrated_y) return LineState::penetrated;
  if (d.engaged == kNobody) return LineState::held;
  const double moved = direction * (d.pos.x - g.spot(lineman).x);
  if (d.pos.y - g.spot(lineman).y > m.state_moved_back_yd) return LineState::moved_back;
  if (moved > m.state_crossed_yd && isBlockedFrom(g, d, -direction, kShoulder)) return LineState::crossed_out;
  if (moved < -m.state_crossed_yd) return LineState::crossed_in;
  return isBlockedFrom(g, d, direction, kShoulder) ? LineState::pinned : LineState::held;
}

BackerState seenBacker(const Glimpse& g, const Model& m, const TeamPlan::Side& plan, int direction) {
  if (plan.first == kNobody) return BackerState::reading;
  const Pose& b = g.man(plan.first);
  const double outside_end = plan.end == kNobody ? 0.0 : direction * (b.pos.x - g.man(plan.end).pos.x);
  if (const BackerState shot = shotOf(g, b); shot != BackerState::reading) return shot;
  if (outside_end > m.state_too_wide) return BackerState::too_wide;
  if (isUnderPile(g, b, plan.tackle, direction)) return BackerState::under_pile;
  if (b.engaged != kNobody) {
    if (isBlockedFrom(g, b, direction, kHelmet)) return BackerState::spilled_wrapper;
    return isBlockedFrom(g, b, -direction, kHelmet) ? BackerState::kicked_out : BackerState::boxed_wrapper;
  }
  const double travelled = direction * (b.pos.x - g.spot(plan.first).x);
  if (std::abs(travelled) < 0.6 && b.pos.y > m.state_late_y)
    return ballDepth(g) < m.state_late_depth ? BackerState::late : BackerState::reading;
  return outside_end > 0.0 ? BackerState::over_top : BackerState::inside_fit;
}

ForceState seenForce(const Glimpse& g, const Model& m, const TeamPlan::Side& plan, int direction) {
  if (plan.force == kNobody) return ForceState::reading;
  const Pose& f = g.man(plan.force);
  if (f.engaged != kNobody) {
    const bool receiver = g.group(f.engaged) == Group::receiver;
    const double from = direction * (g.spot(f.engaged).x - g.spot(plan.force).x);
    if (receiver && from > 0.0) return ForceState::cracked;
    return isBlockedFrom(g, f, direction, kHelmet) ? ForceState::logged : ForceState::kicked;
  }
  if (f.pos.y < m.state_force_deep_y) return ForceState::deep;
  const bool inside = direction * (projectedCrossing(g) - g.place(plan.force).x) > m.state_force_lost;
  if (inside && f.pos.y < m.state_late_y) return ForceState::inside_lost;
  return f.pos.y < m.state_late_y ? ForceState::set : ForceState::reading;
}

}  // namespace gapsound
