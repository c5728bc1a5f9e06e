#pragma once
#include <imgui.h>

#include "painters/window/fonts.hpp"
#include "picture/display_list.hpp"
#include "picture/theme.hpp"

namespace gapsound {

/// Draws a list as the Cairo painter does, into one of ImGui's draw lists. `scale` is pixels a page unit,
/// `corner` the pixel where the page begins.
void paint(ImDrawList& into, const DisplayList& list, const Theme& theme, const FontShelf& fonts,
           double scale, Vec2 corner = {});

/// A theme's colour as ImGui packs it.
[[nodiscard]] inline ImU32 packed(Colour c) { return IM_COL32(c.r, c.g, c.b, c.a); }

}  // namespace gapsound
