#pragma once
#include <array>

#include "minds/glimpse.hpp"
#include "scenario/setup.hpp"

namespace gapsound {

/// One defender as his own huddle knows him.
struct HuddleMan {
  Vec2 spot;
  FitJob fit;
};
using Defenders = std::array<HuddleMan, kMen - kOffense>;  // men 11..21 of the Setup
[[nodiscard]] Defenders defendersOf(const Setup& setup);

/// What the defense agreed on in its own huddle: who does what if the run goes either way.
/// Built from the defenders alone: the type holds nothing of the offense's.
struct TeamPlan {
  struct Side {
    int end = kNobody;       // the edge man on the run's side
    double end_slant = 0.0;  // his called movement along x, yd
    int tackle = kNobody;    // the next man on the line inside him
    int back_end = kNobody;  // the edge man away from the run
    int first = kNobody;     // b1
    double first_gap = 0.0;  // his called gap, x in yd
    int fill = kNobody;      // a backer between b1 and the last one
    int overlap = kNobody;   // the last backer
    int force = kNobody;
    int alley = kNobody;
    int cutback = kNobody;
  };
  std::array<int, kMen - kOffense> in_front;  // lineman nearest to each defender's spot
  std::array<Side, 2> sides;                  // [0]: run to the offense's right, [1]: left
  FitTable fits;
  [[nodiscard]] const Side& toward(int direction) const { return sides[direction >= 0 ? 0 : 1]; }
};
[[nodiscard]] TeamPlan teamPlanOf(const Defenders& men, const FitTable& fits);
[[nodiscard]] FitRole roleFor(const FitJob& job, int direction);

}  // namespace gapsound
