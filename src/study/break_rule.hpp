#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "study/outcome.hpp"

namespace gapsound {

/// A number of a cell that a break can be told by: the mean over the reps of what a single rep counts.
struct GainMeasure {
  std::string_view name;   // as in --limit and in JSON
  std::string_view words;  // "the mean gain"
  bool is_share = false;
  bool more_is_worse = true;  // for the defense
  double (*of)(const Outcome& rep, const Situation& situation) = nullptr;
};
[[nodiscard]] const std::vector<GainMeasure>& gainMeasures();
/// Null when there is none of that name.
[[nodiscard]] const GainMeasure* gainMeasureNamed(std::string_view name);

/// When a cell breaks: its measure is at least `amount` worse than the best cell's, or past `amount` itself.
struct BreakRule {
  const GainMeasure* measure = nullptr;
  double amount = 0.0;
  bool over_best = true;
  [[nodiscard]] bool breaks(double value, double best) const {
    const double bound = over_best ? best + amount : amount;
    return measure->more_is_worse ? value >= bound : value <= bound;
  }
};
/// Half a yard a snap more than at the best value, or ten more open cutbacks in a hundred.
[[nodiscard]] std::vector<BreakRule> usualBreakRules();
/// "the mean gain reaches 5.5 yd", "the mean gain is 0.5 yd above the best".
[[nodiscard]] std::string wordsOf(const BreakRule& rule);

}  // namespace gapsound
