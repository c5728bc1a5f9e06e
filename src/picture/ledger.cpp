#include "picture/ledger.hpp"

#include <algorithm>

#include "picture/calipers.hpp"

namespace gapsound {
namespace {

constexpr double kGap = 6.0, kEdge = 2.0;  // page units between cells, and to the border

struct Cell {
  const Lane* lane = nullptr;
  double wanted = 0.0;  // x of the lane on the page
  double x = 0.0;       // left edge
};

StyleId styleOf(LaneState state) {
  switch (state) {
    case LaneState::open:
      return StyleId::cell_open;
    case LaneState::contested:
      return StyleId::cell_contested;
    case LaneState::closed:
      return StyleId::cell_closed;
  }
  return StyleId::cell_closed;
}

std::vector<Cell> cellsFor(const std::vector<Lane>& lanes, const Camera& field, const PageRect& box,
                           double width) {
  std::vector<Cell> cells;
  for (const Lane& lane : lanes) {
    const double x = field.toPage({lane.centre(), lane.y}).x;
    if (passable(lane) && x >= box.x && x <= box.right()) cells.push_back({&lane, x, x - 0.5 * width});
  }
  const auto most = static_cast<std::size_t>(std::max(1.0, (box.width + kGap) / (width + kGap)));
  while (cells.size() > most) {  // the least urgent go first
    cells.erase(std::min_element(cells.begin(), cells.end(), [](const Cell& a, const Cell& b) {
      return a.lane->margin < b.lane->margin;
    }));
  }
  return cells;
}

void spread(std::vector<Cell>& cells, const PageRect& box, double width) {
  double left = box.x + kEdge;
  for (Cell& cell : cells) {
    cell.x = std::max(cell.x, left);
    left = cell.x + width + kGap;
  }
  double right = box.right() - kEdge - width;
  for (auto cell = cells.rbegin(); cell != cells.rend(); ++cell) {
    cell->x = std::min(cell->x, right);
    right = cell->x - width - kGap;
  }
}

std::string ownerText(const Setup& setup, const Lane& lane) {
  if (lane.owner == kNobody) return "nobody";
  const std::string& owner = setup.men[static_cast<std::size_t>(lane.owner)].id;
  const std::string cause = causeText(lane.cause);
  return cause.empty() ? owner : owner + " " + cause;
}

void drawCell(Panel& panel, const Setup& setup, const Cell& cell, double width, const LedgerLook& look) {
  const double top = look.box.y + 0.6 * look.text;
  const double bottom = look.box.bottom() - 2.0;
  const double middle = cell.x + 0.5 * width;
  const StyleId style = styleOf(cell.lane->state);
  panel.shapes.push_back(Line{{cell.wanted, look.box.y}, {middle, top}, style});
  panel.shapes.push_back(Rect{{cell.x, top}, {cell.x + width, bottom}, 3.0, style});
  const std::string rows[] = {cell.lane->gap + "  " + yardsText(cell.lane->width()),
                              ownerText(setup, *cell.lane), marginText(cell.lane->margin)};
  const double row = (bottom - top - 4.0) / 3.0;
  for (int i = 0; i < 3; ++i) {
    const StyleId text = i == 1 ? StyleId::cell_strong : StyleId::cell_text;
    panel.shapes.push_back(Label{{middle, top + 2.0 + (i + 0.5) * row}, rows[i], look.text, text});
  }
}

}  // namespace

std::string causeText(Cause cause) {
  switch (cause) {
    case Cause::none:
      return "";
    case Cause::there:
      return "there";
    case Cause::absent:
      return "absent";
    case Cause::beaten:
      return "beaten";
    case Cause::missed:
      return "missed";
  }
  return "";
}

Panel ledgerPanel(const Setup& setup, const std::vector<Lane>& lanes, const Camera& field,
                  const LedgerLook& look) {
  Panel panel = pagePanel(look.box);
  panel.stroke = look.stroke;
  const double width = 6.4 * look.text;
  std::vector<Cell> cells = cellsFor(lanes, field, look.box, width);
  spread(cells, look.box, width);
  for (const Cell& cell : cells) drawCell(panel, setup, cell, width, look);
  return panel;
}

}  // namespace gapsound
