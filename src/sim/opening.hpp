#pragma once
#include <utility>
#include <vector>

#include "scenario/setup.hpp"
#include "sim/actors.hpp"

namespace gapsound {

/// The frames from the snap up to a start from film, `start_tick` of them: each man from rest on his spot to
/// the place and velocity of the picture on one smooth curve (cubic Hermite).
[[nodiscard]] std::vector<Frame> framesBefore(const Setup& setup, int start_tick, double reach_yd);

/// Blockers and defenders near enough to have hands on each other in the picture, nearest first, each blocker
/// once.
[[nodiscard]] std::vector<std::pair<int, int>> handsOn(const Setup& setup, double reach_yd);

/// What men have behind them when the rep starts: a defender on the move has read the side he moves to, the
/// back has done his steps.
void rememberBefore(const Setup& setup, Actors& actors);

}  // namespace gapsound
