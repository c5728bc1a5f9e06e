#include <algorithm>
#include <cmath>

#include "athlete/reach.hpp"
#include "base/numbers.hpp"
#include "minds/defender.hpp"
#include "minds/keys.hpp"
#include "minds/pursuit.hpp"

namespace gapsound {
namespace {

// Off the ball: a burst toward his gap until somebody is on him.
Intent fireOut(const DefenderView& v, const DefenderMemory& memory, Vec2 aim) {
  const Glimpse& g = v.glimpse;
  Intent intent;
  intent.want = v.model.line_get_off * memory.get_off * unit(aim - g.self().pos, {0.0, -1.0});
  intent.face = unit(Vec2{0.35 * signOf(aim.x - g.self().pos.x), -1.0});
  intent.push = unit(aim - g.self().pos, {0.0, -1.0});
  return intent;
}

Vec2 gapAim(const DefenderView& v) { return {v.job.gap_x + v.job.slant_x, -0.6}; }

bool ballIsNear(const DefenderView& v, double range) {
  return distance(backPlace(v.glimpse), v.glimpse.self().pos) < range;
}

// A blocker coming from the inside behind the line: the man who means to kick the end out.
int kickerComing(const Glimpse& g, int side) {
  int best = kNobody;
  double nearest = 5.0;
  for (int i = 0; i < kOffense; ++i) {
    const Pose& p = g.man(i);
    if (i == g.carrier() || p.engaged != kNobody || p.down || p.pos.y > 0.3) continue;
    if (i == watchedBack(g)) continue;
    const Vec2 to_me = g.self().pos - g.place(i);
    if (side * to_me.x < -0.2 || side * p.vel.x < 1.2) continue;
    const double d = length(to_me);
    if (d < nearest) {
      nearest = d;
      best = i;
    }
  }
  return best;
}

// Outermost body of the pile inside the end: where his squeeze stops.
double pileEdge(const Glimpse& g, int side, double outer) {
  double edge = -99.0;
  for (int i = 0; i < kMen; ++i) {
    const Pose& p = g.man(i);
    const double x = side * g.place(i).x;
    if (i == g.selfIndex() || i == g.carrier() || p.engaged == kNobody || p.engaged == g.selfIndex())
      continue;
    if (x < outer - 0.4 && std::abs(p.pos.y - 0.2) < 2.0) edge = std::max(edge, x);
  }
  return edge;
}

struct EdgePath {
  Vec2 goal;  // mirrored: x toward his own side positive
  double speed = 4.0;
};

// Spill: get across the kicker's inside half at the line. Box: keep outside half, one yard deep at most.
EdgePath meetKicker(const DefenderView& v, int kicker, int side, double pile) {
  const Glimpse& g = v.glimpse;
  const Vec2 at{side * g.place(kicker).x, g.place(kicker).y};
  const Vec2 vel{side * g.man(kicker).vel.x, g.man(kicker).vel.y};
  const double t = std::min(std::max(-0.5 - at.y, 0.0) / std::max(vel.y, 1.5), 0.7);
  const double met_x = at.x + vel.x * t;
  const double near = distance(g.place(kicker), g.self().pos);
  const double spot = side * g.spot(g.selfIndex()).x;
  EdgePath path;
  if (structureFor(v.job, side) == Structure::spill) {
    path.goal = {
        std::max(pile + v.model.edge_pile_yd, std::min(met_x - v.model.edge_spill_inside, spot - 0.4)), -0.3};
    path.speed = v.model.edge_squeeze * v.body.top_speed;
    if (near < 3.0 && at.x < side * g.self().pos.x) {
      path.goal = at + 0.35 * vel + Vec2{-v.model.edge_spill_rush, 0.25};
      path.speed = 0.8 * v.body.top_speed;
    }
  } else {
    path.goal = {clamped(met_x + 0.45, spot - 0.7, spot + 0.2), -0.25};
    path.speed = v.model.edge_squeeze * v.body.top_speed;
    if (near < 2.2) path.goal = at + 0.3 * vel + Vec2{0.55, 0.15};
  }
  return path;
}

// Mistakes laid on an end on purpose: he goes to the wrong place, contact does the rest.
bool faultyPath(const DefenderView& v, DefenderMemory& memory, int side, EdgePath& path) {
  const double spot = side * v.glimpse.spot(v.glimpse.selfIndex()).x;
  path.speed = 0.55 * v.body.top_speed;
  if (const double a = erringBy(v, memory, FaultKind::kicked_out))
    path.goal = {spot + 0.3 * a, -0.9 * a};
  else if (const double b = erringBy(v, memory, FaultKind::upfield))
    path.goal = {spot + 0.5, -1.0 - b};
  else if (const double c = erringBy(v, memory, FaultKind::washed))
    path.goal = {spot - c, 0.6};
  else if (const double d = erringBy(v, memory, FaultKind::crossed_inside))
    path.goal = {spot - d - 0.5, -0.4};
  else if (const double e = erringBy(v, memory, FaultKind::reached))
    path.goal = {spot - 0.6 - e, 0.5};
  else
    return false;
  return true;
}

Intent edgeIntent(const DefenderView& v, const EdgePath& path, int side) {
  const Glimpse& g = v.glimpse;
  const Vec2 goal{side * path.goal.x, path.goal.y};
  Intent intent;
  intent.want = toward(g.self().pos, goal, path.speed);
  intent.push = unit(goal - g.self().pos, {0.0, -1.0});
  intent.face = unit(Vec2{-0.7 * side, -1.0});
  return intent;
}

// The run goes away: he closes and chases flat, a step behind the ball for the cutback and the reverse.
Intent chaseFlat(const DefenderView& v, int side) {
  return pursue(v.glimpse, v.model, v.body, side * v.model.lever_chase,
                v.model.edge_chase * v.body.top_speed);
}

// A blocker who has gone by him outside or to the second level is not going to block him.
bool isPast(const Glimpse& g, const Pose& blocker, int side) {
  constexpr double kPast = 0.5;  // yd
  const Pose& me = g.self();
  return side * (blocker.pos.x - me.pos.x) > kPast || blocker.pos.y > me.pos.y + kPast;
}

// The nearest blocker of the line who might have him has gone inside, to somebody else.
bool blocksDown(const Glimpse& g, int side) {
  constexpr double kOnLine = -1.5, kNear = 3.5, kStep = 0.25;  // yd
  int across = kNobody;
  double nearest = kNear;
  for (int i = 0; i < kOffense; ++i) {
    const double off = std::abs(g.spot(i).x - g.spot(g.selfIndex()).x);
    if (g.spot(i).y < kOnLine || off >= nearest || isPast(g, g.man(i), side)) continue;
    nearest = off;
    across = i;
  }
  if (across == kNobody) return true;
  const int engaged = g.man(across).engaged;
  if (engaged != kNobody) return engaged != g.selfIndex();
  return -side * headingX(g, across) > kStep;
}

Intent playEdge(const DefenderView& v, DefenderMemory& memory, int side) {
  const Glimpse& g = v.glimpse;
  const double outer = side * g.self().pos.x;
  const double pile = pileEdge(g, side, outer);
  EdgePath path;
  if (faultyPath(v, memory, side, path)) return edgeIntent(v, path, side);
  const int kicker = kickerComing(g, side);
  if (kicker != kNobody && memory.reading.direction != -side)
    return edgeIntent(v, meetKicker(v, kicker, side, pile), side);
  if (memory.reading.direction == -side) return chaseFlat(v, side);
  const double spot = side * g.spot(g.selfIndex()).x;
  const bool blocked = g.self().engaged != kNobody;
  const bool squeezes = structureFor(v.job, side) == Structure::spill && !blocked && blocksDown(g, side);
  const double hold = squeezes ? std::max(pile + 0.9, spot - 1.1) : spot - 0.2;
  path.goal = {hold, blocked ? -0.6 : -0.2};
  path.speed = 0.42 * v.body.top_speed;
  return edgeIntent(v, path, side);
}

// The same laid on a man inside: `outside` is the side he should keep free, the run's once he knows it.
bool faultyAim(const DefenderView& v, DefenderMemory& memory, Vec2& aim) {
  const Glimpse& g = v.glimpse;
  const int direction = memory.reading.direction;
  const double outside = direction != 0 ? direction : signOf(g.spot(g.selfIndex()).x);
  if (const double w = erringBy(v, memory, FaultKind::washed))
    aim = {g.self().pos.x - direction * w, 1.5};
  else if (const double r = erringBy(v, memory, FaultKind::reached))
    aim = {g.spot(g.selfIndex()).x - outside * (0.6 + r), 0.5};
  else if (const double u = erringBy(v, memory, FaultKind::upfield))
    aim = {gapAim(v).x, -1.0 - u};
  else if (const double c = erringBy(v, memory, FaultKind::crossed_inside))
    aim = {g.spot(g.selfIndex()).x - outside * (c + 0.5), -0.6};
  else
    return false;
  return true;
}

Intent playGap(const DefenderView& v, DefenderMemory& memory) {
  const Glimpse& g = v.glimpse;
  Vec2 aim = gapAim(v);
  const int direction = memory.reading.direction;
  if (direction != 0) {
    aim.x += v.model.line_flow_share * (projectedCrossing(g) - aim.x);
    aim.y = std::min(aim.y, g.self().pos.y - 0.6);
  }
  faultyAim(v, memory, aim);
  Intent intent = fireOut(v, memory, aim);
  if (g.self().engaged == kNobody &&
      g.clock() > v.model.line_free_s) {  // nobody has touched him: he goes for the ball
    const Intent chase = pursue(g, v.model, v.body, 0.0, v.model.line_chase * v.body.top_speed);
    intent.want = chase.want;
    intent.face = chase.face;
  }
  return intent;
}

}  // namespace

Intent decideLineman(const DefenderView& v, DefenderMemory& memory) {
  const Glimpse& g = v.glimpse;
  Intent still;
  still.face = {0.0, -1.0};
  if (g.clock() < memory.first_step_s) return still;
  const bool engaged = g.self().engaged != kNobody;
  const double range = engaged ? v.model.declare_engaged_yd : v.model.declare_free_line_yd;
  if (ballIsNear(v, range) || ballDeclares(g, v.model, 0.0)) {
    memory.reading.declared = true;
    return pursue(g, v.model, v.body, 0.0, v.body.top_speed);
  }
  if (v.job.fires && !engaged) return fireOut(v, memory, backPlace(g));
  const int side = signOf(g.spot(g.selfIndex()).x);
  const FitRole role = roleFor(v.job, side);
  Intent intent = role == FitRole::edge ? playEdge(v, memory, side) : playGap(v, memory);
  intent.attacks = ballIsNear(v, 2.0);
  return intent;
}

}  // namespace gapsound
