#pragma once
#include "scenario/setup.hpp"

namespace gapsound {

/// The scenario turned over x: direction, strength, hash, movement, spots and men named by side. What it
/// resolves to is the mirror image, apart from the names of the men named by side.
[[nodiscard]] Scenario mirrored(const Scenario& scenario);
/// "slant right" and "slant left", "right_hash" and "left_hash", "right" and "left".
[[nodiscard]] std::string otherSideWord(const std::string& words);

}  // namespace gapsound
