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

std::vector<Mistakes> costliest(const Setup& setup, const Model& model, std::uint64_t first_seed,
                                int threads) {
  const auto mistakes = everyMistake(setup, false);
  const Rows rows = outcomesOf(calledSetups(setup, mistakes), model, first_seed, kScreening, threads);
  std::vector<Mistakes> picked = costliestFirst(mistakes, rows);
  picked.resize(std::min(kPicked, picked.size()));
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
