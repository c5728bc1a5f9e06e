#pragma once
#include <span>
#include <string>
#include <vector>

#include "analysis/account.hpp"
#include "scenario/scenario.hpp"
#include "study/played_looks.hpp"
#include "study/statistics.hpp"

namespace gapsound {

/// What a trial counts on each rep. Shares are 0 or 1 a rep; widths and places in yards.
enum class Yardstick {
  yards,         // the gain
  to_twenty,     // the gain, 20 for all beyond: what the fit decides and not the open field
  spread,        // distance of the gain from its side's median
  lost,          // share below 0
  stuffed,       // share of 0 or less
  twelve_plus,   // share of 12 and more
  crossing,      // where he crossed the line, toward the run; reps that crossed on both sides
  outside,       // share that crossed 5 yd and more outside the ball
  outside_gain,  // the gain of runs that crossed there, 20 at most; 0 for others
  bent,          // share that crossed behind the designed lane, whose jamb moves with its blocker
  inside_guard,  // share that crossed in the near A gap, as it lay at the snap, or behind it
  inside_gain,   // the gain of runs that crossed there, 20 at most; 0 for others
  room,          // nearest defender at the crossing; reps that crossed on both sides
  through,       // share of the pullers who met a backer or a defensive back first
  forward,       // offensive line's mean movement 2 s after the snap
  out,           // share that ended out of bounds
  seconds        // length of the rep
};
[[nodiscard]] std::string_view nameOf(Yardstick what);
[[nodiscard]] bool isShare(Yardstick what);

/// One paired comparison: side B against side A on common random numbers.
struct Trial {
  std::string words;  // what side B has that side A has not
  Scenario a, b;
  Yardstick what = Yardstick::yards;
  int sign = +1;         // B is to have more (+1) or less (-1)
  int n = 1000;          // reps a side
  bool shown = true;     // false: the simulation does not bear it out; asserted by no test
  std::string why = {};  // of one not shown: our explanation
  bool beyond = false;   // another look or reading than the statement's own, tried as well; never shown
};

/// A statement coaches agree on, all else equal, and the trials it rests on.
struct TradeFact {
  int number = 0;
  std::string words;
  std::string source;  // "common practice, no source", or the source
  std::vector<Trial> trials;
};
/// The statements tried by playing; the gap arithmetic (17) and the mirror (30) are exact tests instead.
[[nodiscard]] std::vector<TradeFact> tradeFacts();

inline constexpr double kTradeAlpha = 0.001;
struct TrialResult {
  Paired paired;  // B - A, interval at 99.9 %
  double mean_a = 0, mean_b = 0;
  bool holds = false;  // the sign asked for, p < alpha
};
enum class Verdict { holds, in_part, misses };
/// By the trials of the statement's own looks, those beyond left out; results in the order of the trials.
[[nodiscard]] Verdict verdictOf(const TradeFact& fact, const std::vector<TrialResult>& results);

/// Judges a trial on the reps of its two sides, seed by seed; directions +1 or -1 of either side's run.
[[nodiscard]] TrialResult judge(const Trial& trial, int direction_a, int direction_b,
                                std::span<const Summary> a, std::span<const Summary> b,
                                double alpha = kTradeAlpha);

/// Judged on n reps a side, on fewer where these settle it.
[[nodiscard]] TrialResult judged(const Trial& trial, int n, PlayedLooks& looks);

}  // namespace gapsound
