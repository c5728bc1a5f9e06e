#include "teach/card.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "analysis/gaps.hpp"
#include "picture/diagram.hpp"
#include "scenario/assignments.hpp"
#include "teach/caution.hpp"

namespace gapsound {
namespace {

constexpr double kMargin = 44.0, kBetween = 26.0, kPad = 14.0, kCaution = 14.0;  // page units
constexpr std::size_t kMostMovers = 4;

bool moves(const Assignment& job) {
  static const std::vector<std::string> kinds{"kick", "log", "wrap", "lead", "insert", "arc"};
  return !job.pull.empty() || std::find(kinds.begin(), kinds.end(), job.block) != kinds.end();
}

std::string jobLine(const Assignment& job) {
  std::string line = job.player + ": ";
  if (!job.pull.empty()) line += job.pull + " pull, ";
  line += job.block;
  if (!job.target.empty()) line += " " + job.target;
  if (!job.climbs_to.empty() && job.climbs_to != job.target) line += ", next " + job.climbs_to;
  return line;
}

std::string carrierLine(const Setup& setup) {
  const std::string& id = setup.men[static_cast<std::size_t>(setup.carrier)].id;
  return fmt::format("{}: ball at {:.1f} s, aim {}", id, setup.run.mesh_s,
                     GapChart(setup).at(setup.run.aim_x));
}

std::string spotWords(const Setup& setup) {
  const double middle = 0.5 * (setup.sideline_left + setup.sideline_right);
  if (std::abs(middle) < 1.0) return "middle";
  return middle < 0.0 ? "right hash" : "left hash";
}

/// Cells of a page, row by row.
std::vector<PageRect> cellsOf(Vec2 page, double foot, int columns, int rows) {
  std::vector<PageRect> cells;
  const double width = (page.x - 2.0 * kMargin - (columns - 1) * kBetween) / columns;
  const double height = (foot - kMargin - (rows - 1) * kBetween) / rows;
  cells.reserve(static_cast<std::size_t>(columns * rows));
  for (int row = 0; row < rows; ++row)
    for (int column = 0; column < columns; ++column)
      cells.push_back(
          {kMargin + column * (width + kBetween), kMargin + row * (height + kBetween), width, height});
  return cells;
}

double heading(Layout& layout, const ScoutCard& card, const PageRect& cell, double size) {
  const double number = 3.7 * size;
  layout.line(cell.x + kPad, cell.y + kPad, number, card.number, 2.3 * size, StyleId::title);
  const double x = cell.x + kPad + number, width = cell.width - 2.0 * kPad - number;
  double y = layout.line(x, cell.y + kPad, width, card.play, 1.35 * size, StyleId::title);
  y = layout.line(x, y, width, fmt::format("{}. Ours: {}", card.look, card.call), 0.85 * size, StyleId::text);
  return std::max(y, cell.y + kPad + 2.95 * size) + 0.3 * kPad;
}

/// Words under the picture, from the bottom of the cell upward; returns where they begin.
double footing(Layout& layout, const ScoutCard& card, const PageRect& cell, double size) {
  const double width = cell.width - 2.0 * kPad;
  const double caution = Layout::heightOf(cardCaution(), 0.72 * size, width);
  double y = cell.bottom() - kPad - caution;
  layout.words(cell.x + kPad, y, width, cardCaution(), 0.72 * size, StyleId::caution);
  const double column = 0.5 * (width - kPad);
  const std::size_t rows = (card.movers.size() + 1) / 2;
  const double top = y - static_cast<double>(rows) * 1.28 * size - 0.3 * kPad;
  for (std::size_t i = 0; i < card.movers.size(); ++i) {
    const std::size_t row = i / 2;
    const double x = cell.x + kPad + static_cast<double>(i % 2) * (column + kPad);
    layout.line(x, top + static_cast<double>(row) * 1.28 * size, column, card.movers[i], size,
                StyleId::strong);
  }
  return top - 0.4 * kPad;
}

/// From behind the deepest back to past the deepest defender, and no farther.
void closeIn(DiagramLook& look, const Setup& setup) {
  double low = 0.0, high = 0.0;
  for (const Man& man : setup.men) {
    low = std::min(low, drawnAt(man.spot).y);
    high = std::max(high, drawnAt(man.spot).y);
  }
  look.low.y = low - 0.9, look.high.y = high + 1.8;
}

void putCard(Layout& layout, const ScoutCard& card, const PageRect& cell, double size) {
  layout.box(cell, StyleId::frame);
  const double top = heading(layout, card, cell, size), bottom = footing(layout, card, cell, size);
  DiagramLook look;
  look.box = {cell.x + kPad, top, cell.width - 2.0 * kPad, bottom - top};
  look.dots = true, look.fits = false;
  closeIn(look, card.drawn.setup);
  look.symbol = 0.5;
  look.text = 0.95 * size;
  look.stroke = size / 22.0;
  layout.picture(diagramPanel(card.drawn, look));
}

}  // namespace

ScoutCard scoutCardOf(const Tape& drawn, const std::string& number, const std::string& play,
                      const std::string& call) {
  const Setup& setup = drawn.setup;
  ScoutCard card{number, play, {}, call, drawn, {}};
  card.look =
      fmt::format("{}, {} {}, {}, {} and {:.0f}", setup.formation, setup.scheme,
                  setup.direction > 0 ? "right" : "left", spotWords(setup), setup.down, setup.distance);
  if (setup.carrier != kNobody) card.movers.push_back(carrierLine(setup));
  for (const Assignment& job : assignmentsOf(setup))
    if (moves(job) && card.movers.size() < kMostMovers) card.movers.push_back(jobLine(job));
  return card;
}

std::vector<LaidPage> cardPages(const std::vector<ScoutCard>& cards, const CardLook& look) {
  const Vec2 upright = sheetSize(look.paper);
  const Vec2 page = look.to_a_page == 2 ? upright : Vec2{upright.y, upright.x};
  const int columns = look.to_a_page == 4 ? 2 : 1, rows = look.to_a_page == 1 ? 1 : 2;
  const double size = look.to_a_page == 1 ? 34.0 : look.to_a_page == 2 ? 25.0 : 21.0;
  std::vector<LaidPage> pages;
  for (std::size_t first = 0; first < cards.size(); first += static_cast<std::size_t>(columns * rows)) {
    Layout layout(page.x, page.y);
    const auto cells = cellsOf(page, layout.caution(kMargin, kCaution) - 8.0, columns, rows);
    for (std::size_t i = 0; i < cells.size() && first + i < cards.size(); ++i)
      putCard(layout, cards[first + i], cells[i], size);
    pages.push_back(std::move(layout).done());
  }
  return pages;
}

}  // namespace gapsound
