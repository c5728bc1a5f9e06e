#include "app/study_page.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "app/study_cells.hpp"
#include "picture/chart.hpp"

namespace gapsound {
namespace {

constexpr double kText = 15.0;
constexpr double kMargin = 18.0;
constexpr double kHead = 66.0;   // finding above the picture
constexpr double kFoot = 22.0;   // words under it
constexpr double kCells = 94.0;  // height of the row of cells under a curve
constexpr std::size_t kBars = 16;

PageRect plotBox(const PageRect& box) {
  return {box.x + kMargin, box.y + kHead, box.width - 2.0 * kMargin, box.height - kHead - kFoot};
}

std::string percent(double share) { return fmt::format("{:.0f} %", 100.0 * share); }

CellGrid gridOf(const SweepResult& sweep) {
  CellGrid grid;
  grid.upward = true;
  const bool map = sweep.axes.size() > 1;
  for (const double value : sweep.axes.back().values) grid.columns.push_back(fmt::format("{:g}", value));
  if (!map) grid.rows = {"mean yd, cutback open"};
  for (std::size_t row = 0; map && row < sweep.axes[0].values.size(); ++row)
    grid.rows.push_back(fmt::format("{:g} {}", sweep.axes[0].values[row], sweep.axes[0].unit));
  for (std::size_t i = 0; i < sweep.cells.size(); ++i) {
    const auto& gains = sweep.cells[i].gains;
    grid.cells.push_back(
        {gains.mean, fmt::format("{:.1f}", gains.mean), percent(gains.cutback_open), i == sweep.best});
  }
  return grid;
}

CellGrid gridOf(const MatrixResult& matrix) {
  CellGrid grid{matrix.rows, matrix.columns, {}, false};
  for (std::size_t i = 0; i < matrix.cells.size(); ++i) {
    const MatrixCell& cell = matrix.cells[i];
    const std::string note =
        cell.unsound_gap.empty() ? percent(cell.gains.stuffed) : "no " + cell.unsound_gap;
    grid.cells.push_back({cell.gains.mean, fmt::format("{:.1f}", cell.gains.mean), note, i == matrix.worst});
  }
  return grid;
}

PageRect cellsBox(const SweepResult& sweep, const PageRect& box) {
  PageRect plot = plotBox(box);
  if (sweep.axes.size() > 1) return plot;
  plot.y = plot.bottom() - kCells;
  plot.height = kCells;
  return plot;
}

ChartData curveOf(const SweepResult& sweep) {
  Curve curve;
  curve.name = "mean gain";
  for (const SweepCell& cell : sweep.cells) {
    curve.x.push_back(cell.at.front());
    curve.y.push_back(cell.gains.mean);
    curve.low.push_back(cell.gains.mean_ci.low);
    curve.high.push_back(cell.gains.mean_ci.high);
  }
  ChartData data;
  data.y_label = "mean gain, yd";
  data.x_label = sweep.axes.front().words + ", " + sweep.axes.front().unit;
  data.curves = {curve};
  data.marks = {{sweep.cells[sweep.best].at.front(), "best", {}}};
  if (const auto& point = sweep.break_point)
    data.marks.push_back({point->value, "breaks", std::pair(point->ci.low, point->ci.high)});
  return data;
}

/// A page of its own moved to its place.
void addMoved(DisplayList& page, DisplayList other, const PageRect& at) {
  for (Panel& panel : other.panels) {
    panel.camera.origin += Vec2{at.x, at.y};
    panel.clip.x += at.x;
    panel.clip.y += at.y;
    page.panels.push_back(std::move(panel));
  }
}

void addSweep(DisplayList& page, const SweepResult& sweep, const PageRect& box) {
  constexpr double kChartHead = 50.0;  // room a chart keeps for a title of its own
  const PageRect cells = cellsBox(sweep, box);
  if (sweep.axes.size() == 1 && sweep.axes.front().values.size() > 1) {
    const double top = box.y + kHead - kChartHead;
    const PageRect chart{cells.x, top, cells.width, cells.y - top};
    addMoved(page, chartPage(curveOf(sweep), chart.width, chart.height), chart);
  }
  page.panels.push_back(cellPanel(gridOf(sweep), cells));
}

PageRect barRow(const PageRect& box, std::size_t row) {
  const PageRect plot = plotBox(box);
  const double height = plot.height / static_cast<double>(kBars);
  return {plot.x, plot.y + height * static_cast<double>(row), plot.width, height};
}

std::string repairWords(const StudyPicture& picture, const FaultRow& row) {
  std::string words = fmt::format("{:+.1f} yd on the call, {:+.1f} off the man in front", row.loss.difference,
                                  row.loss_fixed.difference);
  if (row.repaired_by != kNobody)
    words += ": " + picture.setup.men[static_cast<std::size_t>(row.repaired_by)].id + " repairs it";
  return words;
}

/// The cost on the call as a filled bar, what is left of it off the man in front as an outlined one under it.
void drawBar(Panel& panel, const StudyPicture& picture, const FaultRow& row, const PageRect& at,
             double most) {
  const double names = 190.0;
  const double words = 330.0;
  const double zero = at.x + names;
  const double room = std::max(40.0, at.width - names - words);
  const double text = std::min(14.0, 0.62 * at.height);
  const auto bar = [&](double value, double top, double bottom, StyleId style) {
    const double end = zero + room * std::clamp(value / most, -0.02, 1.0);
    panel.shapes.push_back(
        Rect{{zero, at.y + top * at.height}, {end, at.y + bottom * at.height}, 0.0, style});
  };
  bar(row.loss.difference, 0.12, 0.54, StyleId::bar);
  bar(row.loss_fixed.difference, 0.54, 0.88, StyleId::bar_2);
  std::string name = nameOf(picture.setup, row.mistakes);
  std::replace(name.begin(), name.end(), '_', ' ');
  panel.shapes.push_back(
      Label{{zero - 16.0, at.middle().y}, name, text, StyleId::cell_strong, Anchor::right});
  panel.shapes.push_back(Label{{zero + room + 12.0, at.middle().y},
                               repairWords(picture, row),
                               text,
                               StyleId::cell_text,
                               Anchor::left});
}

void addMistakes(DisplayList& page, const StudyPicture& picture, const FaultResult& faults,
                 const PageRect& box) {
  Panel panel = pagePanel(box);
  const double most = faults.rows.empty() ? 1.0 : std::max(0.5, faults.rows.front().loss.difference);
  for (std::size_t i = 0; i < std::min(kBars, faults.rows.size()); ++i)
    drawBar(panel, picture, faults.rows[i], barRow(box, i), most);
  page.panels.push_back(std::move(panel));
}

std::string footWords(const StudyPicture& picture) {
  const std::string reps =
      fmt::format("{} reps each on the same luck. Click: its rep plays.", picture.played);
  if (const auto* sweep = std::get_if<SweepResult>(&picture.result)) {
    const auto& axes = sweep->axes;
    if (axes.size() < 2) return "A square grows with the yards. " + reps;
    return fmt::format("{}, {}, across; {} upward; mean yd, cutback open. {}", axes[1].words, axes[1].unit,
                       axes[0].words, reps);
  }
  if (std::holds_alternative<FaultResult>(picture.result))
    return "Filled: what it costs when all run to the call; outlined: when all fit off the man in front. " +
           reps;
  return "Mean yd and share of 0 or less; the worst pair is framed. " + reps;
}

Panel wordsOf(const StudyPicture& picture, const PageRect& box) {
  Panel panel = pagePanel(box);
  panel.shapes.push_back(Label{{box.x + kMargin, box.y + 12.0},
                               findingOf(picture),
                               16.0,
                               StyleId::strong,
                               Anchor::left,
                               Rise::top,
                               box.width - 2.0 * kMargin});
  if (cellsOf(picture) > 0) {
    panel.shapes.push_back(Label{{box.x + kMargin, box.bottom() - 10.0},
                                 footWords(picture),
                                 0.85 * kText,
                                 StyleId::small,
                                 Anchor::left});
  }
  return panel;
}

}  // namespace

DisplayList studyPage(const StudyPicture& picture, const PageRect& box) {
  DisplayList page{box.right(), box.bottom(), {pagePanel(box)}};
  page.panels.front().shapes.push_back(
      Rect{{box.x, box.y}, {box.right(), box.bottom()}, 0.0, StyleId::ground});
  if (const auto* sweep = std::get_if<SweepResult>(&picture.result)) addSweep(page, *sweep, box);
  if (const auto* faults = std::get_if<FaultResult>(&picture.result))
    addMistakes(page, picture, *faults, box);
  if (const auto* matrix = std::get_if<MatrixResult>(&picture.result))
    page.panels.push_back(cellPanel(gridOf(*matrix), plotBox(box)));
  page.panels.push_back(wordsOf(picture, box));
  return page;
}

std::optional<PageRect> studyCell(const StudyPicture& picture, const PageRect& box, std::size_t cell) {
  if (cell >= cellsOf(picture)) return std::nullopt;
  if (const auto* sweep = std::get_if<SweepResult>(&picture.result))
    return cellOf(gridOf(*sweep), cellsBox(*sweep, box), cell);
  if (const auto* matrix = std::get_if<MatrixResult>(&picture.result))
    return cellOf(gridOf(*matrix), plotBox(box), cell);
  if (cell >= kBars) return std::nullopt;
  return barRow(box, cell);
}

std::optional<std::size_t> studyCellAt(const StudyPicture& picture, const PageRect& box, Vec2 page) {
  for (std::size_t i = 0; i < cellsOf(picture); ++i) {
    const auto cell = studyCell(picture, box, i);
    if (cell && page.x >= cell->x && page.x < cell->right() && page.y >= cell->y && page.y < cell->bottom())
      return i;
  }
  return std::nullopt;
}

}  // namespace gapsound
