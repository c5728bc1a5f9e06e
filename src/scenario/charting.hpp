#pragma once
#include <string>
#include <vector>

#include "scenario/plan.hpp"

namespace gapsound {

/// One snap of an opponent's run as the staff charted it; names are library ids.
struct ChartedRun {
  OffensePlan offense;
  std::string hash;   // left_hash, middle, right_hash; empty: not charted
  double gain = 0.0;  // yd
};

/// A run seen less often than this is thin data.
inline constexpr int kThinBelow = 6;  // snaps

/// Snaps grouped by formation, scheme, variant, direction and strength, most frequent first: seen, share of
/// all runs, mean gain, the hash it was run from most.
[[nodiscard]] std::vector<PlanRun> runsFrom(const std::vector<ChartedRun>& charted, const Library& library);

}  // namespace gapsound
