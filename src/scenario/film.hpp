#pragma once
#include <string>
#include <vector>

#include "base/model.hpp"
#include "football/library.hpp"
#include "scenario/scenario.hpp"

namespace gapsound {

/// One man of a tracking frame in the frame of the run: x to the offense's right, y downfield of the line,
/// yd.
struct FilmMan {
  std::string label;  // his position as the file calls it: "OLB", "HB", "NT"
  bool attacks = false;
  bool has_ball = false;
  Vec2 pos, vel;
  std::optional<double> facing_deg;  // clockwise from downfield
};

/// A picture and what is known about it. `look` may name formation, scheme, front, direction and level.
struct Film {
  std::vector<FilmMan> men;  // 22
  double since_snap_s = 1.3;
  double left_sideline = -26.667;  // x of it, in the frame of the men
  Scenario look;
};

/// The scenario that starts there: x counted from where the ball was snapped (over the middle lineman), each
/// man under an id of the library by his label, his place and his movement; where formation, scheme and front
/// are named, the man of that look he is nearest to. Throws InputError for labels that are no position.
[[nodiscard]] Scenario scenarioFrom(const Film& film, const Library& library, const Model& model);

/// True for a position name this program knows, whatever the case.
[[nodiscard]] bool isPosition(const std::string& label);

}  // namespace gapsound
