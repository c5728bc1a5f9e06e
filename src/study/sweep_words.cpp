#include "study/sweep_words.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace gapsound {
namespace {

constexpr double kSure = 0.9;  // share of the resamples that find a break

std::string rangeWords(const BreakPoint& point, const std::string& unit) {
  const Interval& ci = point.ci;
  if (ci.low == ci.high)
    return fmt::format("the break is at {} in 95 % of resamples", measured(ci.low, unit));
  std::string text =
      fmt::format("the break lies between {:g} and {} at 95 %", ci.low, measured(ci.high, unit));
  if (point.found < kSure)
    text += fmt::format(", and {:.0f} resamples in a hundred show none", 100 * (1 - point.found));
  return text;
}

/// What the usual rules found at the break.
std::string usualCost(const SweepResult& r, const SweepCell& cell, const SweepCell& best) {
  std::string text;
  const double windows = cell.gains.cutback_open - best.gains.cutback_open;
  const auto rules = usualBreakRules();
  const bool yards = rules[0].breaks(cell.past_best.difference, 0.0);
  if (yards)
    text = fmt::format("the run gains {:.1f} yd a snap more than at {}", cell.past_best.difference,
                       measured(best.at[0], r.axes[0].unit));
  if (rules[1].breaks(windows, 0.0))
    text +=
        fmt::format("{}the cutback is open in {:.0f} % of snaps instead of {:.0f} %", yards ? " and " : "",
                    100.0 * cell.gains.cutback_open, 100.0 * best.gains.cutback_open);
  return text;
}

std::string breakSentence(const SweepPlan& plan, const SweepResult& r) {
  const SweepAxis& axis = r.axes[0];
  const SweepCell& cell = r.cells[r.break_point->cell];
  return fmt::format("Up to {} is sound for {}; from {} on {} ({})",
                     measured(axis.values[r.break_point->cell - 1], axis.unit), axis.words,
                     measured(r.break_point->value, axis.unit),
                     plan.usual_rules ? usualCost(r, cell, r.cells[r.best]) : wordsOf(plan.rules.front()),
                     rangeWords(*r.break_point, axis.unit));
}

/// No value is told from the best one at 95 %.
bool allAlike(const SweepResult& r) {
  return std::all_of(r.cells.begin(), r.cells.end(),
                     [](const SweepCell& cell) { return cell.past_best.ci.low <= 0.0; });
}

std::string steadySentence(const SweepPlan& plan, const SweepResult& r) {
  const SweepAxis& axis = r.axes[0];
  if (plan.usual_rules && allAlike(r))
    return fmt::format("There is no break point: from {:g} to {} {} makes no sure difference",
                       axis.values.front(), measured(axis.values.back(), axis.unit), axis.words);
  const std::string place = measured(r.cells[r.best].at[0], axis.unit);
  if (r.best + 1 == r.cells.size())
    return fmt::format("There is no break point: {}, the most that was tried, is as good as any for {}",
                       place, axis.words);
  const std::string what = plan.usual_rules
                               ? "nothing costs half a yard a snap or opens ten more cutbacks in a hundred"
                               : "at no value " + wordsOf(plan.rules.front());
  return fmt::format("There is no break point up to {} for {}: past its best value of {} {}",
                     measured(axis.values.back(), axis.unit), axis.words, place, what);
}

std::string mapSentence(const SweepPlan& plan, const SweepResult& r) {
  const auto worst =
      std::max_element(r.cells.begin(), r.cells.end(),
                       [](const SweepCell& a, const SweepCell& b) { return a.gains.mean < b.gains.mean; });
  const auto place = [&](const SweepCell& cell) {
    return fmt::format("{} at {} and {} at {}", r.axes[0].words, measured(cell.at[0], r.axes[0].unit),
                       r.axes[1].words, measured(cell.at[1], r.axes[1].unit));
  };
  const Interval& ci = worst->past_best.ci;
  std::string text = fmt::format(
      "The run gains least, {:.1f} yd a snap, with {}; it gains most, {:.1f} ({:.1f} to {:.1f} more), with "
      "{}",
      r.best_mean, place(r.cells[r.best]), worst->gains.mean, ci.low, ci.high, place(*worst));
  if (!plan.usual_rules) {
    const auto over =
        std::count_if(r.cells.begin(), r.cells.end(), [](const auto& cell) { return cell.breaks; });
    text += fmt::format("; in {} of {} cells {}", over, r.cells.size(), wordsOf(plan.rules.front()));
  }
  return text;
}

}  // namespace

std::string measured(double value, const std::string& unit) {
  return unit.empty() ? fmt::format("{:g}", value) : fmt::format("{:g} {}", value, unit);
}

std::string sentenceOf(const SweepPlan& plan, const SweepResult& r) {
  const std::string text = r.axes.size() > 1 ? mapSentence(plan, r)
                           : r.break_point   ? breakSentence(plan, r)
                                             : steadySentence(plan, r);
  return text + (plan.about_safety ? "; no pass threat is in this number." : ".");
}

}  // namespace gapsound
