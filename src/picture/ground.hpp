#pragma once
#include "picture/display_list.hpp"
#include "scenario/setup.hpp"

namespace gapsound {

/// Plain ground with hairline yard lines every five yards of the field, hash ticks every yard where the
/// rules of the setup's level put them, sidelines, the line of scrimmage thick and the line to gain dashed.
void drawGround(Panel& panel, const Setup& setup, double number_size);
/// Distance of a hash from its nearest sideline, yd: 17.78 school, 20.0 college, 23.58 pro.
[[nodiscard]] double hashDistance(Level level);

}  // namespace gapsound
