#include "study/outcome.hpp"

#include <algorithm>
#include <cmath>

namespace gapsound {

Outcome outcomeOf(const Summary& rep) {
  return {rep.yards, rep.fitted_otherwise, rep.had_contact, rep.cutback_open, rep.cutback_taken};
}

Gains gainsOf(std::span<const Outcome> reps, const Situation& situation) {
  const auto share = [&](const auto& holds) {
    const auto hits = std::count_if(reps.begin(), reps.end(), holds);
    return reps.empty() ? 0.0 : static_cast<double>(hits) / static_cast<double>(reps.size());
  };
  const auto whole = [&](double least) {
    return share([=](const Outcome& rep) { return wholeYards(rep.yards) >= least; });
  };
  const auto yards = yardsOf(reps);
  Gains gains{static_cast<int>(reps.size()), meanOf(yards), sdOf(yards), gainInterval(yards)};
  if (reps.empty()) return gains;
  gains.lost = 1.0 - whole(0.0);
  gains.stuffed = 1.0 - whole(1.0);
  gains.four_plus = whole(4.0);
  gains.ten_plus = whole(10.0);
  gains.success = share([&](const Outcome& rep) { return succeeds(wholeYards(rep.yards), situation); });
  gains.cutback_open = share([](const Outcome& rep) { return rep.cutback_open; });
  gains.cutback_taken = share([](const Outcome& rep) { return rep.cutback_taken; });
  return gains;
}

Interval intervalOfShare(double share, int n) {
  return shareInterval(static_cast<int>(std::lround(share * n)), n);
}

std::vector<double> yardsOf(std::span<const Outcome> reps) {
  std::vector<double> yards;
  yards.reserve(reps.size());
  for (const Outcome& rep : reps) yards.push_back(rep.yards);
  return yards;
}

}  // namespace gapsound
