#pragma once
#include <optional>
#include <string>
#include <vector>

#include "study/distribution.hpp"
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
};

struct SweepCell {
  std::vector<double> at;
  Distribution gains;
  Paired past_best;   // yards against the best cell, on the judging seeds
  Paired opens_more;  // share of open cutbacks against the best cell
};

/// First value past the best one that costs the defense: half a yard more, or ten more open cutbacks in a
/// hundred.
struct BreakPoint {
  std::size_t cell = 0;
  double value = 0.0;
  Interval ci;         // 95 %, bootstrap over the reps that found a break
  double found = 0.0;  // share of the bootstrap samples that found one
};

struct SweepResult {
  std::vector<SweepAxis> axes;
  std::vector<SweepCell> cells;
  std::size_t best = 0;  // fewest yards; chosen on seeds of its own, judged on those of the cells
  std::optional<BreakPoint> break_point;  // null for two axes and where there is none
  std::string sentence;
};

/// Plays the plan's cells on common random numbers: n seeds to judge and, after them, n to choose the best
/// cell.
[[nodiscard]] SweepResult vary(const SweepPlan& plan, const Model& model, const Progress& progress = {});
/// The answer from reps already played: result[cell][rep] of the choosing and of the judging seeds.
[[nodiscard]] SweepResult sweepOf(const SweepPlan& plan, const std::vector<std::vector<Summary>>& choosing,
                                  const std::vector<std::vector<Summary>>& judging);

}  // namespace gapsound
