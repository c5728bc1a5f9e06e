#pragma once
#include <algorithm>
#include <vector>

#include "scenario/look.hpp"

namespace gapsound {

/// What both sides count before the snap when the run goes to `side`. Men are indices of the Setup (11..21).
struct Counts {
  int edge = kNobody;        // end man on the line, play side
  int back_edge = kNobody;   // likewise away from the run
  std::vector<int> backers;  // b1, b2, b3: off the ball between the slots, play side first
  [[nodiscard]] bool hasBacker(int man) const {
    return std::find(backers.begin(), backers.end(), man) != backers.end();
  }
};
[[nodiscard]] Counts countsOf(const Look& look, const LineShape& shape, int side);

inline const Defender& defenderOf(const Look& look, int man) {
  return look.defense[static_cast<std::size_t>(man - kOffense)];
}
inline const Attacker& attackerOf(const Look& look, int man) {
  return look.offense[static_cast<std::size_t>(man)];
}
[[nodiscard]] inline bool isOverhang(const Defender& man) {
  return man.rule == PlaceRule::overhang || man.rule == PlaceRule::slot;
}
/// A corner who may fit: in zone, or with no receiver outside him; a wing or end he has in man blocks.
[[nodiscard]] inline bool isZoneCorner(const Defender& man) {
  return man.rule == PlaceRule::corner && (man.nub || man.man_on == kNobody);
}
/// Over the tackle of his side or farther out.
[[nodiscard]] inline bool isOutsideBacker(const LineShape& shape, double x) {
  constexpr double kOver = 0.35;  // yd
  const int side = x < shape.middle_x - 1e-9 ? -1 : +1;
  return side * (x - shape.xs(side)[1]) > -kOver;
}
/// Close enough to the line to be counted on it.
[[nodiscard]] inline bool isOnLine(const Defender& man) { return man.spot.y <= 1.5; }

}  // namespace gapsound
