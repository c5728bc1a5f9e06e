#pragma once
#include "base/model.hpp"
#include "football/library.hpp"
#include "scenario/setup.hpp"

namespace gapsound {

/// Body of a man of a group at a level, pads in, before the man's own figures are laid over it.
[[nodiscard]] Body bodyOf(const Bodies& bodies, Group group, Level level, const Model& model);
/// Half breadth and half depth follow from mass; yd.
void setMass(Body& body, const Bodies& bodies, double mass_kg);
/// Ten and forty-yard times in place of the group's speed; a missing one follows from the other. Pads are
/// laid on, the level is not. Throws InputError naming both times when no sprint fits them.
/// `clock_start_s`: how far the clock of the times runs behind his first movement.
void setTimes(Body& body, const ManSettings& man, double clock_start_s, const Model& model,
              const std::string& file, const std::string& path);

}  // namespace gapsound
