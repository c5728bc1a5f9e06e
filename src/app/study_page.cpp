#include "app/study_page.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "picture/chart.hpp"

namespace gapsound {
namespace {

constexpr double kText = 15.0;
constexpr double kMargin = 18.0;
constexpr double kHead = 66.0;  // finding above the picture
constexpr double kFoot = 34.0;
constexpr double kCells = 74.0;  // height of the row of cells under a curve
constexpr double kNames = 96.0;  // left of a map

struct Grid {
  PageRect box;
  std::size_t rows = 1, columns = 1;
};

/// A row under the curve, or a map whose first setting runs upward.
Grid gridOf(const SweepPicture& picture, const PageRect& box) {
  const auto& axes = picture.result.axes;
  PageRect inner{box.x + kMargin + kNames, box.y + kHead, box.width - 2.0 * kMargin - kNames,
                 box.height - kHead - kFoot};
  if (axes.size() > 1) return {inner, axes[0].values.size(), axes[1].values.size()};
  inner.y = inner.bottom() - kCells;
  inner.height = kCells;
  return {inner, 1, axes.empty() ? 1 : axes[0].values.size()};
}

PageRect cellIn(const Grid& grid, std::size_t cell) {
  const double width = grid.box.width / static_cast<double>(grid.columns);
  const double height = grid.box.height / static_cast<double>(grid.rows);
  const std::size_t up = grid.rows - 1 - cell / grid.columns;
  return {grid.box.x + width * static_cast<double>(cell % grid.columns),
          grid.box.y + height * static_cast<double>(up), width, height};
}

struct Span {
  double low = 0.0, high = 1.0;
};
Span meansOf(const SweepResult& result) {
  Span span{1e9, -1e9};
  for (const SweepCell& cell : result.cells) {
    span.low = std::min(span.low, cell.gains.mean);
    span.high = std::max(span.high, cell.gains.mean);
  }
  return span;
}

/// A square to the left of its figures, or under them where the cell is narrow.
void drawCell(Panel& panel, const SweepPicture& picture, const PageRect& at, std::size_t index,
              const Span& span) {
  constexpr double kWide = 84.0;
  const SweepCell& cell = picture.result.cells[index];
  const bool best = index == picture.result.best;
  const bool wide = at.width >= kWide;
  const double share = (cell.gains.mean - span.low) / std::max(1.5, span.high - span.low);
  const double room = std::min((wide ? 0.5 : 1.0) * at.width - 8.0, at.height - 8.0);
  const double half = 0.5 * room * std::sqrt(0.06 + 0.94 * share);
  const Vec2 square{at.x + (wide ? 0.28 : 0.5) * at.width, at.middle().y};
  const Vec2 figures{at.x + (wide ? 0.76 : 0.5) * at.width, at.middle().y};
  panel.shapes.push_back(Rect{{at.x + 2.0, at.y + 2.0},
                              {at.right() - 2.0, at.bottom() - 2.0},
                              0.0,
                              best ? StyleId::defense_2 : StyleId::panel});
  panel.shapes.push_back(Rect{square - Vec2{half, half}, square + Vec2{half, half}, 0.0, StyleId::bar});
  const double text = std::clamp(0.3 * at.height, 10.0, kText);
  panel.shapes.push_back(Label{figures - Vec2{0.0, 0.55 * text}, fmt::format("{:.1f}", cell.gains.mean), text,
                               StyleId::cell_strong});
  panel.shapes.push_back(Label{figures + Vec2{0.0, 0.65 * text},
                               fmt::format("{:.0f} %", 100.0 * cell.gains.cutback_open), 0.85 * text,
                               StyleId::cell_text});
}

void drawNames(Panel& panel, const SweepPicture& picture, const Grid& grid) {
  const auto& axes = picture.result.axes;
  const SweepAxis& across = axes.back();
  for (std::size_t column = 0; column < grid.columns; ++column) {
    const PageRect cell = cellIn(grid, column);
    panel.shapes.push_back(Label{{cell.middle().x, grid.box.bottom() + 11.0},
                                 fmt::format("{:g}", across.values[column]),
                                 kText,
                                 StyleId::axis_text});
  }
  if (axes.size() < 2) {
    panel.shapes.push_back(Label{{grid.box.x - 8.0, grid.box.middle().y - 10.0},
                                 "mean, yd",
                                 kText,
                                 StyleId::axis_text,
                                 Anchor::right});
    panel.shapes.push_back(Label{{grid.box.x - 8.0, grid.box.middle().y + 10.0},
                                 "cutback open",
                                 kText,
                                 StyleId::axis_text,
                                 Anchor::right});
    return;
  }
  for (std::size_t row = 0; row < grid.rows; ++row) {
    const PageRect cell = cellIn(grid, row * grid.columns);
    panel.shapes.push_back(Label{{grid.box.x - 8.0, cell.middle().y},
                                 fmt::format("{:g} {}", axes[0].values[row], axes[0].unit),
                                 kText,
                                 StyleId::axis_text,
                                 Anchor::right});
  }
}

ChartData curveOf(const SweepPicture& picture) {
  const SweepResult& result = picture.result;
  Curve curve;
  curve.name = "mean gain";
  for (const SweepCell& cell : result.cells) {
    curve.x.push_back(cell.at.front());
    curve.y.push_back(cell.gains.mean);
    curve.low.push_back(cell.gains.mean_ci.low);
    curve.high.push_back(cell.gains.mean_ci.high);
  }
  ChartData data;
  data.y_label = "mean gain, yd";
  data.x_label = result.axes.front().words + ", " + result.axes.front().unit;
  data.curves = {curve};
  data.marks = {{result.cells[result.best].at.front(), "best", {}}};
  if (result.break_point)
    data.marks.push_back({result.break_point->value, "breaks",
                          std::pair(result.break_point->ci.low, result.break_point->ci.high)});
  return data;
}

/// The chart's own page moved to its place.
void addCurve(DisplayList& page, const SweepPicture& picture, const PageRect& at) {
  DisplayList chart = chartPage(curveOf(picture), at.width, at.height);
  for (Panel& panel : chart.panels) {
    panel.camera.origin += Vec2{at.x, at.y};
    panel.clip.x += at.x;
    panel.clip.y += at.y;
    page.panels.push_back(std::move(panel));
  }
}

std::string footWords(const SweepPicture& picture) {
  const auto& axes = picture.result.axes;
  const std::string across =
      axes.size() > 1 ? axes[1].words + ", " + axes[1].unit + ", across; " + axes[0].words + " upward. " : "";
  return across + fmt::format(
                      "{} reps a value on the same luck; the square grows with the yards. Click a value: its "
                      "rep plays.",
                      picture.played);
}

}  // namespace

namespace {

Panel findingOf(const SweepPicture& picture, const PageRect& box) {
  Panel panel = pagePanel(box);
  const std::string words = picture.fault.empty() ? picture.result.sentence : picture.fault;
  panel.shapes.push_back(Label{{box.x + kMargin, box.y + 12.0},
                               words,
                               16.0,
                               StyleId::strong,
                               Anchor::left,
                               Rise::top,
                               box.width - 2.0 * kMargin});
  return panel;
}

Panel cellsOf(const SweepPicture& picture, const PageRect& box) {
  const Grid grid = gridOf(picture, box);
  Panel panel = pagePanel(box);
  const Span span = meansOf(picture.result);
  for (std::size_t i = 0; i < picture.result.cells.size(); ++i)
    drawCell(panel, picture, cellIn(grid, i), i, span);
  drawNames(panel, picture, grid);
  panel.shapes.push_back(Label{
      {box.x + kMargin, box.bottom() - 8.0}, footWords(picture), 0.85 * kText, StyleId::small, Anchor::left});
  return panel;
}

}  // namespace

DisplayList sweepPage(const SweepPicture& picture, const PageRect& box) {
  constexpr double kChartHead = 64.0;  // room a chart keeps for a title of its own
  DisplayList page{box.right(), box.bottom(), {pagePanel(box)}};
  page.panels.front().shapes.push_back(
      Rect{{box.x, box.y}, {box.right(), box.bottom()}, 0.0, StyleId::ground});
  if (!picture.result.cells.empty()) {
    if (picture.result.axes.size() == 1) {
      const double top = box.y + kHead - kChartHead;
      addCurve(page, picture,
               {box.x + kMargin, top, box.width - 2.0 * kMargin, gridOf(picture, box).box.y - top});
    }
    page.panels.push_back(cellsOf(picture, box));
  }
  page.panels.push_back(findingOf(picture, box));
  return page;
}

PageRect sweepCell(const SweepPicture& picture, const PageRect& box, std::size_t cell) {
  return cellIn(gridOf(picture, box), cell);
}

std::optional<std::size_t> sweepCellAt(const SweepPicture& picture, const PageRect& box, Vec2 page) {
  for (std::size_t i = 0; i < picture.result.cells.size(); ++i) {
    const PageRect cell = sweepCell(picture, box, i);
    if (page.x >= cell.x && page.x < cell.right() && page.y >= cell.y && page.y < cell.bottom()) return i;
  }
  return std::nullopt;
}

}  // namespace gapsound
