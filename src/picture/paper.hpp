#pragma once
#include <cstdint>

#include "base/vec2.hpp"

namespace gapsound {

enum class Paper : std::uint8_t { letter, a4 };

/// An upright sheet in page units, 144 to the inch.
[[nodiscard]] constexpr Vec2 sheetSize(Paper paper) {
  return paper == Paper::letter ? Vec2{1224.0, 1584.0} : Vec2{1190.55, 1683.78};
}

}  // namespace gapsound
