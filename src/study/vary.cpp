#include "study/vary.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "study/sweep_words.hpp"
#include "study/versus.hpp"

namespace gapsound {
namespace {

constexpr int kResamples = 400;
constexpr std::size_t kFirstLook = 25;  // reps of each coarse cell of a map that come first
constexpr double kNoBreak = std::numeric_limits<double>::quiet_NaN();

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

Situation situationAt(const SweepPlan& plan, std::size_t cell) {
  return plan.setups.empty() ? Situation{} : situationOf(plan.setups[cell]);
}

/// What the rules look at, taken out of the reps once: values[rule][cell][rep].
struct Judged {
  const SweepPlan& plan;
  std::vector<std::vector<std::vector<double>>> values;

  Judged(const SweepPlan& sweep, const Rows& rows) : plan(sweep) {
    for (const BreakRule& rule : plan.rules) {
      auto& cells = values.emplace_back(rows.size());
      for (std::size_t cell = 0; cell < rows.size(); ++cell)
        for (const Outcome& rep : rows[cell])
          cells[cell].push_back(rule.measure->of(rep, situationAt(plan, cell)));
    }
  }
  /// By the reps drawn, or by all of them.
  [[nodiscard]] double mean(std::size_t rule, std::size_t cell, std::span<const std::size_t> drawn) const {
    const auto& reps = values[rule][cell];
    if (drawn.empty()) return meanOf(reps);
    double sum = 0.0;
    for (const std::size_t k : drawn) sum += reps[k];
    return sum / static_cast<double>(drawn.size());
  }
  [[nodiscard]] bool breaks(std::size_t cell, std::size_t best,
                            std::span<const std::size_t> drawn = {}) const {
    for (std::size_t rule = 0; rule < values.size(); ++rule)
      if (plan.rules[rule].breaks(mean(rule, cell, drawn), mean(rule, best, drawn))) return true;
    return false;
  }
  /// The first cell past `best` that breaks; the number of cells when none does.
  [[nodiscard]] std::size_t firstBreak(std::size_t best, std::span<const std::size_t> drawn = {}) const {
    const std::size_t cells = values.front().size();
    for (std::size_t cell = best + 1; cell < cells; ++cell)
      if (breaks(cell, best, drawn)) return cell;
    return cells;
  }
};

std::optional<BreakPoint> breakPointOf(const SweepPlan& plan, const Judged& judged, std::size_t best) {
  const auto& values = plan.axes[0].values;
  const std::size_t cell = judged.firstBreak(best);
  if (cell == values.size()) return {};
  BreakPoint point{cell, values[cell], {}, 0.0};
  int found = 0;
  const auto reps = static_cast<int>(judged.values[0][0].size());
  point.ci =
      bootstrapInterval(reps, kResamples, plan.first_seed, 0.95, [&](std::span<const std::size_t> drawn) {
        const std::size_t k = judged.firstBreak(best, drawn);
        if (k == values.size()) return kNoBreak;
        ++found;
        return values[k];
      });
  point.found = static_cast<double>(found) / kResamples;
  return point;
}

Rows slice(const Rows& rows, std::size_t from, std::size_t to) {
  Rows part;
  for (const auto& row : rows)
    part.emplace_back(row.begin() + static_cast<std::ptrdiff_t>(from),
                      row.begin() + static_cast<std::ptrdiff_t>(to));
  return part;
}

/// Reps that every cell has.
std::size_t repsOfAll(const Rows& rows) {
  std::size_t least = rows.front().size();
  for (const auto& row : rows) least = std::min(least, row.size());
  return least;
}

struct Halves {
  Rows judging, choosing;
};
Halves halvesOf(const SweepPlan& plan, const Rows& rows) {
  const std::size_t all = repsOfAll(rows);
  const bool map = plan.axes.size() > 1;
  const std::size_t half = map ? all : all / 2;
  return {slice(rows, 0, half), map ? slice(rows, 0, all) : slice(rows, half, 2 * half)};
}

Paired against(const std::vector<Outcome>& best, const std::vector<Outcome>& cell) {
  return pairedDifference(yardsOf(best), yardsOf(cell));
}

/// Every other value of an axis, both ends among them.
std::vector<std::size_t> coarse(std::size_t values) {
  std::vector<std::size_t> places;
  for (std::size_t k = 0; k < values; k += 2) places.push_back(k);
  if (places.back() + 1 < values) places.push_back(values - 1);
  return places;
}

}  // namespace

Schedule SweepPlan::schedule() const {
  const auto reps = static_cast<std::size_t>(seeds());
  if (axes.size() < 2) return {setups.size(), reps};
  std::vector<std::size_t> look;
  for (const std::size_t row : coarse(axes[0].values.size()))
    for (const std::size_t column : coarse(axes[1].values.size()))
      look.push_back(row * axes[1].values.size() + column);
  return {setups.size(), reps, look, kFirstLook};
}

SweepResult sweepOf(const SweepPlan& plan, const Rows& rows) {
  SweepResult result;
  result.axes = plan.axes;
  if (rows.empty()) return result;
  const auto [judging, choosing] = halvesOf(plan, rows);
  if (judging.front().empty()) return result;
  result.best = cheapestCell(choosing);
  const Judged judged(plan, judging);
  for (std::size_t k = 0; k < judging.size(); ++k)
    result.cells.push_back({valuesAt(plan, k), gainsOf(judging[k], situationAt(plan, k)),
                            against(judging[result.best], judging[k]), judged.breaks(k, result.best)});
  result.best_mean = result.cells[result.best].gains.mean;
  if (plan.axes.size() == 1) result.break_point = breakPointOf(plan, judged, result.best);
  result.sentence = sentenceOf(plan, result);
  return result;
}

void judgeBest(SweepResult& result, const SweepPlan& plan, const Model& model) {
  if (plan.axes.size() < 2 || result.cells.empty()) return;
  const auto reps = playMany(plan.setups[result.best], model,
                             plan.first_seed + static_cast<std::uint64_t>(plan.n), plan.n, plan.threads);
  result.best_mean = meanOf(yardsOf(reps));
  result.sentence = sentenceOf(plan, result);
}

double widestDifference(const SweepPlan& plan, const Rows& rows) {
  const auto [judging, choosing] = halvesOf(plan, rows);
  const std::size_t best = cheapestCell(choosing);
  double widest = 0.0;
  for (const auto& row : judging) {
    const Interval ci = against(judging[best], row).ci;
    widest = std::max(widest, ci.high - ci.low);
  }
  return widest;
}

SweepResult vary(const SweepPlan& plan, const Model& model, const Progress& progress) {
  Rows rows(plan.setups.size());
  const Schedule schedule = plan.schedule();
  const auto keep = [&](std::size_t k, const Summary& rep) {
    rows[schedule.at(k).cell].push_back(outcomeOf(rep));
    return true;
  };
  const std::size_t done =
      playInOrder({plan.setups, model, plan.first_seed}, schedule, 0, plan.threads, keep, progress);
  SweepResult result = sweepOf(plan, rows);
  if (done == schedule.size()) judgeBest(result, plan, model);
  return result;
}

}  // namespace gapsound
