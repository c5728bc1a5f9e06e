#pragma once
#include "scenario/look.hpp"

namespace gapsound {

/// Refuses an illegal formation, a man offside or outside the field and two men on one spot; the look is in
/// the frame of the scenario. Throws InputError.
void requireLegal(const Look& look, const Scenario& scenario, double sideline_left, double sideline_right);

/// Refuses men whose torsos stand in each other before the snap: ellipses, shoulders across the field. Throws
/// InputError.
void requireRoom(const Setup& setup, const Scenario& scenario);

}  // namespace gapsound
