#include "picture/page_words.hpp"

#include <sstream>

namespace gapsound {
namespace {

constexpr double kSafe = 1.12;  // widths are estimates; real ones may be this much wider

double wrapWidth(double width) { return width - 2.0 * kPageMargin; }

/// Lines a text takes when it is broken between words.
int linesOf(const std::string& text, double size, double wrap) {
  std::istringstream words(text);
  int lines = 1;
  double used = 0.0;
  for (std::string word; words >> word;) {
    const double width = kSafe * roughWidth(word + " ", size);
    if (used > 0.0 && used + width > wrap) ++lines, used = 0.0;
    used += width;
  }
  return lines;
}

}  // namespace

PlotLayout plotLayout(double width, double height, double left, const PageWords& words) {
  const double finding = 1.5 * kSentenceSize * linesOf(words.sentence, kSentenceSize, wrapWidth(width));
  const double top = kPageMargin + kTitleSize + finding + 2.6 * kLabelSize;
  const int notes = words.footnote.empty() ? 0 : linesOf(words.footnote, kFootnoteSize, wrapWidth(width));
  const double bottom = height - kPageMargin - 3.2 * kLabelSize - (1.2 + notes) * 1.2 * kFootnoteSize;
  return {{0.0, 0.0, width, height}, {left, top, width - left - kPageMargin, bottom - top}};
}

void drawPageWords(Panel& panel, const PageRect& page, const PageWords& words) {
  const double wrap = wrapWidth(page.width);
  panel.shapes.push_back(Rect{{0.0, 0.0}, {page.width, page.height}, 0.0, StyleId::ground});
  panel.shapes.push_back(
      Label{{kPageMargin, kPageMargin + 4.0}, words.title, kTitleSize, StyleId::title, Anchor::left});
  panel.shapes.push_back(Label{{kPageMargin, kPageMargin + kTitleSize},
                               words.sentence,
                               kSentenceSize,
                               StyleId::text,
                               Anchor::left,
                               Rise::top,
                               wrap});
  const int notes = linesOf(words.footnote, kFootnoteSize, wrap);
  const double rise = kPageMargin + 1.2 * kFootnoteSize * notes;
  panel.shapes.push_back(Label{{kPageMargin, page.height - rise},
                               words.footnote,
                               kFootnoteSize,
                               StyleId::caution,
                               Anchor::left,
                               Rise::top,
                               wrap});
}

}  // namespace gapsound
