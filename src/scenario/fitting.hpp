#pragma once
#include <array>

#include "scenario/counts.hpp"

namespace gapsound {

/// What each defender was told, from the call and the alignment alone; [0] is man 11. Nothing of the
/// offense's plan is read. Delays, speeds and switches per man are left at their defaults.
[[nodiscard]] std::array<FitJob, kMen - kOffense> fittingOf(const Look& look, const Shell& shell);

}  // namespace gapsound
