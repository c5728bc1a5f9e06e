#pragma once
#include <array>
#include <vector>

#include "picture/display_list.hpp"

namespace gapsound {

// Outlines in pixels for a painter that knows only straight lines and convex fills.

/// Enough corners that the eye sees a circle.
[[nodiscard]] std::vector<Vec2> circleOutline(Vec2 centre, double radius);
/// Rounded corners of `radius`, held to half the box.
[[nodiscard]] std::vector<Vec2> boxOutline(const PageRect& box, double radius);
[[nodiscard]] bool isConvex(const std::vector<Vec2>& outline);
/// Cuts ears until nothing is left; the outline may be concave but must not cross itself.
[[nodiscard]] std::vector<std::array<Vec2, 3>> triangles(std::vector<Vec2> outline);
/// The inked runs of a dashed line; `dash` is on, off, ... and has at least one positive length.
[[nodiscard]] std::vector<std::vector<Vec2>> dashed(const std::vector<Vec2>& points, bool closed,
                                                    const std::vector<double>& dash);

}  // namespace gapsound
