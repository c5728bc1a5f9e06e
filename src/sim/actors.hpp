#pragma once
#include <array>
#include <vector>

#include "base/model.hpp"
#include "minds/defender.hpp"
#include "minds/intent.hpp"
#include "minds/offense.hpp"
#include "scenario/setup.hpp"
#include "sim/record.hpp"

namespace gapsound {

/// One man during a rep: his body and job, what the snap's luck made of him, and what he means to do now.
struct Actor {
  const Man* man = nullptr;
  Intent intent;
  double strength = 1.0;      // this snap's push, 1 = his usual
  double out_until_s = -1.0;  // on the ground or beaten until then
  bool down = false;
  std::uint64_t seed = 0;  // of the rep: a touch of two men has a stream of its own
  Stream tackle_luck{0, 0, "tackle"};
  DefenderMemory defender;
  BlockerMemory blocker;
  RunnerMemory runner;
  PasserMemory passer;
};

using Actors = std::array<Actor, kMen>;

/// Where everybody is during one tick; read by all stages, written by the world's step alone.
struct Present {
  Frame frame;
  int tick = 0;
  double clock_s = 0.0;
};

}  // namespace gapsound
