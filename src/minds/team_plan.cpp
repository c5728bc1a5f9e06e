#include "minds/team_plan.hpp"

namespace gapsound {
namespace {

void place(TeamPlan::Side& side, FitRole role, int man) {
  switch (role) {
    case FitRole::edge:
      side.end = man;
      break;
    case FitRole::back_edge:
      side.back_end = man;
      break;
    case FitRole::first_backer:
      side.first = man;
      break;
    case FitRole::fill_backer:
      side.fill = man;
      break;
    case FitRole::overlap_backer:
      side.overlap = man;
      break;
    case FitRole::force:
      side.force = man;
      break;
    case FitRole::alley:
      side.alley = man;
      break;
    case FitRole::cutback:
      side.cutback = man;
      break;
    default:
      break;
  }
}

const HuddleMan& at(const Defenders& men, int man) { return men[static_cast<std::size_t>(man - kOffense)]; }

int nextInside(const Defenders& men, int end, int direction) {
  if (end == kNobody) return kNobody;
  int best = kNobody;
  double best_x = -99.0;
  const double outer = direction * at(men, end).spot.x;
  for (int i = kOffense; i < kMen; ++i) {
    const double x = direction * at(men, i).spot.x;
    if (at(men, i).fit.level == 1 && x < outer - 0.1 && x > best_x) {
      best = i;
      best_x = x;
    }
  }
  return best;
}

int lineManBefore(const Defenders& men, int man) {
  int best = kNobody;
  double nearest = 99.0;
  for (int i = kOffense; i < kMen; ++i) {
    const double off = men[static_cast<std::size_t>(man - kOffense)].spot.x - at(men, i).spot.x;
    const double away = off < 0.0 ? -off : off;
    if (i == man || at(men, i).fit.level != 1 || away >= nearest) continue;
    nearest = away;
    best = i;
  }
  return best;
}

}  // namespace

FitRole roleFor(const FitJob& job, int direction) { return direction >= 0 ? job.if_right : job.if_left; }

Defenders defendersOf(const Setup& setup) {
  Defenders men;
  for (int i = kOffense; i < kMen; ++i) {
    const Man& man = setup.men[static_cast<std::size_t>(i)];
    men[static_cast<std::size_t>(i - kOffense)] = {man.spot, man.fit};
  }
  return men;
}

TeamPlan teamPlanOf(const Defenders& men, const FitTable& fits) {
  TeamPlan plan;
  plan.fits = fits;
  for (int i = kOffense; i < kMen; ++i)
    plan.in_front[static_cast<std::size_t>(i - kOffense)] = lineManBefore(men, i);
  for (const int direction : {+1, -1}) {
    TeamPlan::Side& side = plan.sides[direction > 0 ? 0 : 1];
    for (int i = kOffense; i < kMen; ++i) place(side, roleFor(at(men, i).fit, direction), i);
    side.tackle = nextInside(men, side.end, direction);
    if (side.first != kNobody) side.first_gap = at(men, side.first).fit.gap_x;
    if (side.end != kNobody) side.end_slant = at(men, side.end).fit.slant_x;
  }
  return plan;
}

}  // namespace gapsound
