#pragma once
#include <string>

#include "picture/display_list.hpp"

namespace gapsound {

inline constexpr double kTitleSize = 30.0, kSentenceSize = 20.0, kLabelSize = 18.0, kFootnoteSize = 14.0;
inline constexpr double kPageMargin = 40.0;  // page units, as the sizes

/// What stands around the picture of a study.
struct PageWords {
  std::string title;
  std::string sentence;  // the finding, under the title
  std::string footnote;
};

/// Title and finding at the top, footnote at the bottom, the plot in the room between.
struct PlotLayout {
  PageRect page;
  PageRect plot;
};
/// `left`: where the plot begins. Leaves room under it for figures and the name of an axis.
[[nodiscard]] PlotLayout plotLayout(double width, double height, double left, const PageWords& words);
/// The ground of the page and the words on it.
void drawPageWords(Panel& panel, const PageRect& page, const PageWords& words);

}  // namespace gapsound
