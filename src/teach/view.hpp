#pragma once
#include <string>
#include <vector>

#include "analysis/lanes.hpp"
#include "picture/display_list.hpp"
#include "tape/tape.hpp"

namespace gapsound {

/// The part of the field that keeps the ball in sight: `base` shifted with the ball once it nears an edge,
/// smoothly in t. Seconds.
[[nodiscard]] FieldView viewAt(const Tape& tape, double t, const FieldView& base);
/// Radius of a man's sign in yards: no smaller than `least_page` page units, else close to his shoulders.
[[nodiscard]] double symbolFor(const PageRect& box, const FieldView& view, double least_page);
/// Frames of the last `span` seconds before t, oldest first, for trails.
[[nodiscard]] std::vector<Frame> framesBefore(const Tape& tape, double t, double span = 0.8);
/// When the ball crosses the line; first contact where it never does, late in the tape where neither is.
[[nodiscard]] double crossingOf(const Tape& tape);
/// The lanes at t while they mean something: from the hand-off until the ball is through; else none.
[[nodiscard]] std::vector<Lane> lanesShownAt(const Tape& tape, double t, const Frame& frame);
/// "21 I strong, power right against 4-3 over, quarters, spill": what is played, in one line.
[[nodiscard]] std::string lookLine(const Setup& setup);
/// "gain of 4.2 yd, tackled": how it ended.
[[nodiscard]] std::string endingLine(const Record& record);

}  // namespace gapsound
