#include "study/vary.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "study/versus.hpp"

namespace gapsound {
namespace {

constexpr double kCostlyYards = 0.5;
constexpr double kCostlyWindows = 0.10;
constexpr int kResamples = 400;
constexpr double kNoBreak = std::numeric_limits<double>::quiet_NaN();

using Rows = std::vector<std::vector<Summary>>;

std::size_t cheapestCell(const Rows& rows) {
  std::size_t best = 0;
  double least = std::numeric_limits<double>::infinity();
  for (std::size_t k = 0; k < rows.size(); ++k) {
    const double mean = meanOf(yardsOf(rows[k]));
    if (mean < least) least = mean, best = k;
  }
  return best;
}

std::vector<double> valuesAt(const SweepPlan& plan, std::size_t cell) {
  if (plan.axes.size() == 1) return {plan.axes[0].values[cell]};
  const std::size_t columns = plan.axes[1].values.size();
  return {plan.axes[0].values[cell / columns], plan.axes[1].values[cell % columns]};
}

bool costs(double yards, double windows) { return yards >= kCostlyYards || windows >= kCostlyWindows; }

/// Index of the first cell past `best` that costs, by the reps drawn; rows.size() when none does.
std::size_t firstCostly(const Rows& rows, std::size_t best, std::span<const std::size_t> drawn) {
  for (std::size_t cell = best + 1; cell < rows.size(); ++cell) {
    double yards = 0.0, windows = 0.0;
    for (const std::size_t k : drawn) {
      yards += rows[cell][k].yards - rows[best][k].yards;
      windows += static_cast<int>(rows[cell][k].cutback_open) - static_cast<int>(rows[best][k].cutback_open);
    }
    const auto n = static_cast<double>(drawn.size());
    if (costs(yards / n, windows / n)) return cell;
  }
  return rows.size();
}

std::vector<std::size_t> everyRep(const Rows& rows) {
  std::vector<std::size_t> all(rows.front().size());
  for (std::size_t k = 0; k < all.size(); ++k) all[k] = k;
  return all;
}

std::optional<BreakPoint> breakPointOf(const SweepPlan& plan, const Rows& rows, std::size_t best) {
  if (plan.axes.size() != 1 || rows.front().empty()) return {};
  const auto& values = plan.axes[0].values;
  const std::size_t cell = firstCostly(rows, best, everyRep(rows));
  if (cell == rows.size()) return {};
  BreakPoint point{cell, values[cell], {}, 0.0};
  int found = 0;
  point.ci = bootstrapInterval(static_cast<int>(rows.front().size()), kResamples, plan.first_seed, 0.95,
                               [&](std::span<const std::size_t> drawn) {
                                 const std::size_t k = firstCostly(rows, best, drawn);
                                 if (k == rows.size()) return kNoBreak;
                                 ++found;
                                 return values[k];
                               });
  point.found = static_cast<double>(found) / kResamples;
  return point;
}

std::string measured(double value, const std::string& unit) {
  return unit.empty() ? fmt::format("{:g}", value) : fmt::format("{:g} {}", value, unit);
}

std::string breakSentence(const SweepResult& r) {
  const SweepAxis& axis = r.axes[0];
  const SweepCell& best = r.cells[r.best];
  const SweepCell& cell = r.cells[r.break_point->cell];
  std::string text = fmt::format("Up to {} is sound for {}; from {} on ",
                                 measured(axis.values[r.break_point->cell - 1], axis.unit), axis.words,
                                 measured(r.break_point->value, axis.unit));
  const bool yards = cell.past_best.difference >= kCostlyYards;
  const bool windows = cell.opens_more.difference >= kCostlyWindows;
  if (yards)
    text += fmt::format("the run gains {:.1f} yd a snap more than at {}", cell.past_best.difference,
                        measured(best.at[0], axis.unit));
  if (yards && windows) text += " and ";
  if (windows)
    text += fmt::format("the cutback is open in {:.0f} % of snaps instead of {:.0f} %",
                        100.0 * cell.gains.cutback_open, 100.0 * best.gains.cutback_open);
  return text;
}

std::string steadySentence(const SweepResult& r) {
  const SweepAxis& axis = r.axes[0];
  const std::string place = measured(r.cells[r.best].at[0], axis.unit);
  if (r.best + 1 == r.cells.size())
    return fmt::format("There is no break point: {} is best at {}, the most that was tried", axis.words,
                       place);
  return fmt::format(
      "There is no break point up to {} for {}: past its best value of {} nothing costs half a yard a "
      "snap or opens ten more cutbacks in a hundred",
      measured(axis.values.back(), axis.unit), axis.words, place);
}

std::string mapSentence(const SweepResult& r) {
  const auto worst =
      std::max_element(r.cells.begin(), r.cells.end(),
                       [](const SweepCell& a, const SweepCell& b) { return a.gains.mean < b.gains.mean; });
  const auto place = [&](const SweepCell& cell) {
    return fmt::format("{} at {} and {} at {}", r.axes[0].words, measured(cell.at[0], r.axes[0].unit),
                       r.axes[1].words, measured(cell.at[1], r.axes[1].unit));
  };
  return fmt::format("The run gains least, {:.1f} yd a snap, with {}; it gains most, {:.1f}, with {}",
                     r.cells[r.best].gains.mean, place(r.cells[r.best]), worst->gains.mean, place(*worst));
}

std::string sentenceOf(const SweepPlan& plan, const SweepResult& r) {
  std::string text = r.axes.size() > 1 ? mapSentence(r)
                     : r.break_point   ? breakSentence(r)
                                       : steadySentence(r);
  return text + (plan.about_safety ? "; no pass threat is in this number." : ".");
}

}  // namespace

SweepResult sweepOf(const SweepPlan& plan, const Rows& choosing, const Rows& judging) {
  SweepResult result;
  result.axes = plan.axes;
  if (judging.empty() || judging.front().empty()) return result;
  result.best = cheapestCell(choosing);
  for (std::size_t k = 0; k < judging.size(); ++k) {
    const Situation situation = plan.setups.empty() ? Situation{} : situationOf(plan.setups[k]);
    const Versus pair = compared(judging[result.best], judging[k], situation, situation);
    result.cells.push_back({valuesAt(plan, k), pair.b, pair.yards, pair.cutback_open});
  }
  result.break_point = breakPointOf(plan, judging, result.best);
  result.sentence = sentenceOf(plan, result);
  return result;
}

SweepResult vary(const SweepPlan& plan, const Model& model, const Progress& progress) {
  auto judging = playAll(plan.setups, model, plan.first_seed, 2 * plan.n, plan.threads, progress);
  Rows choosing(judging.size());
  for (std::size_t k = 0; k < judging.size(); ++k) {
    const auto judged = judging[k].size() / 2;
    const auto from = judging[k].begin() + static_cast<std::ptrdiff_t>(judged);
    choosing[k].assign(from, judging[k].end());
    judging[k].erase(from, judging[k].end());
  }
  return sweepOf(plan, choosing, judging);
}

}  // namespace gapsound
