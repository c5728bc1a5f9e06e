#pragma once
#include "football/phrases.hpp"
#include "scenario/setup.hpp"

namespace gapsound {

/// His role against this run.
[[nodiscard]] FitRole roleIn(const Setup& setup, const Man& man);
/// The first defender in a role against this run; kNobody when nobody has it.
[[nodiscard]] int manIn(const Setup& setup, FitRole role);
/// What his role tells a defender against this run.
[[nodiscard]] const RoleWords::Way& wayOf(const Setup& setup, const Man& man, const Phrases& phrases);
/// What the play-side end was told.
[[nodiscard]] Structure structureOf(const Setup& setup);

}  // namespace gapsound
