#pragma once
#include "scenario/plan.hpp"
#include "study/reps.hpp"
#include "teach/fit_sheet.hpp"

namespace gapsound {

/// Reps of every pair on common random numbers: reps[run][call].
using PairReps = std::vector<std::vector<std::vector<Summary>>>;

/// Another call against one run, in place of the first call of the plan.
struct CallSwap {
  std::size_t run = 0, call = 0;
  double saves = 0.0;   // yd a snap of that run, first call minus this one
  Interval ci;          // 95 %
  double weight = 0.0;  // the run's share, or an equal one where nothing is charted
};
/// Changes that surely save something, the one that saves most a week (saves times weight) first; at most one
/// a run.
[[nodiscard]] std::vector<CallSwap> changesOf(const Plan& plan, const PairReps& reps);

/// A pair and how much it hurts: mean gain times the run's weight.
struct Danger {
  std::size_t run = 0, call = 0;
  double mean = 0.0, p90 = 0.0, weight = 0.0;
};
/// Every pair, most dangerous first.
[[nodiscard]] std::vector<Danger> dangersOf(const Plan& plan, const PairReps& reps);

/// What to change first, in sentences, each true of the reps.
[[nodiscard]] std::vector<std::string> adviceOf(const Plan& plan, const PairReps& reps);
/// One upright page: advice, the most dangerous pairs, thin data, practice warnings.
[[nodiscard]] LaidPage weekSummaryPage(const Plan& plan, const PairReps& reps,
                                       const std::vector<std::string>& unsound, Paper paper);

}  // namespace gapsound
