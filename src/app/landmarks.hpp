#pragma once
#include <optional>
#include <string>
#include <vector>

#include "football/library.hpp"
#include "scenario/setup.hpp"

namespace gapsound {

/// A place on the field a coach has a name for.
struct Landmark {
  std::string name;  // "3 technique right", "over Y", "right hash"
  double x = 0.0;    // yd
};
/// Places across for a defender: techniques on the blockers as they are split here, receivers and hashes.
[[nodiscard]] std::vector<Landmark> landmarksOf(const Setup& setup, const Library& library);
/// A technique's x with the splits of this level, which may be wider than the drawn ones.
[[nodiscard]] double techniqueX(double drawn_x, const Library& library, Level level);

struct Dropped {
  Vec2 spot;
  std::string name;  // of the landmark he snapped to; "" for none
};
/// Where a man dragged to `wanted` is put: on the nearest landmark within reach, else on the nearest half
/// yard; depth in half yards, men of the line in tenths. An attacker goes to half yards.
[[nodiscard]] Dropped snapped(Vec2 wanted, int man, const Setup& setup, const Library& library);
/// "3 technique right, 4.5 yd off", as near as there is a name.
[[nodiscard]] std::string placeWords(int man, const Setup& setup, const Library& library);

}  // namespace gapsound
