#pragma once
#include "scenario/look.hpp"

namespace gapsound {

/// Room from the ball to each sideline and what the level does to alignments; in the frame of the look.
struct Ground {
  double left = 26.67, right = 26.67;  // yd, > 0
  double to_goal = 75.0;
  Splits splits;
  double backers_from = 0.0;  // least and greatest depth of a backer who is no overhang, yd
  double backers_to = 25.0;
};

/// Offense placed strong right: line splits of the level, receivers kept in the field, H on the side the
/// scheme wants him. `run_side`: +1 when the run goes to the strong side.
[[nodiscard]] std::array<Attacker, kOffense> alignOffense(const Formation& formation, const Scheme& scheme,
                                                          int run_side, const Ground& ground);

/// The defense's part of a call that moves men before the snap; borrows from the library.
struct DefenseCall {
  const Front* front = nullptr;
  const Shell* shell = nullptr;
  const Movement* movement = nullptr;
  std::vector<const Check*> checks;
};
/// Defense placed on an offense, the front set to the right; every man gets a spot and a gap.
/// Throws CheckMissing when a check needs men or a formation that are not there.
[[nodiscard]] Look alignDefense(const std::array<Attacker, kOffense>& offense, const DefenseCall& call,
                                const Ground& ground);

/// A check that this look does not allow.
struct CheckMissing {
  std::string check, needs;
};
/// Side a check is made to: +1 right, -1 left, 0 when the formation gives no reason for it.
[[nodiscard]] int sideOf(const Check& check, const std::array<Attacker, kOffense>& offense);
/// Moves the men of a look as the check says. Throws CheckMissing.
void applyCheck(Look& look, const Check& check, const Ground& ground);

inline constexpr double kEdgeSafety = 2.1;  // a man on the edge stands outside the last blocker, yd

}  // namespace gapsound
