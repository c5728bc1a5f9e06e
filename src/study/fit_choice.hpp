#pragma once
#include <optional>
#include <vector>

#include "study/reps.hpp"
#include "study/statistics.hpp"

namespace gapsound {

/// Something a man might do: another fit for what he sees, or a mistake.
struct FitDeed {
  Fit fit = Fit::called;
  std::optional<Fault> fault;  // given: the right fit with this mistake
  bool operator==(const FitDeed& other) const;
};

/// Gains are judged as charts cut them off: a run longer than this counts as this, so that a handful of long
/// ones do not decide what is right.
inline constexpr double kLongestCounted = 15.0;  // yd

/// A deed and what it came to on the reps in which the man had the choice.
struct FitOption {
  FitDeed deed;
  double mean = 0.0;      // yd gained, long runs cut
  Vec2 place;             // where it had him at the crossing in the rep shown, yd
  double difference = 0;  // mean yards it cost against the right fit, on the same luck
  Interval ci;            // 95 %
};

/// A state of the man in front, and the choice it puts to a man.
struct FitChoice {
  int man = kNobody;
  FitRole role = FitRole::out;
  std::optional<EndState> end;        // what he saw, a backer in a fit
  std::optional<BackerState> backer;  // the alley safety; neither: the others, who go by their call
  int n = 0;                          // reps it was judged on
  FitOption right;                    // what the library tells him
  std::vector<FitOption> others;      // judged, cheapest first; none leads to the right place
  std::uint64_t seed = 1;             // the rep shown
  double t = 0.0;                     // s, when he decided in that rep
  /// The others that cost at least `margin` and surely something: what may be offered beside the right one.
  [[nodiscard]] std::vector<FitOption> wrong(double margin) const;
  /// True when no other came out better and at least one is wrong.
  [[nodiscard]] bool clear(double margin) const;
};

/// The choices the man had in `n` reps, those judged with the widest margin first. Deeds are picked on the
/// first third of the seeds and judged on the rest. Empty for men whose deeds the call leaves no choice.
[[nodiscard]] std::vector<FitChoice> choicesOf(const Setup& setup, int man, const Model& model,
                                               std::uint64_t first_seed, int n, int threads = 0);
/// The setup in which the man of the choice does this.
[[nodiscard]] Setup withDeed(const Setup& setup, const FitChoice& choice, const FitDeed& deed);

/// Another place, and what the run gained with the man there.
struct OtherPlace {
  Vec2 place;          // yd, when the run was decided
  double yards = 0.0;  // of that one rep
};
/// Where his other deeds would have had the man in this very rep, those with which it gained at least
/// `margin` yards more, costliest first, each apart from where he was and from one another; at most three.
/// Empty where he had no choice. It plays the rep once for each deed.
[[nodiscard]] std::vector<OtherPlace> otherPlacesIn(const Tape& tape, int man, const Model& model,
                                                    double margin);

}  // namespace gapsound
