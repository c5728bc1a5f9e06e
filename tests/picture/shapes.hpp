#pragma once
#include <vector>

#include "picture/display_list.hpp"

namespace gapsound {

template <typename Kind>
std::vector<Kind> all(const Panel& panel) {
  std::vector<Kind> found;
  for (const Shape& shape : panel.shapes) {
    if (const Kind* kind = std::get_if<Kind>(&shape)) found.push_back(*kind);
  }
  return found;
}

template <typename Kind>
std::vector<Kind> all(const Panel& panel, StyleId style) {
  std::vector<Kind> found;
  for (const Kind& shape : all<Kind>(panel)) {
    if (shape.style == style) found.push_back(shape);
  }
  return found;
}

template <typename Kind>
int count(const Panel& panel, StyleId style) {
  return static_cast<int>(all<Kind>(panel, style).size());
}

inline bool isSign(StyleId style) {
  return style == StyleId::offense || style == StyleId::carrier || style == StyleId::defense_1 ||
         style == StyleId::defense_2 || style == StyleId::defense_3;
}

/// Middles of the 22 signs; a triangle's is taken from its three corners.
inline std::vector<Vec2> signMiddles(const Panel& panel) {
  std::vector<Vec2> middles;
  for (const Disc& disc : all<Disc>(panel)) {
    if (isSign(disc.style)) middles.push_back(disc.centre);
  }
  for (const Rect& rect : all<Rect>(panel)) {
    if (isSign(rect.style)) middles.push_back(0.5 * (rect.low + rect.high));
  }
  for (const Polygon& p : all<Polygon>(panel)) {
    if (isSign(p.style)) middles.push_back((1.0 / 3.0) * (p.points[0] + p.points[1] + p.points[2]));
  }
  return middles;
}

/// The part of the page a one-line label covers, its letters without the air around them.
inline PageRect boxOf(const Panel& panel, const Label& label) {
  const Vec2 at = panel.camera.toPage(label.at);
  const double width = roughWidth(label.text, label.size);
  const double share = label.anchor == Anchor::left ? 0.0 : label.anchor == Anchor::centre ? 0.5 : 1.0;
  const double top = label.rise == Rise::middle ? at.y - 0.36 * label.size : at.y;
  return {at.x - share * width, top, width, 0.72 * label.size};
}

inline bool overlap(const PageRect& a, const PageRect& b) {
  return a.x < b.right() && b.x < a.right() && a.y < b.bottom() && b.y < a.bottom();
}

}  // namespace gapsound
