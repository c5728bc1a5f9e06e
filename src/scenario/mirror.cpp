#include <utility>

#include "scenario/setup.hpp"

namespace gapsound {

Setup mirrored(const Setup& setup) {
  Setup m = setup;
  m.direction = -setup.direction;
  for (Man& man : m.men) {
    man.spot = mirrored(man.spot);
    man.facing = mirrored(man.facing);
    man.fit.gap_x = -man.fit.gap_x;
    man.fit.slant_x = -man.fit.slant_x;
    std::swap(man.fit.if_right, man.fit.if_left);
  }
  m.run.mesh = mirrored(m.run.mesh);
  for (Vec2& step : m.run.steps) step = mirrored(step);
  m.run.aim_x = -m.run.aim_x;
  m.sideline_left = -setup.sideline_right;
  m.sideline_right = -setup.sideline_left;
  return m;
}

}  // namespace gapsound
