#pragma once
#include "base/model.hpp"
#include "football/library.hpp"
#include "scenario/setup.hpp"

namespace gapsound {

/// Looks the names up, places 22 men and gives every one his job against what he faces. The same scenario
/// turned over x gives the same Setup turned over x, to the last bit.
/// Throws InputError (scenario.source, JSON path, value, what is allowed) for unknown names and men, settings
/// out of range, an illegal formation, offside, two men on one spot and faults a man cannot have.
[[nodiscard]] Setup resolve(const Scenario& scenario, const Library& library, const Model& model);

}  // namespace gapsound
