#pragma once
#include <vector>

#include "base/vec2.hpp"

namespace gapsound {

/// How much likelier than under one bell a place is under the shape the places of one man really have, as a
/// logarithm: a man who is either kicked or not stands in two heaps. Kernel estimate after Silverman (1986),
/// a tenth of it a wide bell so that no place is impossible; `read`: variance of a
/// place read from film, yd2, above 0.
[[nodiscard]] double shapeGain(const std::vector<Vec2>& places, Vec2 at, double read);

}  // namespace gapsound
