#pragma once
#include <optional>
#include <string>
#include <vector>

#include "football/library.hpp"
#include "scenario/plan.hpp"
#include "study/outcome.hpp"
#include "study/reps.hpp"

namespace gapsound {

/// One of our calls against one of their runs.
struct MatrixCell {
  std::size_t row = 0, column = 0;  // call, run of the plan
  Gains gains;
  std::string unsound_gap;  // a gap nobody has on paper; empty: none
};

/// What one change of the call does to the worst cell.
struct CallChange {
  std::string words;  // "box in place of spill"
  DefensePlan defense;
};
struct Advice {
  std::string words;
  Paired saves;  // yards a snap, judged on other seeds than those it was chosen on
};

struct MatrixResult {
  std::vector<std::string> rows, columns;
  std::vector<MatrixCell> cells;          // [row * columns + column]
  std::size_t worst = 0;                  // cell with the highest mean
  std::vector<std::size_t> worst_of_row;  // cell
  std::size_t best_row = 0;               // its worst is the least
  std::optional<Advice> advice;
  std::string sentence;
};

/// `setups` and `rows` call by call, run by run within.
[[nodiscard]] MatrixResult matrixOf(const Plan& plan, const std::vector<Setup>& setups, const Rows& rows);
/// Every single change of a call that the library knows, but for the front itself.
[[nodiscard]] std::vector<CallChange> callChanges(const DefensePlan& call, const Library& library);
/// Best of the changes by the first half of the reps, judged on the second: rows[0] the call as it is,
/// rows[k] change k - 1. Renews the sentence.
void advise(MatrixResult& result, const std::vector<CallChange>& changes, const Rows& rows);

}  // namespace gapsound
