#pragma once
#include <functional>

#include "scenario/look.hpp"

namespace gapsound {

using Offense = std::array<Attacker, kOffense>;

/// The look once a man has moved. The defense lines up before a fly or orbit man comes across; after a man
/// went to the other side it lines up on him there; a traded tight end finds the front where it was called
/// and the backers part of a gap over. `defended` aligns the defense on an offense. InputError (path
/// /offense/motion) when the man is not there, is of the wrong kind for it, stands on the line, or the trade
/// has no open side to go to.
[[nodiscard]] Look movedLook(const Offense& offense, const Motion& motion, const Scenario& scenario,
                             const std::function<Look(const Offense&)>& defended);

}  // namespace gapsound
