#pragma once
#include "scenario/setup.hpp"

namespace gapsound {

/// The defenders a coach asks about first, by their place against this run.
struct Cast {
  int end = kNobody;           // edge man on the play side
  int first_backer = kNobody;  // b1, the outermost backer on the play side
  int safety = kNobody;        // play-side safety
  int back_safety = kNobody;   // the safety away from the run
};

/// The play-side safety is the level-3 man, no corner, nearest the play side at the snap; with one safety
/// high it is the man rolled down there, if there is one. Missing men stay kNobody.
[[nodiscard]] Cast castOf(const Setup& setup);
/// The same as if the run went to the given side (+1 the offense's right).
[[nodiscard]] Cast castOf(const Setup& setup, int direction);

}  // namespace gapsound
