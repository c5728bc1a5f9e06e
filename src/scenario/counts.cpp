#include "scenario/counts.hpp"

#include <algorithm>

namespace gapsound {
namespace {

constexpr double kEdgeReach = 2.5;      // yd outside the last blocker
constexpr double kOverhangReach = 2.0;  // yd from the end man, for an overhang to count as a backer
constexpr double kDeepestBacker = 6.5;  // yd

int endMan(const Look& look, const LineShape& shape, int side) {
  int best = kNobody;
  double best_x = -99.0;
  for (int i = kOffense; i < kMen; ++i) {
    const Defender& man = defenderOf(look, i);
    const double x = side * man.spot.x;
    if (isOnLine(man) && x > best_x && x <= side * shape.lastX(side) + kEdgeReach) {
      best = i;
      best_x = x;
    }
  }
  return best;
}

bool isBacker(const Look& look, int man, int edge, int back_edge) {
  const Defender& backer = defenderOf(look, man);
  if (backer.level != 2 || isOnLine(backer) || backer.spot.y > kDeepestBacker) return false;
  if (!isOverhang(backer)) return true;
  if (backer.gap.find("force") != std::string::npos) return false;
  const int end = backer.spot.x * defenderOf(look, edge).spot.x > 0 ? edge : back_edge;
  const double gap = backer.spot.x - defenderOf(look, end).spot.x;
  return (gap < 0 ? -gap : gap) <= kOverhangReach;
}

}  // namespace

Counts countsOf(const Look& look, const LineShape& shape, int side) {
  Counts counts;
  counts.edge = endMan(look, shape, side);
  counts.back_edge = endMan(look, shape, -side);
  if (counts.edge == kNobody || counts.back_edge == kNobody) return counts;
  for (int i = kOffense; i < kMen; ++i) {
    if (isBacker(look, i, counts.edge, counts.back_edge)) counts.backers.push_back(i);
  }
  std::stable_sort(counts.backers.begin(), counts.backers.end(), [&](int a, int b) {
    return side * defenderOf(look, a).spot.x > side * defenderOf(look, b).spot.x;
  });
  return counts;
}

}  // namespace gapsound
