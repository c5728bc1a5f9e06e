#pragma once
#include <array>
#include <optional>
#include <vector>

#include "study/faults.hpp"
#include "study/sightings.hpp"

namespace gapsound {

/// What was seen of a snap, in the frame of the look; whatever is missing says nothing.
struct Seen {
  struct Place {
    std::optional<double> x, y;  // yd
  };
  double t = 2.0;                     // when the men stood there, s after the snap
  std::array<Place, kMen> men;        // in the order of the Setup
  std::optional<double> yards;        // gain
  std::optional<EndState> end;        // what the play-side end was to the first backer before it was decided
  std::optional<BackerState> backer;  // what the first backer was to the alley man
};
[[nodiscard]] bool isEmpty(const Seen& seen);
/// The places of all men at `t` and the gain of a rep.
[[nodiscard]] Seen seenOf(const Tape& tape, double t);

/// How well reps of one look agree with what was seen.
struct Agreement {
  double likelihood = 0.0;  // logarithm, up to a constant common to all looks of a comparison
  double states = 0.0;      // the share of it that the states have
  double mark = 0.0;        // how far its men stand from those of the first look, in standard deviations
  std::vector<double> off;  // misfit of every rep
};
/// Reps of many looks on common seeds against what was seen: the mean of each look, and a scatter pooled over
/// all, so that men who stand elsewhere together count once. The first look is what the others are held
/// against.
class Comparison {
 public:
  Comparison(const Seen& seen, const std::vector<Setup>& looks, const Model& model, std::uint64_t first_seed,
             int n, int threads, const Progress& progress = {});
  [[nodiscard]] const std::vector<Agreement>& looks() const { return looks_; }

 private:
  std::vector<Agreement> looks_;
};

/// A mistake that may have caused what was seen. Amounts have been tried; this one fits best.
struct LeakCause {
  Mistake mistake;
  double weight = 0.0;  // against all other mistakes that leave a mark and none; before it was seen none and
                        // any as likely
};
struct LeakResult {
  std::vector<LeakCause> causes;     // the likeliest first
  double sound = 0.0;                // weight of nobody making a mistake
  std::array<double, 3> by_level{};  // weight of the mistakes of levels 1, 2, 3
  int unmarked = 0;                  // mistakes that leave no mark on what was seen
};
struct LeakSearch {
  std::uint64_t first_seed = 1;
  int n = 64;       // reps a look; at first fewer of all mistakes, then more of the likeliest
  int threads = 0;  // 0: all cores
};
/// The mistakes of one defender each that explain what was seen, on top of those the look has.
[[nodiscard]] LeakResult causesOf(const Setup& look, const Seen& seen, const Model& model,
                                  const LeakSearch& search, const Progress& progress = {});

/// The look with the mistake on it.
[[nodiscard]] Setup withMistake(Setup look, const Mistake& mistake);

}  // namespace gapsound
