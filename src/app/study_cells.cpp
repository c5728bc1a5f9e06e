#include "app/study_cells.hpp"

#include <algorithm>
#include <cmath>

namespace gapsound {
namespace {

constexpr double kText = 15.0;
constexpr double kUnder = 22.0;  // room for the names of the columns

double namesWidth(const CellGrid& grid) {
  double width = 0.0;
  for (const std::string& name : grid.rows) width = std::max(width, 0.84 * roughWidth(name, kText) + 14.0);
  return width;
}

struct Span {
  double low = 1e9, high = -1e9;
};
Span valuesIn(const CellGrid& grid) {
  Span span;
  for (const CellGrid::Cell& cell : grid.cells) {
    span.low = std::min(span.low, cell.value);
    span.high = std::max(span.high, cell.value);
  }
  return span;
}

/// A square to the left of its figures, or under them where the cell is narrow.
void drawCell(Panel& panel, const CellGrid::Cell& cell, const PageRect& at, const Span& span) {
  constexpr double kWide = 76.0;
  constexpr double kLeastSpan = 1.5;  // yd: smaller differences must not look large
  const bool wide = at.width >= kWide;
  const double share = (cell.value - span.low) / std::max(kLeastSpan, span.high - span.low);
  const double room = std::min((wide ? 0.5 : 1.0) * at.width - 8.0, at.height - 8.0);
  const double half = 0.5 * room * std::sqrt(0.06 + 0.94 * share);
  const Vec2 square{at.x + (wide ? 0.28 : 0.5) * at.width, at.middle().y};
  const Vec2 figures{at.x + (wide ? 0.76 : 0.5) * at.width, at.middle().y};
  panel.shapes.push_back(Rect{{at.x + 2.0, at.y + 2.0},
                              {at.right() - 2.0, at.bottom() - 2.0},
                              0.0,
                              cell.framed ? StyleId::defense_2 : StyleId::panel});
  panel.shapes.push_back(Rect{square - Vec2{half, half}, square + Vec2{half, half}, 0.0, StyleId::bar});
  const double text = std::clamp(0.34 * at.height, 9.0, kText);
  const bool two = !cell.note.empty() && at.height > 26.0;
  const double apart = two ? 0.6 * text : 0.0;
  panel.shapes.push_back(Label{figures - Vec2{0.0, apart}, cell.figure, text, StyleId::cell_strong});
  if (two)
    panel.shapes.push_back(Label{figures + Vec2{0.0, apart}, cell.note, 0.85 * text, StyleId::cell_text});
}

}  // namespace

PageRect cellOf(const CellGrid& grid, const PageRect& box, std::size_t cell) {
  const double names = namesWidth(grid);
  const auto rows = static_cast<double>(grid.rows.size());
  const double width = (box.width - names) / static_cast<double>(grid.columns.size());
  const double height = (box.height - kUnder) / rows;
  const std::size_t row = cell / grid.columns.size();
  const std::size_t down = grid.upward ? grid.rows.size() - 1 - row : row;
  return {box.x + names + width * static_cast<double>(cell % grid.columns.size()),
          box.y + height * static_cast<double>(down), width, height};
}

Panel cellPanel(const CellGrid& grid, const PageRect& box) {
  Panel panel = pagePanel(box);
  const Span span = valuesIn(grid);
  for (std::size_t i = 0; i < grid.cells.size(); ++i)
    drawCell(panel, grid.cells[i], cellOf(grid, box, i), span);
  for (std::size_t column = 0; column < grid.columns.size(); ++column) {
    const Vec2 at{cellOf(grid, box, column).middle().x, box.bottom() - 0.5 * kUnder};
    panel.shapes.push_back(Label{at, grid.columns[column], kText, StyleId::axis_text});
  }
  for (std::size_t row = 0; row < grid.rows.size(); ++row) {
    const PageRect first = cellOf(grid, box, row * grid.columns.size());
    const double text = std::min(kText, 0.7 * first.height);
    panel.shapes.push_back(
        Label{{first.x - 8.0, first.middle().y}, grid.rows[row], text, StyleId::axis_text, Anchor::right});
  }
  return panel;
}

}  // namespace gapsound
