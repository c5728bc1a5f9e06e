#include "teach/layout.hpp"

#include <algorithm>

#include "teach/caution.hpp"

namespace gapsound {
namespace {

constexpr double kLeading = 1.28;  // line to line, of the em
constexpr double kCellPad = 8.0;   // page units, between columns
constexpr double kRowPad = 5.0;    // above and below a row's text

double left(double x, double width, Anchor anchor) {
  return anchor == Anchor::left ? x : anchor == Anchor::centre ? x - 0.5 * width : x - width;
}

double cellWidth(const Table& table, std::size_t column) { return table.widths[column] - kCellPad; }

double rowHeight(const Table& table, const std::vector<std::string>& row) {
  double height = kLeading * table.size;
  for (std::size_t i = 0; i < row.size(); ++i)
    height = std::max(height, Layout::heightOf(row[i], table.size, cellWidth(table, i)));
  return height + 2.0 * kRowPad;
}

}  // namespace

Layout::Layout(double width, double height) {
  page_.list.width = width, page_.list.height = height;
  page_.list.panels.push_back(pagePanel({0.0, 0.0, width, height}));
  page_.list.panels.front().shapes.push_back(Rect{{0.0, 0.0}, {width, height}, 0.0, StyleId::ground});
}

double Layout::heightOf(const std::string& text, double size, double width) {
  return static_cast<double>(linesOf(text, size, width).size()) * kLeading * size;
}

double Layout::words(double x, double y, double width, const std::string& text, double size, StyleId style,
                     Anchor anchor) {
  const auto lines = linesOf(text, size, width);
  double at = y;
  for (const std::string& words : lines) {
    page_.list.panels.front().shapes.push_back(
        Label{{x, at + 0.5 * kLeading * size}, words, size, style, anchor, Rise::middle});
    at += kLeading * size;
  }
  if (!lines.empty()) page_.boxes.push_back({left(x, width, anchor), y, width, at - y});
  return at;
}

double Layout::line(double x, double y, double width, const std::string& text, double size, StyleId style,
                    Anchor anchor) {
  const double fitting = std::min(size, width / std::max(kMeasureError * roughWidth(text, 1.0), 1e-9));
  page_.list.panels.front().shapes.push_back(
      Label{{x, y + 0.5 * kLeading * size}, text, fitting, style, anchor, Rise::middle});
  page_.boxes.push_back({left(x, width, anchor), y, width, kLeading * size});
  return y + kLeading * size;
}

void Layout::rule(double x, double right, double y, StyleId style) {
  page_.list.panels.front().shapes.push_back(Line{{x, y}, {right, y}, style});
}

void Layout::box(const PageRect& rect, StyleId style) {
  page_.list.panels.front().shapes.push_back(
      Rect{{rect.x, rect.y}, {rect.right(), rect.bottom()}, 0.0, style});
}

void Layout::picture(Panel panel) {
  const PageRect clip = panel.clip;
  page_.boxes.push_back(clip);
  page_.list.panels.push_back(std::move(panel));
  Panel frame = pagePanel({clip.x - 2.0, clip.y - 2.0, clip.width + 4.0, clip.height + 4.0});
  frame.shapes.push_back(Rect{{clip.x, clip.y}, {clip.right(), clip.bottom()}, 0.0, StyleId::frame});
  page_.list.panels.push_back(std::move(frame));
}

double Layout::caution(double margin, double size) {
  const double width = page_.list.width - 2.0 * margin;
  const double top = page_.list.height - margin - heightOf(cautionText(), size, width);
  rule(margin, page_.list.width - margin, top - 6.0);
  words(margin, top, width, cautionText(), size, StyleId::caution);
  return top - 10.0;
}

LaidPage Layout::done() && { return std::move(page_); }

double heightOf(const Table& table) {
  double height = 0.0;
  for (const auto& row : table.rows) height += rowHeight(table, row);
  return height;
}

double put(Layout& layout, const Table& table, double x, double y) {
  double width = 0.0;
  for (const double column : table.widths) width += column;
  for (std::size_t r = 0; r < table.rows.size(); ++r) {
    double at = x;
    for (std::size_t i = 0; i < table.rows[r].size(); ++i) {
      const StyleId style = r == 0 || i == table.strong_column ? StyleId::strong : StyleId::text;
      layout.words(at, y + kRowPad, cellWidth(table, i), table.rows[r][i], table.size, style);
      at += table.widths[i];
    }
    y += rowHeight(table, table.rows[r]);
    layout.rule(x, x + width, y, r == 0 ? StyleId::axis : StyleId::grid);
  }
  return y;
}

}  // namespace gapsound
