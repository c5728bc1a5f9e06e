#include "study/faults.hpp"

#include <doctest/doctest.h>

#include <algorithm>

#include "looks.hpp"

using namespace gapsound;

namespace {

Rows outcomesOf(const std::vector<Setup>& setups, int n) {
  Rows rows;
  for (const auto& reps : playAll(setups, looks::model(), 1, n, 2)) {
    rows.emplace_back();
    for (const Summary& rep : reps) rows.back().push_back(outcomeOf(rep));
  }
  return rows;
}

}  // namespace

TEST_CASE("mistakes ranked from the call alone stand in the order of the whole table") {
  constexpr int kReps = 8;
  const Setup look = looks::shipped("power-right-spill");
  auto mistakes = everyMistake(look, false);
  mistakes.resize(std::min<std::size_t>(mistakes.size(), 12));
  const auto first = costliestFirst(mistakes, outcomesOf(calledSetups(look, mistakes), kReps));
  const auto table = faultsOf(look, mistakes, outcomesOf(faultSetups(look, mistakes), kReps)).rows;
  REQUIRE(first.size() == table.size());
  for (std::size_t k = 0; k < table.size(); ++k)
    CHECK(nameOf(look, first[k]) == nameOf(look, table[k].mistakes));
  CHECK(table.front().loss.difference > table.back().loss.difference);
}
