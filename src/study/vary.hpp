#pragma once
#include <optional>
#include <string>
#include <vector>

#include "study/break_rule.hpp"
#include "study/outcome.hpp"
#include "study/reps.hpp"

namespace gapsound {

/// One setting that is gone through.
struct SweepAxis {
  std::string path;            // "players.SS.downhill_yps"
  std::string words;           // "the downhill speed of SS"
  std::string unit;            // "yd/s"
  std::vector<double> values;  // ascending
};

/// What to play: one setup for each combination of values, the first axis slowest.
struct SweepPlan {
  std::vector<SweepAxis> axes;  // one or two
  std::vector<Setup> setups;
  std::uint64_t first_seed = 1;
  int n = 200;
  int threads = 0;
  bool about_safety = false;  // the sentence then says that no pass threat is in the number
  std::vector<BreakRule> rules = usualBreakRules();
  bool usual_rules = true;

  /// Seeds of each cell: with one setting as many again to choose the best cell by, after those that judge.
  [[nodiscard]] int seeds() const { return axes.size() > 1 ? n : 2 * n; }
  /// The order to play in: a map begins with every other value of each axis.
  [[nodiscard]] Schedule schedule() const;
};

struct SweepCell {
  std::vector<double> at;
  Gains gains;
  Paired past_best;     // yards against the best cell, on the judging seeds
  bool breaks = false;  // costs more than the rules allow, against the best cell
};

/// First value past the best one that breaks a rule.
struct BreakPoint {
  std::size_t cell = 0;
  double value = 0.0;
  Interval ci;         // 95 %, bootstrap over the reps that found a break
  double found = 0.0;  // share of the bootstrap samples that found one
};

struct SweepResult {
  std::vector<SweepAxis> axes;
  std::vector<SweepCell> cells;
  std::size_t best = 0;  // fewest yards; chosen on other seeds than those its mean is judged on
  double best_mean = 0.0;
  std::optional<BreakPoint> break_point;  // null for two axes and where there is none
  std::string sentence;
};

/// Plays the plan's cells on common random numbers.
[[nodiscard]] SweepResult vary(const SweepPlan& plan, const Model& model, const Progress& progress = {});
/// The answer from reps played by the plan's schedule; with fewer than seeds() of them, from what is there.
/// For a map `best_mean` is the mean on the seeds the best cell was chosen on, until judgeBest() plays
/// others.
[[nodiscard]] SweepResult sweepOf(const SweepPlan& plan, const Rows& rows);
/// Plays the best cell of a map on n seeds after the plan's.
void judgeBest(SweepResult& result, const SweepPlan& plan, const Model& model);
/// Width of the widest interval of a cell's difference to the best one, of the reps so far; yd.
[[nodiscard]] double widestDifference(const SweepPlan& plan, const Rows& rows);

}  // namespace gapsound
