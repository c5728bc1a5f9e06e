#include "study/matrix.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <limits>

#include "base/nearest.hpp"
#include "scenario/check.hpp"
#include "study/versus.hpp"

namespace gapsound {
namespace {

std::string unownedGap(const Setup& setup) {
  for (const GapOwner& gap : gapsOf(setup))
    if (gap.owners.empty()) return gap.gap;
  return "";
}

double meanAt(const MatrixResult& r, std::size_t cell) { return r.cells[cell].gains.mean; }

std::size_t worstWithin(const MatrixResult& r, std::size_t from, std::size_t to) {
  std::size_t worst = from;
  for (std::size_t cell = from; cell < to; ++cell)
    if (meanAt(r, cell) > meanAt(r, worst)) worst = cell;
  return worst;
}

std::string sizeWords(const Gains& gains) {
  return fmt::format("{:.1f} yd a snap ({:.1f} to {:.1f})", gains.mean, gains.mean_ci.low,
                     gains.mean_ci.high);
}

std::string adviceWords(const Advice& advice) {
  const Paired& saves = advice.saves;
  if (saves.ci.low <= 0.0) return "no single change of that call helps for sure";
  return fmt::format(
      "the single change of that call that helps most is {}, {:.1f} yd a snap ({:.1f} to {:.1f})",
      advice.words, saves.difference, saves.ci.low, saves.ci.high);
}

std::string sentenceOf(const MatrixResult& r) {
  const MatrixCell& least = r.cells[r.worst_of_row[r.best_row]];
  const MatrixCell& worst = r.cells[r.worst];
  std::string text;
  if (r.rows.size() > 1)
    text = fmt::format(
        "{} stands up best: the run that hurts it most, {}, gains {}; the worst of all is {} against {}, {}",
        r.rows[least.row], r.columns[least.column], sizeWords(least.gains), r.rows[worst.row],
        r.columns[worst.column], sizeWords(worst.gains));
  else
    text = fmt::format("{} is hurt most by {}, {}", r.rows.front(), r.columns[worst.column],
                       sizeWords(worst.gains));
  if (r.advice) text += "; " + adviceWords(*r.advice);
  return text + ".";
}

Paired saving(const std::vector<Outcome>& as_it_is, const std::vector<Outcome>& changed, std::size_t from,
              std::size_t to) {
  const auto part = [&](const std::vector<Outcome>& reps) {
    return std::span<const Outcome>(reps).subspan(from, to - from);
  };
  return pairedDifference(yardsOf(part(changed)), yardsOf(part(as_it_is)));
}

}  // namespace

MatrixResult matrixOf(const Plan& plan, const std::vector<Setup>& setups, const Rows& rows) {
  MatrixResult r;
  for (const PlanCall& call : plan.calls) r.rows.push_back(call.name);
  for (const PlanRun& run : plan.runs) r.columns.push_back(run.name);
  const std::size_t columns = plan.runs.size();
  for (std::size_t k = 0; k < rows.size(); ++k)
    r.cells.push_back(
        {k / columns, k % columns, gainsOf(rows[k], situationOf(setups[k])), unownedGap(setups[k])});
  r.worst = worstWithin(r, 0, r.cells.size());
  for (std::size_t row = 0; row < r.rows.size(); ++row)
    r.worst_of_row.push_back(worstWithin(r, row * columns, (row + 1) * columns));
  const auto least =
      std::min_element(r.worst_of_row.begin(), r.worst_of_row.end(),
                       [&](std::size_t a, std::size_t b) { return meanAt(r, a) < meanAt(r, b); });
  r.best_row = static_cast<std::size_t>(least - r.worst_of_row.begin());
  r.sentence = sentenceOf(r);
  return r;
}

std::vector<CallChange> callChanges(const DefensePlan& call, const Library& library) {
  std::vector<CallChange> changes;
  const auto add = [&](std::string DefensePlan::*field, const std::string& value, const char* what) {
    if (sameName(call.*field, value)) return;
    changes.push_back({fmt::format("{}{} in place of {}", what, value, call.*field), call});
    changes.back().defense.*field = value;
  };
  for (const char* structure : {"spill", "box"}) add(&DefensePlan::structure, structure, "");
  if (const Front* front = findFront(library, call.front))
    for (const auto& movement : movementNames(*front)) add(&DefensePlan::movement, movement, "the movement ");
  for (const char* job : {"overlap", "fold", "shoot", "hang"})
    add(&DefensePlan::bs_backer, job, "the back-side backer's ");
  const Shell* own = findShell(library, call.shell);
  for (const Shell& shell : library.shells)
    if (&shell != own) add(&DefensePlan::shell, shell.name, "");
  return changes;
}

void advise(MatrixResult& result, const std::vector<CallChange>& changes, const Rows& rows) {
  const std::size_t all = rows.front().size(), half = all / 2;
  std::size_t best = 0;
  double most = -std::numeric_limits<double>::infinity();
  for (std::size_t k = 0; k < changes.size(); ++k) {
    const double saves = saving(rows[0], rows[k + 1], 0, half).difference;
    if (saves > most) most = saves, best = k;
  }
  if (changes.empty()) return;
  result.advice = Advice{changes[best].words, saving(rows[0], rows[best + 1], half, all)};
  result.sentence = sentenceOf(result);
}

}  // namespace gapsound
