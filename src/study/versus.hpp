#pragma once
#include "study/distribution.hpp"
#include "study/reps.hpp"

namespace gapsound {

/// Two looks rep by rep on common random numbers.
struct Versus {
  int n = 0;
  Distribution a, b;
  Paired yards;         // b - a; identical sides: [0, 0] and p 1
  Paired cutback_open;  // b - a, as shares
};
[[nodiscard]] Versus versus(const Setup& a, const Setup& b, const Model& model, std::uint64_t first_seed,
                            int n, int threads = 0, const Progress& progress = {});
/// The same from reps that were played already, seed by seed in the same order.
[[nodiscard]] Versus compared(std::span<const Summary> a, std::span<const Summary> b,
                              const Situation& situation_a, const Situation& situation_b);
[[nodiscard]] Situation situationOf(const Setup& setup);

}  // namespace gapsound
