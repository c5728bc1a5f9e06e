#pragma once
#include "analysis/lanes.hpp"

namespace gapsound {

/// Where the offense means to run, told by men: between an inner jamb (the double team or the last down
/// block; in a zone run the blocker inside the aim) and an outer one (the man kicked out; in a zone run the
/// blocker outside the aim). It moves as they move.
struct Door {
  int direction = +1;  // of the run
  double inner = 0.0;  // x of the inner jamb, yd
  double outer = 0.0;  // x of the outer jamb, yd; may lie inside the inner one when the end closes it
  double edge = 0.0;   // x of the play-side end, yd; beyond it is a bounce
  int inner_man = kNobody, outer_man = kNobody, edge_man = kNobody;
  /// Relation of a spot on the line to the play: back side of the inner jamb is a cutback, outside the end a
  /// bounce, between the jambs designed, the rest inside.
  [[nodiscard]] Relation relationOf(double x) const;
};
[[nodiscard]] Door doorAt(const Setup& setup, const Frame& frame);

}  // namespace gapsound
