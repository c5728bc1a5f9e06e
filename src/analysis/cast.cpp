#include "analysis/cast.hpp"

namespace gapsound {
namespace {

const Man& manOf(const Setup& setup, int k) { return setup.men[static_cast<std::size_t>(k)]; }

int manWithRole(const Setup& setup, int direction, FitRole role) {
  for (int k = kOffense; k < kMen; ++k) {
    const FitJob& fit = manOf(setup, k).fit;
    if ((direction > 0 ? fit.if_right : fit.if_left) == role) return k;
  }
  return kNobody;
}

/// The safety farthest to one side of the field, +1 the right.
int safetyOn(const Setup& setup, int side) {
  int best = kNobody;
  const auto reach = [&](int k) { return side * manOf(setup, k).spot.x; };
  for (int k = kOffense; k < kMen; ++k) {
    const Man& man = manOf(setup, k);
    if (man.fit.level != 3 || man.group == Group::corner) continue;
    if (best == kNobody || reach(k) > reach(best)) best = k;
  }
  return best;
}

}  // namespace

Cast castOf(const Setup& setup) { return castOf(setup, setup.direction); }

Cast castOf(const Setup& setup, int direction) {
  const int side = direction > 0 ? +1 : -1;
  Cast cast;
  cast.end = manWithRole(setup, side, FitRole::edge);
  cast.first_backer = manWithRole(setup, side, FitRole::first_backer);
  cast.safety = safetyOn(setup, side);
  cast.back_safety = safetyOn(setup, -side);
  if (cast.back_safety == cast.safety) cast.back_safety = kNobody;
  return cast;
}

}  // namespace gapsound
