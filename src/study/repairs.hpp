#pragma once
#include "study/leak.hpp"
#include "study/turns.hpp"

namespace gapsound {

/// A setting of the call against what was seen, nobody making a mistake.
struct CallCause {
  std::size_t call = 0;  // of the other calls asked about
  double weight = 0.0;   // against the other calls and the call as it is, each as likely before
};
/// Which other call explains what was seen, the likeliest first.
[[nodiscard]] std::vector<CallCause> callsBehind(const Setup& look, const std::vector<OtherCall>& calls,
                                                 const Seen& seen, const Model& model,
                                                 const LeakSearch& search, const Progress& progress = {});

/// What a change wins back of what a mistake costs, on common seeds; yd a snap.
struct Repair {
  std::size_t call = 0;
  Paired won_back;  // with the mistake: as called - otherwise
};
struct RepairResult {
  double mean_sound = 0.0, mean_with = 0.0;
  Paired cost;                  // with the mistake - without
  std::vector<Repair> repairs;  // the cheapest first: those that surely win half the cost back, by price and
                                // then by what they win; then the others by what they win
  std::size_t good = 0;         // so many of them surely win half of it back; 0 where it surely costs nothing
};
/// Tries other calls with the mistake laid on them. They are picked on `search.n` seeds and judged on as many
/// others.
[[nodiscard]] RepairResult repairsFor(const Setup& look, const Mistake& mistake,
                                      const std::vector<OtherCall>& calls, const Model& model,
                                      const LeakSearch& search, const Progress& progress = {});

/// The seed to show, counted from the search's first: of the quarter of reps most like what was seen, the one
/// whose gain changes most like the mean when `after` is played instead. `off`: misfits of the reps of
/// `before`.
[[nodiscard]] std::size_t seedToShow(const Setup& before, const Setup& after, const std::vector<double>& off,
                                     const Model& model, const LeakSearch& search);

}  // namespace gapsound
