#pragma once
#include <string>
#include <vector>

#include "scenario/setup.hpp"

namespace gapsound {

/// The gaps between the attached blockers at the snap, lettered outward from the center: "A+", "D-",
/// "alley+".
class GapChart {
 public:
  explicit GapChart(const Setup& setup);
  /// Name of the gap that x lies in, at the snap's spacing. The gap outside the last blocker is 2 yd wide;
  /// beyond it lies the alley.
  [[nodiscard]] std::string at(double x) const;

 private:
  double center_ = 0.0;
  std::vector<double> right_, left_;  // distances of the attached blockers from the center, ascending
};

/// An offensive man beside the center at the snap: a lineman, or a tight end or wing next to one.
[[nodiscard]] bool isAttached(const Man& man);
/// The same, the center included.
[[nodiscard]] bool isInLine(const Man& man);

}  // namespace gapsound
