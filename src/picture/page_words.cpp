#include "picture/page_words.hpp"

namespace gapsound {
namespace {

double wrapWidth(double width) { return width - 2.0 * kPageMargin; }

double rowsOf(const std::string& text, double size, double wrap) {
  return static_cast<double>(linesOf(text, size, wrap).size());
}

}  // namespace

PlotLayout plotLayout(double width, double height, double left, const PageWords& words) {
  const double finding = 1.5 * kSentenceSize * rowsOf(words.sentence, kSentenceSize, wrapWidth(width));
  const double top = kPageMargin + kTitleSize + finding + 2.6 * kLabelSize;
  const double notes = rowsOf(words.footnote, kFootnoteSize, wrapWidth(width));
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
  const double notes = rowsOf(words.footnote, kFootnoteSize, wrap);
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
