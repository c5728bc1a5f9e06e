#pragma once
#include <doctest/doctest.h>

#include <string>

#include "cli/session.hpp"
#include "teach/layout.hpp"

namespace gapsound::pages {

inline Model model() { return modelFor(""); }
inline Setup setupOf(const std::string& scenario) {
  return setupFor(std::string(GAPSOUND_ROOT) + "/scenarios/" + scenario + ".json", {}, model());
}

inline bool overlap(const PageRect& a, const PageRect& b) {
  constexpr double kTouch = 0.01;  // page units
  return a.x + kTouch < b.right() && b.x + kTouch < a.right() && a.y + kTouch < b.bottom() &&
         b.y + kTouch < a.bottom();
}

/// Every part on the page, no two in the same place.
inline void checkLaidOut(const LaidPage& page) {
  REQUIRE(page.boxes.size() > 3);
  for (std::size_t i = 0; i < page.boxes.size(); ++i) {
    const PageRect& box = page.boxes[i];
    CHECK(box.x >= 0.0);
    CHECK(box.y >= 0.0);
    CHECK(box.right() <= page.list.width);
    CHECK(box.bottom() <= page.list.height);
    for (std::size_t k = 0; k < i; ++k) {
      INFO(i << " and " << k << ": (" << box.x << ", " << box.y << ", " << box.width << ", " << box.height
             << ") on (" << page.boxes[k].x << ", " << page.boxes[k].y << ", " << page.boxes[k].width << ", "
             << page.boxes[k].height << ")");
      CHECK_FALSE(overlap(box, page.boxes[k]));
    }
  }
}

/// All words of a page in one text, blank between labels.
inline std::string wordsOf(const DisplayList& list) {
  std::string text;
  for (const Panel& panel : list.panels)
    for (const Shape& shape : panel.shapes)
      if (const auto* label = std::get_if<Label>(&shape)) text += label->text + " ";
  return text;
}

inline bool has(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

}  // namespace gapsound::pages
