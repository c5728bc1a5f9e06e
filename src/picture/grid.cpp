#include "picture/grid.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace gapsound {
namespace {

constexpr std::array<StyleId, 7> kHeat = {StyleId::heat_1, StyleId::heat_2, StyleId::heat_3, StyleId::heat_4,
                                          StyleId::heat_5, StyleId::heat_6, StyleId::heat_7};
constexpr std::size_t kStrong = 5;  // from here on the text is light on dark
constexpr double kLegend = 190.0, kSwatch = 22.0;
constexpr double kLongestName = 330.0, kTallestCell = 76.0, kWidestCell = 190.0;

struct Span {
  double low = 0.0, high = 1.0;
};

Span spanOf(const GridData& data) {
  Span span{1e300, -1e300};
  for (const auto& cell : data.cells)
    if (!cell.empty) span.low = std::min(span.low, cell.value), span.high = std::max(span.high, cell.value);
  if (span.low > span.high) return {};
  if (span.high - span.low < 1e-9) span.low -= 0.5, span.high += 0.5;
  return span;
}

std::size_t stepOf(double value, const Span& span) {
  const double share = (value - span.low) / (span.high - span.low);
  return std::min(static_cast<std::size_t>(std::clamp(share, 0.0, 1.0) * kHeat.size()), kHeat.size() - 1);
}

double widestName(const std::vector<std::string>& names, double size) {
  double widest = 0.0;
  for (const auto& name : names) widest = std::max(widest, roughWidth(name, size));
  return widest;
}

/// Where the cells lie and how large their text may be.
struct Lattice {
  PageRect box;
  double cell_width = 0.0, cell_height = 0.0, text = kLabelSize, names = kLabelSize;
  [[nodiscard]] PageRect cell(std::size_t row, std::size_t column) const {
    return {box.x + cell_width * static_cast<double>(column), box.y + cell_height * static_cast<double>(row),
            cell_width, cell_height};
  }
};

Lattice latticeOf(const GridData& data, const PlotLayout& layout, double name_width) {
  Lattice lattice;
  PageRect box = layout.plot;
  box.y += 1.6 * kLabelSize;
  box.height -= 1.2 * kLabelSize;
  box.width -= kLegend;
  const auto rows = static_cast<double>(data.rows.size()), columns = static_cast<double>(data.columns.size());
  lattice.cell_width = std::min(box.width / columns, kWidestCell);
  lattice.cell_height = std::min(box.height / rows, kTallestCell);
  lattice.box = {box.x, box.y, lattice.cell_width * columns, lattice.cell_height * rows};
  lattice.text = std::min({1.25 * kLabelSize, 0.5 * lattice.cell_height, 0.30 * lattice.cell_width});
  lattice.names = std::min({kLabelSize, 0.8 * lattice.cell_height,
                            kLabelSize * kLongestName / std::max(name_width, kLongestName)});
  return lattice;
}

void hatch(Panel& panel, const PageRect& r) {
  const double step = 9.0, side = std::min(r.width, r.height) * 0.45;
  for (double d = step; d <= side; d += step)
    panel.shapes.push_back(Line{{r.right() - d, r.y + 1.0}, {r.right() - 1.0, r.y + d}, StyleId::heat_hatch});
}

void drawCell(Panel& panel, const Lattice& lattice, const PageRect& r, const GridData::Cell& cell,
              const Span& span) {
  if (cell.empty) {
    panel.shapes.push_back(Label{r.middle(), "-", lattice.text, StyleId::axis_text});
    return;
  }
  const std::size_t step = stepOf(cell.value, span);
  const StyleId words = step >= kStrong ? StyleId::heat_text_strong : StyleId::heat_text;
  panel.shapes.push_back(Rect{{r.x, r.y}, {r.right(), r.bottom()}, 0.0, kHeat[step]});
  if (cell.hatched) hatch(panel, r);
  const bool room = !cell.note.empty() && r.height > 2.4 * lattice.text;
  const double rise = room ? 0.45 * lattice.text : 0.0;
  panel.shapes.push_back(Label{{r.middle().x, r.middle().y - rise}, cell.text, lattice.text, words});
  const double small = std::min(
      0.7 * lattice.text, lattice.text * 0.92 * r.width / std::max(roughWidth(cell.note, lattice.text), 1.0));
  if (room)
    panel.shapes.push_back(Label{{r.middle().x, r.middle().y + 0.6 * lattice.text}, cell.note, small, words});
}

void drawFrames(Panel& panel, const GridData& data, const Lattice& lattice) {
  constexpr double d = 2.0;
  for (std::size_t k = 0; k < data.cells.size(); ++k) {
    if (!data.cells[k].framed) continue;
    const PageRect r = lattice.cell(k / data.columns.size(), k % data.columns.size());
    panel.shapes.push_back(Polyline{{{r.x + d, r.y + d},
                                     {r.right() - d, r.y + d},
                                     {r.right() - d, r.bottom() - d},
                                     {r.x + d, r.bottom() - d},
                                     {r.x + d, r.y + d}},
                                    StyleId::heat_frame});
  }
}

void drawNames(Panel& panel, const GridData& data, const Lattice& lattice) {
  for (std::size_t row = 0; row < data.rows.size(); ++row)
    panel.shapes.push_back(Label{{lattice.box.x - 10.0, lattice.cell(row, 0).middle().y},
                                 data.rows[row],
                                 lattice.names,
                                 StyleId::axis_text,
                                 Anchor::right});
  const double widest = widestName(data.columns, kLabelSize);
  const double size = kLabelSize * std::min(1.0, 0.92 * lattice.cell_width / std::max(widest, 1.0));
  for (std::size_t column = 0; column < data.columns.size(); ++column)
    panel.shapes.push_back(
        Label{{lattice.cell(0, column).middle().x, lattice.box.bottom() + 0.9 * kLabelSize},
              data.columns[column],
              size,
              StyleId::axis_text});
  panel.shapes.push_back(Label{{lattice.box.middle().x, lattice.box.bottom() + 2.5 * kLabelSize},
                               data.column_label,
                               kLabelSize,
                               StyleId::text});
  panel.shapes.push_back(Label{{kPageMargin, lattice.box.y - 1.2 * kLabelSize},
                               data.row_label,
                               kLabelSize,
                               StyleId::text,
                               Anchor::left});
}

void drawLegend(Panel& panel, const GridData& data, const Lattice& lattice, const Span& span) {
  const double x = lattice.box.right() + 34.0;
  double y = lattice.box.y;
  panel.shapes.push_back(
      Label{{x, y - 1.2 * kLabelSize}, data.value_label, kLabelSize, StyleId::text, Anchor::left});
  const double width = (span.high - span.low) / static_cast<double>(kHeat.size());
  for (std::size_t k = 0; k < kHeat.size(); ++k, y += kSwatch + 4.0) {
    panel.shapes.push_back(Rect{{x, y}, {x + 1.5 * kSwatch, y + kSwatch}, 0.0, kHeat[k]});
    const double from = span.low + width * static_cast<double>(k);
    panel.shapes.push_back(Label{{x + 2.0 * kSwatch, y + 0.5 * kSwatch},
                                 fmt::format("{:.1f} to {:.1f}", from, from + width),
                                 0.9 * kLabelSize,
                                 StyleId::axis_text,
                                 Anchor::left});
  }
}

}  // namespace

DisplayList gridPage(const GridData& data, double width, double height) {
  const double name_width = widestName(data.rows, kLabelSize);
  const double left = kPageMargin + std::min(name_width, kLongestName) + 20.0;
  const PlotLayout layout = plotLayout(width, height, left, data.words);
  Panel panel = pagePanel(layout.page);
  drawPageWords(panel, layout.page, data.words);
  const Lattice lattice = latticeOf(data, layout, name_width);
  const Span span = spanOf(data);
  for (std::size_t k = 0; k < data.cells.size(); ++k)
    drawCell(panel, lattice, lattice.cell(k / data.columns.size(), k % data.columns.size()), data.cells[k],
             span);
  drawFrames(panel, data, lattice);
  drawNames(panel, data, lattice);
  drawLegend(panel, data, lattice, span);
  return {width, height, {std::move(panel)}};
}

}  // namespace gapsound
