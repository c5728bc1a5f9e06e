#include "picture/free_space.hpp"

#include <algorithm>

namespace gapsound {
namespace {

PageRect around(Vec2 middle, double width, double height) {
  return {middle.x - 0.5 * width, middle.y - 0.5 * height, width, height};
}

double common(const PageRect& a, const PageRect& b) {
  const double width = std::min(a.right(), b.right()) - std::max(a.x, b.x);
  const double height = std::min(a.bottom(), b.bottom()) - std::max(a.y, b.y);
  return width > 0.0 && height > 0.0 ? width * height : 0.0;
}

}  // namespace

void FreeSpace::take(Vec2 middle, double width, double height) { take(around(middle, width, height)); }

double FreeSpace::overlap(const PageRect& box) const {
  double sum = 4.0 * (box.width * box.height - common(box, within_));  // off the panel is worst
  for (const PageRect& other : taken_) sum += common(box, other);
  return sum;
}

Vec2 FreeSpace::place(const std::vector<Vec2>& middles, double width, double height) {
  const auto best = std::min_element(middles.begin(), middles.end(), [&](Vec2 a, Vec2 b) {
    return overlap(around(a, width, height)) < overlap(around(b, width, height)) - 0.5;
  });
  take(*best, width, height);
  return *best;
}

}  // namespace gapsound
