#pragma once
#include "athlete/body.hpp"
#include "base/model.hpp"
#include "base/vec2.hpp"

namespace gapsound {

/// Share of his forward top speed a man reaches moving along `move` while his chest points along `face`
/// (unit vectors): 1 forwards, model.loco_crossover sideways, body.backpedal backwards, straight between.
[[nodiscard]] double speedShare(const Body& body, const Model& model, Vec2 face, Vec2 move);

/// Acceleration (yd/s^2) of a man who moves at `vel` and wants `want`, within the sprint law forwards
/// (V - v)/T, the braking cap backwards, the lateral cap across and the friction ellipse that joins them.
[[nodiscard]] Vec2 accelerationToward(const Body& body, const Model& model, Vec2 vel, Vec2 face, Vec2 want);

/// `face` turned toward `goal` (unit vectors) by at most `angle` radians.
[[nodiscard]] Vec2 turnedToward(Vec2 face, Vec2 goal, double angle);

}  // namespace gapsound
