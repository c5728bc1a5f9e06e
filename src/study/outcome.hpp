#pragma once
#include <cstdint>
#include <span>
#include <vector>

#include "analysis/account.hpp"
#include "study/distribution.hpp"

namespace gapsound {

/// What studies of many looks keep of a rep.
struct Outcome {
  double yards = 0.0;
  std::uint32_t fitted_otherwise = 0, had_contact = 0;  // as in Summary
  bool cutback_open = false, cutback_taken = false;
};
[[nodiscard]] Outcome outcomeOf(const Summary& rep);

/// Reps of every cell of a study: rows[cell][rep], in the order of the seeds.
using Rows = std::vector<std::vector<Outcome>>;

/// What N outcomes came to. Shares count whole yards; mean and sd are raw.
struct Gains {
  int n = 0;
  double mean = 0, sd = 0;
  Interval mean_ci;  // 95 %
  double lost = 0, stuffed = 0, four_plus = 0, ten_plus = 0, success = 0;
  double cutback_open = 0, cutback_taken = 0;
};
[[nodiscard]] Gains gainsOf(std::span<const Outcome> reps, const Situation& situation = {});
/// Wilson's interval at 95 % of a share of n reps.
[[nodiscard]] Interval intervalOfShare(double share, int n);

[[nodiscard]] std::vector<double> yardsOf(std::span<const Outcome> reps);

}  // namespace gapsound
