#pragma once
#include <string>
#include <vector>

#include "picture/display_list.hpp"

namespace gapsound {

/// A table of cells, each a square that grows with its value beside two figures.
struct CellGrid {
  struct Cell {
    double value = 0.0;
    std::string figure, note;  // the value, and what stands smaller under it
    bool framed = false;
  };
  std::vector<std::string> rows, columns;
  std::vector<Cell> cells;  // [row * columns + column]
  bool upward = false;      // the first row is the lowest
};
/// Names to the left and under the cells take their room out of the box.
[[nodiscard]] PageRect cellOf(const CellGrid& grid, const PageRect& box, std::size_t cell);
[[nodiscard]] Panel cellPanel(const CellGrid& grid, const PageRect& box);

}  // namespace gapsound
