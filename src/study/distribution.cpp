#include "study/distribution.hpp"

#include "study/tally.hpp"

namespace gapsound {

std::vector<double> yardsOf(std::span<const Summary> reps) {
  std::vector<double> yards;
  yards.reserve(reps.size());
  for (const Summary& rep : reps) yards.push_back(rep.yards);
  return yards;
}

double yardsToSucceed(const Situation& situation) {
  const double share = situation.down <= 1 ? 0.4 : situation.down == 2 ? 0.6 : 1.0;
  return share * situation.distance;
}

bool succeeds(double yards, const Situation& situation) { return yards >= yardsToSucceed(situation); }

Distribution distributionOf(std::span<const Summary> reps, const Situation& situation) {
  Tally tally(situation);
  for (const Summary& rep : reps) tally.add(rep);
  return tally.distribution();
}

}  // namespace gapsound
