#pragma once
#include <optional>

#include "picture/display_list.hpp"
#include "picture/field.hpp"
#include "tape/tape.hpp"

namespace gapsound {

/// How a run is drawn the way play books draw it: men where they stand at the snap, blocks as lines that end
/// in a bar, the back's path heavy with an arrow.
struct DiagramLook {
  PageRect box;                             // page
  Vec2 low{-11.0, -8.0}, high{11.0, 10.2};  // drawn yards, see drawnAt()
  double symbol = 0.46;                     // radius of a man's sign, drawn yd
  double text = 17.0;                       // page units
  double stroke = 1.0;
  bool names = true;
  bool blocks = true;  // paths of the offense up to the crossing
  bool fits = true;    // paths of the defense up to the crossing
  bool dots = false;   // defenders as dots with their names beside them
};

/// Where a spot of the field is drawn: wide and deep men stand closer than they do, so that all 22 are on the
/// page at a size that can be read.
[[nodiscard]] Vec2 drawnAt(Vec2 spot);
/// A rep as a play book's drawing; what is drawn is the path each man ran in it.
[[nodiscard]] Panel diagramPanel(const Tape& tape, const DiagramLook& look);

/// Where each blocker first meets somebody before the crossing, and the climb after it; real yards.
struct BlockPath {
  std::vector<Vec2> points;       // from his spot; pullers and leads keep the bend of their way
  std::vector<std::size_t> bars;  // points at which he meets a man
};
[[nodiscard]] BlockPath blockPathOf(const Tape& tape, int man);

/// A free-standing arrow head at the end of a path, of this length in drawn yards; fewer than two points draw
/// nothing.
void drawArrow(Panel& panel, const std::vector<Vec2>& points, double length, StyleId style);

}  // namespace gapsound
