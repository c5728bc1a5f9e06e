#pragma once
#include <string>
#include <vector>

#include "analysis/lanes.hpp"
#include "picture/field.hpp"
#include "picture/free_space.hpp"

namespace gapsound {

/// Wide enough to run through, 1.2 yd.
[[nodiscard]] bool passable(const Lane& lane);
/// Its state, closed for one nobody fits through.
[[nodiscard]] LaneState shownState(const Lane& lane);

/// A gate across each lane; its state shows by colour and by line: open unbroken and heavy, contested
/// dashed, closed dotted.
void drawLanes(Panel& panel, const std::vector<Lane>& lanes);
/// Dimension lines across the lanes asked for, with width in yards and margin in seconds.
void drawCalipers(Panel& panel, const std::vector<Lane>& lanes, const FieldLook& look, FreeSpace& space);

/// "1.8 yd", "+0.32 s": as written beside calipers and in the ledger.
[[nodiscard]] std::string yardsText(double yards);
[[nodiscard]] std::string marginText(double margin);

}  // namespace gapsound
