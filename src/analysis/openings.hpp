#pragma once
#include <vector>

#include "analysis/lanes.hpp"

namespace gapsound {

/// Half the room a turned body takes along x and y: an ellipse with the shoulders across the facing and the
/// chest along it.
[[nodiscard]] Vec2 halfExtent(const Body& body, Vec2 face);

/// The free intervals of the front at one frame, from left to right, with left, right, y and the two men
/// filled in. Bodies that reach into the two yards of the cut bound them; overlapping bodies count as one.
/// Outside the last body of the box a lane is at most `kWidest` yards wide.
[[nodiscard]] std::vector<Lane> openingsAt(const Setup& setup, const Frame& frame);

/// Fills in t_runner, t_defender, margin and state. Free defenders count: not held by a blocker, not down.
void timeLane(const Setup& setup, const Frame& frame, Lane& lane);

inline constexpr double kPassable = 1.2;    // yd, narrowest lane a runner gets through upright
inline constexpr double kClean = 2.0;       // yd, lane he gets through untouched
inline constexpr double kContested = 0.15;  // s of margin either way

}  // namespace gapsound
