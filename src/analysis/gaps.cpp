#include "analysis/gaps.hpp"

#include <algorithm>
#include <cmath>

namespace gapsound {
namespace {

constexpr double kAttachedDepth = 2.4;  // yd behind the line: a wing still makes a gap
constexpr double kAttachedWidth = 7.0;  // yd from the ball
constexpr double kEdgeGap = 2.0;        // yd outside the last blocker

std::string lettered(const std::vector<double>& blockers, double x, char side) {
  const auto beyond = std::upper_bound(blockers.begin(), blockers.end(), x) - blockers.begin();
  const bool in_alley = blockers.empty() || x > blockers.back() + kEdgeGap;
  if (in_alley) return std::string("alley") + side;
  return {static_cast<char>('A' + beyond), side};
}

}  // namespace

bool isAttached(const Man& man) {
  if (!man.attacks || man.spot.y < -kAttachedDepth || std::abs(man.spot.x) > kAttachedWidth) return false;
  return man.group == Group::guard || man.group == Group::off_tackle || man.group == Group::tackle ||
         man.group == Group::tight_end;
}

bool isInLine(const Man& man) { return (man.attacks && man.group == Group::center) || isAttached(man); }

GapChart::GapChart(const Setup& setup) {
  for (const Man& man : setup.men)
    if (man.attacks && man.group == Group::center) center_ = man.spot.x;
  for (const Man& man : setup.men) {
    if (!isAttached(man)) continue;
    const double x = man.spot.x - center_;
    (x > 0.0 ? right_ : left_).push_back(std::abs(x));
  }
  std::sort(right_.begin(), right_.end());
  std::sort(left_.begin(), left_.end());
}

std::string GapChart::at(double x) const {
  const double off = x - center_;
  return off >= 0.0 ? lettered(right_, off, '+') : lettered(left_, -off, '-');
}

}  // namespace gapsound
