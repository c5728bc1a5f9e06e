#pragma once
#include <array>
#include <optional>

#include "study/reps.hpp"

namespace gapsound {

/// The last thing a man saw of the level in front of him before the run was decided; empty: nothing yet.
struct Sighting {
  std::optional<EndState> end;        // of the end, as the first backer saw him
  std::optional<BackerState> backer;  // of the first backer, as the alley man saw him
};
[[nodiscard]] Sighting sightingOf(const Tape& tape);

/// Many reps of one look, with what was seen in each.
struct Sightings {
  std::uint64_t first_seed = 1;
  std::vector<Summary> reps;
  std::vector<Sighting> seen;  // rep by rep
  [[nodiscard]] int count(EndState state) const;
  [[nodiscard]] int count(BackerState state) const;
};
[[nodiscard]] Sightings sightingsOf(const Setup& setup, const Model& model, std::uint64_t first_seed, int n,
                                    int threads = 0, const Progress& progress = {});
/// The first seed whose gain lies closest to the median of them all. Needs one rep or more.
[[nodiscard]] std::uint64_t typicalSeed(const Sightings& sightings);

}  // namespace gapsound
