#include <algorithm>
#include <cmath>

#include "base/numbers.hpp"
#include "minds/defender.hpp"
#include "minds/pursuit.hpp"

namespace gapsound {
namespace {

// Everything here is mirrored: x grows toward the side he believes the run goes to.
struct Picture {
  int side = 1;
  double end_x = 4.5;     // the end, now
  double end_spot = 4.7;  // where the end lined up
  double tackle_x = 2.0;  // next man inside him
  double line_x = 1.0;    // the lineman in front of himself, now
  double crossing = 2.0;
  double depth = 5.0;  // ball behind the line
};

int lineManInFront(const DefenderView& v) {
  return v.plan.in_front[static_cast<std::size_t>(v.glimpse.selfIndex() - kOffense)];
}

Picture pictureOf(const DefenderView& v, int side) {
  const Glimpse& g = v.glimpse;
  const TeamPlan::Side& plan = v.plan.toward(side);
  Picture p;
  p.side = side;
  if (plan.end != kNobody) {
    p.end_x = side * g.place(plan.end).x;
    p.end_spot = side * g.spot(plan.end).x;
  }
  p.tackle_x = plan.tackle != kNobody ? side * g.place(plan.tackle).x : p.end_x - 2.5;
  p.line_x = side * g.place(lineManInFront(v)).x;
  p.crossing = side * projectedCrossing(g);
  p.depth = ballDepth(g);
  return p;
}

double fitDepth(const Model& m, const Picture& p) { return m.fit_depth + m.fit_depth_slope * p.depth; }

Vec2 placeOfFit(const DefenderView& v, const Picture& p, Fit fit, double own_x) {
  const Model& m = v.model;
  const double y = fitDepth(m, p);
  const double door = p.end_x - p.tackle_x;
  switch (fit) {
    case Fit::over_top:
      return {std::max(p.end_x + m.fit_over_yd, p.end_spot - 0.2), y};
    case Fit::new_edge:
      return {std::max(p.end_x, p.end_spot - 1.0) + m.fit_over_yd + 0.4, y};
    case Fit::inside: {
      const double outer = std::max(p.end_x - m.fit_inside_yd, p.tackle_x + 0.7);
      return {clamped(p.crossing + m.fit_inside_lead_yd, p.tackle_x + 0.7, outer), y - 0.2};
    }
    case Fit::outside_half:
      return {p.end_x - 0.9, y};
    case Fit::inside_half:
      return {p.tackle_x + std::min(0.9, 0.4 * door), y};
    case Fit::tight_double:
      return {p.tackle_x + m.fit_fill_yd, y};
    case Fit::under:
      return {p.crossing - m.fit_overlap_yd, y + 0.4};
    case Fit::fold:
      return {p.crossing - m.fit_overlap_yd - 0.8, y + 0.8};
    case Fit::hang:
      return {p.crossing - m.fit_overlap_yd - 1.6, y + 1.6};
    case Fit::over_line:
      return {p.line_x + m.fit_line_yd, y};
    case Fit::replace_gap:
      return {p.line_x - m.fit_line_yd, y};
    case Fit::slow:
      return {clamped(p.crossing, p.line_x - m.fit_line_yd, p.line_x + m.fit_line_yd), y + 0.4};
    case Fit::hold:
      return {own_x, y + 0.6};
    default:
      return {p.crossing - m.fit_overlap_yd, y};
  }
}

// Who is called over the top of a spill: the first backer, or the next one while the first stays inside.
FitRole goesOver(const DefenderView& v, int side) {
  const TeamPlan::Side& plan = v.plan.toward(side);
  if (!v.job.overlaps_over || (plan.fill == kNobody && plan.overlap == kNobody)) return FitRole::first_backer;
  return plan.fill != kNobody ? FitRole::fill_backer : FitRole::overlap_backer;
}

Vec2 calledPlace(const DefenderView& v, const Picture& p, FitRole role) {
  const double y = fitDepth(v.model, p);
  const bool spill = structureFor(v.job, p.side) == Structure::spill;
  const Vec2 over{p.end_spot + v.model.fit_over_yd, y}, inside{p.end_spot - v.model.fit_inside_yd, y};
  if (spill && role == goesOver(v, p.side)) return over;
  if (role == FitRole::first_backer) return inside;
  return {p.side * v.job.gap_x, y};
}

// Off the lineman in front, where nobody pulls.
Fit fitOffLine(const DefenderView& v, const DefenderMemory& memory, FitRole role) {
  const auto state = static_cast<std::size_t>(memory.reading.line);
  const FitTable& fits = v.plan.fits;
  if (role == FitRole::first_backer)
    return memory.reading.end == EndState::open ? fits.first_by_line[state] : Fit::called;
  return role == FitRole::fill_backer ? fits.fill_by_line[state] : fits.overlap_by_line[state];
}

Fit fitOffEnd(const DefenderView& v, const DefenderMemory& memory, FitRole role) {
  const auto s = static_cast<std::size_t>(structureFor(v.job, memory.reading.direction));
  const auto e = static_cast<std::size_t>(memory.reading.end);
  if (role == FitRole::first_backer) return v.plan.fits.first_backer[s][e];
  if (role == FitRole::fill_backer) return v.plan.fits.fill_backer[s][e];
  return v.plan.fits.overlap_backer[s][e];
}

Fit fitFor(const DefenderView& v, const DefenderMemory& memory, FitRole role) {
  const bool behind = role != FitRole::first_backer && role != FitRole::fill_backer;
  if (behind && v.job.bs_backer == BackSideBacker::fold) return Fit::fold;
  if (behind && v.job.bs_backer == BackSideBacker::hang) return Fit::hang;
  const Fit off_line = pullerSeen(v.glimpse) ? Fit::called : fitOffLine(v, memory, role);
  return off_line != Fit::called ? off_line : fitOffEnd(v, memory, role);
}

// Before the read: short steps downhill, leaning with the back.
Intent readSteps(const DefenderView& v, const DefenderMemory& memory) {
  const Glimpse& g = v.glimpse;
  Intent intent;
  intent.face = {0.0, -1.0};
  if (g.clock() < memory.first_step_s) return intent;
  const double lean = v.model.backer_lean * clamped(g.man(watchedBack(g)).vel.x / 2.0, -1.0, 1.0);
  intent.want = {lean, -v.model.backer_step};
  return intent;
}

// A blocker who is about to get to him: he is met on the move, not waited for.
int threatNear(const Glimpse& g, double range) {
  int best = kNobody;
  double nearest = range;
  for (int i = 0; i < kOffense; ++i) {
    const Pose& p = g.man(i);
    if (i == g.carrier() || i == watchedBack(g) || p.down || p.engaged != kNobody) continue;
    const Vec2 to_me = g.self().pos - g.place(i);
    const double d = length(to_me);
    if (d < nearest && dot(p.vel, to_me) > 0.5 * d * length(p.vel) && length(p.vel) > 1.5) {
      nearest = d;
      best = i;
    }
  }
  return best;
}

Intent runFit(const DefenderView& v, const Picture& p, Vec2 goal, double speed) {
  const Glimpse& g = v.glimpse;
  const Vec2 place{p.side * goal.x, goal.y};
  Intent intent;
  intent.want = toward(g.self().pos, place, speed);
  intent.face = unit(backPlace(g) - g.self().pos, {0.0, -1.0});
  intent.push = unit(place - g.self().pos + Vec2{0.0, -0.8}, {0.0, -1.0});
  const int blocker = threatNear(g, v.model.backer_attack_yd);
  if (blocker != kNobody) {
    const double outside = signOf(goal.x - p.side * g.place(blocker).x);
    const Vec2 shoulder = g.place(blocker) + Vec2{p.side * outside * 0.35, 0.0};
    intent.want = v.model.backer_attack * v.body.top_speed *
                  unit(shoulder - g.self().pos + 0.6 * unit(place - g.self().pos));
  }
  return intent;
}

Intent shootGap(const DefenderView& v, int side) {
  const Glimpse& g = v.glimpse;
  const double door = v.job.gap_x;
  const Vec2 goal = g.self().pos.y > 0.6 ? Vec2{door, -0.5} : backPlace(g);
  Intent intent;
  intent.want = v.model.shoot_speed * v.body.top_speed * unit(goal - g.self().pos);
  intent.face = unit(intent.want);
  intent.push = intent.face;
  intent.attacks = true;
  (void)side;
  return intent;
}

double leverageOf(const Model& m, FitRole role, Fit fit, int side) {
  switch (role) {
    case FitRole::first_backer:
      return side * (fit == Fit::inside || fit == Fit::inside_half ? -0.2 : m.lever_first);
    case FitRole::overlap_backer:
      return -side * m.lever_overlap;
    case FitRole::force:
      return side * m.lever_force;
    default:
      return 0.0;
  }
}

void see(const DefenderView& v, DefenderMemory& memory, int side) {
  const TeamPlan::Side& plan = v.plan.toward(side);
  memory.reading.end = seenEnd(v.glimpse, v.model, plan, structureFor(v.job, side), side);
  memory.reading.line = seenLine(v.glimpse, v.model, lineManInFront(v), side);
}

// Told on purpose to stay where he is instead of folding, or to run with the ball instead of staying behind
// it.
bool leavesHisPart(const DefenderView& v, DefenderMemory& memory, FitRole role, const Picture& p,
                   Vec2& goal) {
  const bool behind = role != FitRole::first_backer;
  if (behind && erringBy(v, memory, FaultKind::no_fold) > 0.0) {
    goal = {p.side * v.glimpse.spot(v.glimpse.selfIndex()).x, v.glimpse.spot(v.glimpse.selfIndex()).y - 0.5};
    return true;
  }
  if (erringBy(v, memory, FaultKind::flowed) == 0.0) return false;
  goal = {p.crossing + v.model.flow_past_yd, goal.y + 0.8};
  return true;
}

// The ball goes outside the end: he goes with it, no farther inside it than his part allows.
double insideOut(const DefenderView& v, FitRole role, Fit fit, const Picture& p) {
  if (!v.job.off_the_man_in_front || fit == Fit::fold || fit == Fit::hang) return -99.0;
  if (p.crossing < p.end_x + v.model.fit_trail_from_yd) return -99.0;
  return p.crossing - (role == FitRole::first_backer ? v.model.fit_trail_first_yd : v.model.fit_trail_yd);
}

bool isLate(const DefenderView& v, DefenderMemory& memory) {
  const double late = amountOf(v.faults, FaultKind::scrape_late);
  const double clock = v.glimpse.clock(), since = memory.reading.since_s;
  if (memory.reading.direction != 0 && clock >= since && clock < since + late)
    static_cast<void>(erringBy(v, memory, FaultKind::scrape_late));
  return clock < since + late;
}

}  // namespace

Intent decideBacker(const DefenderView& v, DefenderMemory& memory) {
  const Glimpse& g = v.glimpse;
  Reading& reading = memory.reading;
  if (memory.shoots && g.clock() > memory.first_step_s) return shootGap(v, 1);
  const int side = reading.direction;
  if (side == 0 || isLate(v, memory)) {
    if (ballDeclares(g, v.model, 0.0)) return pursue(g, v.model, v.body, 0.0, v.body.top_speed);
    return readSteps(v, memory);
  }
  const FitRole role = roleFor(v.job, side);
  see(v, memory, side);
  if (ballDeclares(g, v.model, v.model.declare_lead_s)) {
    reading.declared = true;
    const double over =
        amountOf(v.faults, FaultKind::over_run) + 0.5 * amountOf(v.faults, FaultKind::scrape_wide);
    return pursue(g, v.model, v.body, leverageOf(v.model, role, reading.fit, side) + side * over,
                  v.body.top_speed);
  }
  const Picture p = pictureOf(v, side);
  const bool shoots = role == FitRole::overlap_backer && v.job.bs_backer == BackSideBacker::shoot;
  if (shoots) return shootGap(v, side);
  reading.fit = v.job.off_the_man_in_front ? fitFor(v, memory, role) : Fit::called;
  Vec2 goal = reading.fit == Fit::called ? calledPlace(v, p, role)
                                         : placeOfFit(v, p, reading.fit, side * g.self().pos.x);
  if (role == FitRole::overlap_backer && goesOver(v, side) != role)
    goal.x = std::min(goal.x, p.crossing - v.model.fit_behind_yd);
  goal.x = std::max(goal.x, insideOut(v, role, reading.fit, p));
  leavesHisPart(v, memory, role, p, goal);
  goal.x += erringBy(v, memory, FaultKind::scrape_wide) + erringBy(v, memory, FaultKind::over_run);
  goal.x -= 2.0 * erringBy(v, memory, FaultKind::inside_lost);
  goal.y += erringBy(v, memory, FaultKind::too_deep);
  return runFit(v, p, goal, v.model.backer_fit_speed * v.body.top_speed);
}

}  // namespace gapsound
