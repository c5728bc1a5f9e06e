#include "analysis/cast.hpp"

namespace gapsound {
namespace {

const Man& manOf(const Setup& setup, int k) { return setup.men[static_cast<std::size_t>(k)]; }

int manWithRole(const Setup& setup, FitRole role) {
  for (int k = kOffense; k < kMen; ++k) {
    const FitJob& fit = manOf(setup, k).fit;
    if ((setup.direction > 0 ? fit.if_right : fit.if_left) == role) return k;
  }
  return kNobody;
}

/// The safety farthest to one side: +1 the play side, -1 away from it.
int safetyOn(const Setup& setup, int side) {
  int best = kNobody;
  const auto reach = [&](int k) { return side * setup.direction * manOf(setup, k).spot.x; };
  for (int k = kOffense; k < kMen; ++k) {
    const Man& man = manOf(setup, k);
    if (man.fit.level != 3 || man.group == Group::corner) continue;
    if (best == kNobody || reach(k) > reach(best)) best = k;
  }
  return best;
}

}  // namespace

Cast castOf(const Setup& setup) {
  Cast cast;
  cast.end = manWithRole(setup, FitRole::edge);
  cast.first_backer = manWithRole(setup, FitRole::first_backer);
  cast.safety = safetyOn(setup, +1);
  cast.back_safety = safetyOn(setup, -1);
  if (cast.back_safety == cast.safety) cast.back_safety = kNobody;
  return cast;
}

}  // namespace gapsound
