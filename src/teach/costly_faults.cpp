#include <fmt/format.h>

#include <algorithm>

#include "study/faults.hpp"
#include "teach/fit_sheet.hpp"

namespace gapsound {
namespace {

constexpr int kScreening = 24;  // reps on which mistakes are picked
constexpr std::size_t kPicked = 6, kShown = 3;

Rows outcomesOf(const std::vector<Setup>& setups, const Model& model, std::uint64_t first_seed, int n,
                int threads) {
  Rows rows;
  for (const auto& reps : playAll(setups, model, first_seed, n, threads)) {
    rows.emplace_back();
    for (const Summary& rep : reps) rows.back().push_back(outcomeOf(rep));
  }
  return rows;
}

/// The costliest on the call; what is won back off the man in front is asked of these alone.
std::vector<Mistakes> costliest(const Setup& setup, const Model& model, std::uint64_t first_seed,
                                int threads) {
  const auto mistakes = everyMistake(setup, false);
  const auto both = faultSetups(setup, mistakes);
  std::vector<Setup> called;
  for (std::size_t k = 1; k < both.size(); k += 2) called.push_back(both[k]);
  const Rows rows = outcomesOf(called, model, first_seed, kScreening, threads);
  std::vector<std::pair<double, Mistakes>> costs;
  for (std::size_t k = 0; k < mistakes.size(); ++k)
    costs.emplace_back(pairedDifference(yardsOf(rows[0]), yardsOf(rows[k + 1])).difference, mistakes[k]);
  std::stable_sort(costs.begin(), costs.end(),
                   [](const auto& a, const auto& b) { return a.first > b.first; });
  std::vector<Mistakes> picked;
  for (std::size_t k = 0; k < std::min(kPicked, costs.size()); ++k) picked.push_back(costs[k].second);
  return picked;
}

CostlyFault told(const Setup& setup, const FaultRow& row) {
  const Mistake& mistake = row.mistakes.front();
  const auto id = [&](int man) { return setup.men[static_cast<std::size_t>(man)].id; };
  const FaultFacts& facts = factsOf(mistake.fault.kind);
  const std::string amount =
      facts.unit == "share" ? "" : fmt::format(" ({:g} {})", mistake.fault.amount, facts.unit);
  const std::string repair = row.repaired_by == kNobody
                                 ? "Fitting off the man in front surely wins none of it back."
                                 : fmt::format("{} repairs it off the man in front: {:.1f} yd won back.",
                                               id(row.repaired_by), row.won_back.difference);
  return {fmt::format("{} {}{}", id(mistake.man), facts.words, amount), row.loss.difference, repair};
}

}  // namespace

std::vector<CostlyFault> costlyFaultsOf(const Setup& setup, const Model& model, std::uint64_t first_seed,
                                        int n, int threads) {
  const auto picked = costliest(setup, model, first_seed, threads);
  const Rows rows = outcomesOf(faultSetups(setup, picked), model, first_seed + kScreening, n, threads);
  std::vector<CostlyFault> faults;
  for (const FaultRow& row : faultsOf(setup, picked, rows).rows)
    if (faults.size() < kShown && row.loss.ci.low > 0.0) faults.push_back(told(setup, row));
  return faults;
}

}  // namespace gapsound
