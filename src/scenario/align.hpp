#pragma once
#include "scenario/look.hpp"

namespace gapsound {

/// Room from the ball to each sideline and what the level does to alignments; in the frame of the look.
struct Ground {
  double left = 26.67, right = 26.67;  // yd, > 0
  double to_goal = 75.0;
  Splits splits;
};

/// Offense placed strong right: line splits of the level, receivers kept in the field, H on the side the
/// scheme wants him. `run_side`: +1 when the run goes to the strong side.
[[nodiscard]] std::array<Attacker, kOffense> alignOffense(const Formation& formation, const Scheme& scheme,
                                                          int run_side, const Ground& ground);

/// Defense placed on an offense that stands strong right; every man gets a spot and a gap.
[[nodiscard]] Look alignDefense(const std::array<Attacker, kOffense>& offense, const Front& front,
                                const Shell& shell, const Movement* movement, const Ground& ground);

}  // namespace gapsound
