#pragma once
#include <array>
#include <cstdint>

#include "base/vec2.hpp"
#include "scenario/setup.hpp"

namespace gapsound {

/// One man as anybody can see him.
struct Pose {
  Vec2 pos;                       // yd
  Vec2 vel;                       // yd/s
  Vec2 face{0.0, 1.0};            // unit vector of his chest
  std::int8_t engaged = kNobody;  // opponent he has hands on (defenders: the first who has hands on him)
  bool down = false;              // on the ground or out of the play for the moment
};

/// The whole picture at one tick. Nothing in here says what anybody was told to do.
struct Frame {
  std::array<Pose, kMen> men;
  Vec2 ball;
  std::int8_t carrier = kNobody;  // who has the ball; kNobody in flight
};

}  // namespace gapsound
