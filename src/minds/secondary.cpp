#include <algorithm>
#include <cmath>

#include "base/numbers.hpp"
#include "minds/defender.hpp"
#include "minds/pursuit.hpp"

namespace gapsound {
namespace {

constexpr double kCorner = 8.0;  // yd, from there a corner goes for a ball that has declared
constexpr double kDeep = 8.0;    // yd at the snap: from there on he plays from depth

double downhill(const DefenderView& v, DefenderMemory& memory) {
  const double speed = v.job.downhill_yps + erringBy(v, memory, FaultKind::too_fast) -
                       erringBy(v, memory, FaultKind::too_slow);
  return clamped(speed, 0.8, v.body.top_speed);
}

Intent coverSteps(const DefenderView& v) {
  Intent intent;
  intent.face = {0.0, -1.0};
  const bool outside = roleFor(v.job, +1) == FitRole::corner || roleFor(v.job, -1) == FitRole::corner;
  if (v.glimpse.clock() > 0.3) intent.want = {0.0, outside ? v.model.corner_bail : v.model.safety_bail};
  return intent;
}

// Toward the goal at `speed`, coming to balance only when he is nearly there: who is too fast runs past it.
Vec2 closing(const DefenderView& v, Vec2 goal, double speed) {
  constexpr double kGathering = 3.5;  // 1/s
  const Vec2 gap = goal - v.glimpse.self().pos;
  return std::min(speed, kGathering * length(gap)) * unit(gap, {0.0, 0.0});
}

Intent go(const DefenderView& v, Vec2 goal, double speed) {
  const Glimpse& g = v.glimpse;
  Intent intent;
  intent.want = closing(v, goal, speed);
  const Vec2 ball = backPlace(g);
  intent.face = speed > 4.5 && distance(goal, g.self().pos) > 2.0 ? unit(goal - g.self().pos)
                                                                  : unit(ball - g.self().pos);
  intent.push = unit(ball - g.self().pos);
  return intent;
}

// What takes a man's eyes off his receiver: the receiver blocks, comes in to, or stands; the ball is through.
bool seesRun(const DefenderView& v) {
  constexpr double kComesIn = 1.5, kThrough = 0.3, kStands = 1.0;  // yd, yd, yd/s
  constexpr double kRouteBegun = 1.0;                              // s
  const Glimpse& g = v.glimpse;
  const Pose& receiver = g.man(v.job.man_on);
  const double spot = g.spot(v.job.man_on).x;
  const double inward = signOf(spot) * (spot - receiver.pos.x);
  const bool stands = g.clock() > kRouteBegun && length(receiver.vel) < kStands;
  return receiver.engaged != kNobody || receiver.down || stands || inward > kComesIn || g.ball().y > kThrough;
}

// Nobody deep behind him: one high.
bool isLastMan(const DefenderView& v, const TeamPlan::Side& plan) {
  return plan.cutback == kNobody || plan.cutback == v.glimpse.selfIndex() ||
         v.glimpse.spot(plan.cutback).y < kDeep;
}

Fit alleyFit(const DefenderView& v, const Reading& reading, int side) {
  const auto force = static_cast<std::size_t>(seenForce(v.glimpse, v.model, v.plan.toward(side), side));
  const Fit off_force = v.plan.fits.alley_by_force[force];
  return off_force != Fit::called ? off_force : v.plan.fits.alley[static_cast<std::size_t>(reading.backer)];
}

double alleyDepth(const DefenderView& v, const TeamPlan::Side& plan) {
  const Model& m = v.model;
  const double depth = m.alley_depth + (isLastMan(v, plan) ? m.alley_last_man_yd : 0.0);
  return clamped(depth + m.alley_depth_slope * (v.glimpse.ball().y + 4.0), depth, 9.0);
}

// The alley man runs inside-out: a step outside where the ball is going to cross, tight to the line's depth.
Intent playAlley(const DefenderView& v, DefenderMemory& memory, int side) {
  const Glimpse& g = v.glimpse;
  const Model& m = v.model;
  Reading& reading = memory.reading;
  const TeamPlan::Side& plan = v.plan.toward(side);
  reading.end = seenEnd(g, m, plan, structureFor(v.job, side), side);
  reading.backer = seenBacker(g, m, plan, side);
  reading.fit = v.job.off_the_man_in_front ? alleyFit(v, reading, side) : Fit::called;
  if (ballDeclares(g, m, 0.0) && g.ball().y > -0.3) {
    reading.declared = true;
    return pursue(g, m, v.body,
                  side * (reading.fit == Fit::insert || reading.fit == Fit::cutback_window ? -0.3 : 0.3),
                  v.body.top_speed);
  }
  const double crossing = side * projectedCrossing(g);
  const double end_spot = plan.end == kNobody ? 4.7 : side * g.spot(plan.end).x;
  double x = crossing + m.alley_outside_yd;
  if (reading.fit == Fit::called)
    x = end_spot + (structureFor(v.job, side) == Structure::spill ? m.alley_called_yd : 0.5);
  const double first_x = plan.first == kNobody ? crossing : side * g.place(plan.first).x;
  if (reading.fit == Fit::insert && crossing < first_x + m.alley_outside_yd)
    x = std::min(x, first_x - m.alley_insert_yd);
  if (reading.fit == Fit::cutback_window) x = crossing - m.alley_window_yd;
  if (reading.fit == Fit::replace_gap) x = side * plan.first_gap;
  if (erringBy(v, memory, FaultKind::flowed) > 0.0) x = crossing + m.flow_past_yd;
  x += erringBy(v, memory, FaultKind::over_run);
  const double y = alleyDepth(v, plan) + erringBy(v, memory, FaultKind::too_deep);
  return go(v, {side * x, y}, downhill(v, memory));
}

// Outside the outermost man who comes at him, so that nobody blocks him in.
double outsideBlockers(const DefenderView& v, int side) {
  const Glimpse& g = v.glimpse;
  double x = -99.0;
  for (int i = 0; i < kOffense; ++i) {
    if (i == g.carrier() || distance(g.place(i), g.self().pos) > v.model.force_blocker_near) continue;
    x = std::max(x, side * g.place(i).x + v.model.force_free_arm);
  }
  return x;
}

// Outside where the ball is going to cross, free of whoever comes at him.
double forceAcross(const DefenderView& v, const TeamPlan::Side& plan, Fit fit, int side) {
  const Glimpse& g = v.glimpse;
  const Model& m = v.model;
  const double crossing = side * projectedCrossing(g);
  const double end_spot = plan.end == kNobody ? 4.7 : side * g.spot(plan.end).x;
  const double tight = fit == Fit::force_tight ? m.force_tight_yd : 0.0;
  const double edge = std::max(end_spot + m.force_edge_yd, crossing + m.force_outside_yd) - tight;
  return std::max(edge, std::min(outsideBlockers(v, side), crossing + m.force_widest_yd));
}

// The force keeps his outside arm free at the ball's depth; from depth he closes as the alley does. He
// squeezes in where the first backer has turned the ball outside or is missing.
Intent playForce(const DefenderView& v, DefenderMemory& memory, int side) {
  const Glimpse& g = v.glimpse;
  const Model& m = v.model;
  Reading& reading = memory.reading;
  const TeamPlan::Side& plan = v.plan.toward(side);
  reading.backer = seenBacker(g, m, plan, side);
  reading.fit = v.job.off_the_man_in_front ? v.plan.fits.force[static_cast<std::size_t>(reading.backer)]
                                           : Fit::force_set;
  if (ballDeclares(g, m, 0.0)) {
    reading.declared = true;
    return pursue(g, m, v.body, side * m.lever_force, v.body.top_speed);
  }
  double x = forceAcross(v, plan, reading.fit, side) + erringBy(v, memory, FaultKind::over_run);
  if (const double lost = erringBy(v, memory, FaultKind::inside_lost))
    x = std::min(x, side * projectedCrossing(g) - lost);
  const double full = downhill(v, memory);
  if (const double deep = erringBy(v, memory, FaultKind::too_deep)) return go(v, {side * x, -deep}, full);
  if (g.spot(g.selfIndex()).y > kDeep) return go(v, {side * x, alleyDepth(v, plan)}, full);
  return go(v, {side * x, m.force_depth + 0.4 * ballDepth(g)}, std::min(full, 0.7 * v.body.top_speed));
}

// A mistake: he leaves the middle of the field and runs over the top with the flow.
Intent flowOver(const DefenderView& v, DefenderMemory& memory, int side) {
  const Glimpse& g = v.glimpse;
  const Model& m = v.model;
  if (g.ball().y > m.cutback_release_y) {
    memory.reading.declared = true;
    return pursue(g, m, v.body, 0.0, v.body.top_speed);
  }
  const double x = side * projectedCrossing(g) + m.flow_past_yd;
  return go(v, {side * x, m.cutback_depth + m.flow_behind_yd}, m.flow_speed * v.body.top_speed);
}

// The cutback man stays square behind the flow until the ball has crossed.
Intent playCutback(const DefenderView& v, DefenderMemory& memory, int side) {
  const Glimpse& g = v.glimpse;
  const Model& m = v.model;
  if (erringBy(v, memory, FaultKind::flowed) > 0.0) return flowOver(v, memory, side);
  memory.reading.fit = Fit::cutback;
  if (g.ball().y > m.cutback_release_y) {
    memory.reading.declared = true;
    return pursue(g, m, v.body, -side * m.lever_cutback, v.body.top_speed);
  }
  const double x =
      side * projectedCrossing(g) - m.cutback_behind_yd + erringBy(v, memory, FaultKind::over_run);
  const double y = m.cutback_depth + erringBy(v, memory, FaultKind::too_deep);
  return go(v, {side * x, y}, std::min(m.cutback_speed * v.body.top_speed, downhill(v, memory)));
}

// The force is gone: the corner takes the edge for him.
bool replacesForce(const DefenderView& v, DefenderMemory& memory, int side) {
  const TeamPlan::Side& plan = v.plan.toward(side);
  if (!v.job.off_the_man_in_front || plan.force == kNobody || plan.force == v.glimpse.selfIndex())
    return false;
  const auto force = static_cast<std::size_t>(seenForce(v.glimpse, v.model, plan, side));
  memory.reading.fit = v.plan.fits.corner_by_force[force];
  return memory.reading.fit == Fit::replace_force;
}

Intent playCorner(const DefenderView& v, DefenderMemory& memory, int side) {
  const Glimpse& g = v.glimpse;
  const int own = signOf(g.spot(g.selfIndex()).x);
  const TeamPlan::Side& plan = v.plan.toward(side);
  const bool bounces = own == side && plan.end != kNobody && g.ball().y > -1.5 &&
                       side * projectedCrossing(g) > side * g.place(plan.end).x + 1.0;
  if (bounces || g.ball().y > 0.5 ||
      (ballDeclares(g, v.model, 0.0) && distance(g.ball(), g.self().pos) < kCorner)) {
    memory.reading.declared = true;
    return pursue(g, v.model, v.body, own * v.model.lever_corner, v.body.top_speed);
  }
  memory.reading.fit = Fit::deep;
  if (own == side && replacesForce(v, memory, side))
    return go(v, {side * (side * projectedCrossing(g) + v.model.force_outside_yd), v.model.alley_depth},
              downhill(v, memory));
  const double in =
      (own == side ? 1.5 : 3.0) + (own == side ? 2.0 * erringBy(v, memory, FaultKind::inside_lost) : 0.0);
  const Vec2 spot = g.spot(g.selfIndex());
  return go(v, {spot.x - own * in, std::max(spot.y - 0.5, 5.0)}, 0.35 * v.body.top_speed);
}

}  // namespace

bool isOnHisMan(const DefenderView& v, DefenderMemory& memory) {
  if (v.job.man_on == kNobody || v.glimpse.group(v.job.man_on) != Group::receiver) return false;
  memory.left_his_man = memory.left_his_man || seesRun(v);
  return !memory.left_his_man;
}

Intent coverMan(const DefenderView& v, const DefenderMemory& memory) {
  const Glimpse& g = v.glimpse;
  const Model& m = v.model;
  const Vec2 receiver = g.place(v.job.man_on) + m.cover_lead_s * g.man(v.job.man_on).vel;
  const Vec2 goal{receiver.x - signOf(receiver.x) * m.cover_inside_yd,
                  std::max(g.spot(g.selfIndex()).y, receiver.y + m.cover_on_top_yd)};
  Intent intent;
  intent.face = unit(receiver - g.self().pos, {0.0, -1.0});
  if (g.clock() >= memory.first_step_s) intent.want = closing(v, goal, v.body.top_speed);
  return intent;
}

Intent decideSecondary(const DefenderView& v, DefenderMemory& memory) {
  const Glimpse& g = v.glimpse;
  const int side = memory.reading.direction;
  if (side == 0) {
    if (g.ball().y > 0.0 || distance(g.ball(), g.self().pos) < 3.0)
      return pursue(g, v.model, v.body, 0.0, v.body.top_speed);
    return coverSteps(v);
  }
  switch (roleFor(v.job, side)) {
    case FitRole::alley:
      return playAlley(v, memory, side);
    case FitRole::force:
      return playForce(v, memory, side);
    case FitRole::cutback:
      return playCutback(v, memory, side);
    case FitRole::first_backer:
    case FitRole::fill_backer:
    case FitRole::overlap_backer:
      return decideBacker(v, memory);
    default:
      return playCorner(v, memory, side);
  }
}

}  // namespace gapsound
