#pragma once
#include <array>
#include <string>
#include <vector>

#include "analysis/account.hpp"
#include "scenario/scenario.hpp"
#include "study/statistics.hpp"

namespace gapsound {

/// A question the program answers by comparing two looks: B minus A, yards.
struct Headline {
  std::string words;
  Scenario a, b;
};
inline constexpr int kHeadlines = 4;
/// Safety speed, wide scrape, kicked end, front against variants.
[[nodiscard]] std::array<Headline, kHeadlines> headlines();

/// The reps of both sides of the headlines: [2 * headline + side][rep].
using Played = std::vector<std::vector<Summary>>;

/// What a changed constant does on the same seeds.
struct Sensitivity {
  double yards = 0.0;                    // mean gain over all looks, changed less unchanged
  double cutback = 0.0;                  // share of reps on which the cutback was taken, likewise
  std::array<Paired, kHeadlines> shift;  // of each answer: changed (B - A) less unchanged (B - A)
};
/// Judged on the reps of `changed`; `unchanged` has at least as many.
[[nodiscard]] Sensitivity sensitivityOf(const Played& unchanged, const Played& changed);
/// The answer itself, interval at 99 %.
[[nodiscard]] Paired answerOf(const Played& played, int headline);
/// The shift could carry an answer of this size to the other side of zero, as far as its reps can tell.
[[nodiscard]] bool couldTurn(const Paired& answer, const Paired& shift);

}  // namespace gapsound
