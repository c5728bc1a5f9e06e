#pragma once
#include <vector>

#include "picture/display_list.hpp"

namespace gapsound {

/// Keeps labels off symbols and off each other: remembers taken rectangles of the page.
class FreeSpace {
 public:
  explicit FreeSpace(const PageRect& within) : within_(within) {}
  void take(const PageRect& box) { taken_.push_back(box); }
  void take(Vec2 middle, double width, double height);
  /// The first of the middles with the least overlap for a box of this size; the place is then taken.
  /// `middles` must not be empty.
  Vec2 place(const std::vector<Vec2>& middles, double width, double height);

 private:
  [[nodiscard]] double overlap(const PageRect& box) const;

  PageRect within_;
  std::vector<PageRect> taken_;
};

}  // namespace gapsound
