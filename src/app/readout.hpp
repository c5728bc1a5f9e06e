#pragma once
#include <cstdint>

#include "app/errand.hpp"
#include "base/model.hpp"
#include "scenario/scenario.hpp"
#include "study/distribution.hpp"

namespace gapsound {

/// What many reps of the look under edit come to, as far as they have been played. Intervals at 95 %.
struct Readout {
  std::uint64_t edition = 0;  // of the scenario it speaks of
  int planned = 0;
  Distribution gains;
  Interval stuffed, ten_plus, cutback_open;
  std::uint64_t best_seed = 1, worst_seed = 1, typical_seed = 1;  // for the defense
  [[nodiscard]] bool done() const { return gains.n >= planned; }
};

/// Plays `n` reps from seed 1 in small lots and leaves what has come together in the box after each, until
/// they are played or it has become stale. A scenario that cannot be played leaves nothing.
void playReadout(const Scenario& scenario, const Model& model, std::uint64_t edition, int n,
                 const Errand::Stale& stale, Mailbox<Readout>& box);
[[nodiscard]] Readout readoutOf(const std::vector<Summary>& reps, const Situation& situation, int planned);

}  // namespace gapsound
