#pragma once
#include <string>
#include <utility>
#include <vector>

#include "study/outcome.hpp"
#include "study/reps.hpp"

namespace gapsound {

/// Mistakes laid on a look at once: one, or two for a pair.
struct Mistake {
  int man = 0;
  Fault fault;
};
using Mistakes = std::vector<Mistake>;

/// Every mistake on every man it fits: the defense, and the offense where asked for.
[[nodiscard]] std::vector<Mistakes> everyMistake(const Setup& look, bool blockers);
/// Two at once of the costliest `most`; a man's own mistakes are not paired.
struct FaultRow;
[[nodiscard]] std::vector<Mistakes> pairsOf(const std::vector<FaultRow>& ranked, std::size_t most);

/// The looks a failure table is played from: the look without a mistake and then with each of `mistakes`, all
/// men fitting off the man in front and all on the call, in turn.
[[nodiscard]] std::vector<Setup> faultSetups(const Setup& look, const std::vector<Mistakes>& mistakes);

/// On the call alone, for who only ranks: the look without a mistake and then with each of `mistakes`.
[[nodiscard]] std::vector<Setup> calledSetups(const Setup& look, const std::vector<Mistakes>& mistakes);
/// From the reps of calledSetups(), rows[cell][rep], in the order of FaultResult::rows.
[[nodiscard]] std::vector<Mistakes> costliestFirst(const std::vector<Mistakes>& mistakes, const Rows& rows);

/// A line of the failure table. Paired on common random numbers, at 95 %.
struct FaultRow {
  Mistakes mistakes;
  double mean_fixed = 0.0, mean_called = 0.0;  // with the mistake, off the man in front and on the call
  Paired loss;                                 // on the call: with the mistake - without; yd a snap
  Paired loss_fixed;                           // off the man in front: the same
  Paired won_back;                             // with the mistake: on the call - off the man in front
  double share_won_back = 0.0;                 // of the loss; 0 where there is no loss
  int repaired_by = kNobody;  // the man whose fit off the man in front made the difference most often
  double repairs = 0.0;       // his share of the snaps in which it made one
};

struct FaultResult {
  double mean_fixed = 0.0, mean_called = 0.0;  // without a mistake
  std::vector<FaultRow> rows;                  // the costliest first
  std::string sentence;
};
/// From the reps of faultSetups(), rows[cell][rep].
[[nodiscard]] FaultResult faultsOf(const Setup& look, const std::vector<Mistakes>& mistakes,
                                   const Rows& rows);

/// "SE kicked_out", "SE kicked_out, S scrape_wide".
[[nodiscard]] std::string nameOf(const Setup& look, const Mistakes& mistakes);

}  // namespace gapsound
