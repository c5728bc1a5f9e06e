#pragma once
#include <string>
#include <vector>

#include "picture/display_list.hpp"
#include "picture/page_words.hpp"

namespace gapsound {

/// A table whose cells are shaded by their value, darker for more, with the value written in each: a heat map
/// of two settings, or calls against runs.
struct GridData {
  struct Cell {
    double value = 0.0;
    std::string text;      // what stands in it
    std::string note;      // smaller, under it where there is room
    bool framed = false;   // the one to look at
    bool hatched = false;  // past the limit
    bool empty = false;    // nothing was played there
  };
  PageWords words;
  std::string row_label, column_label;  // what the rows and the columns are
  std::vector<std::string> rows, columns;
  std::vector<Cell> cells;  // [row * columns + column]
  std::string value_label;  // "mean gain, yd", for the scale
};

/// One page; at least one row and one column, values finite.
[[nodiscard]] DisplayList gridPage(const GridData& data, double width = 1280.0, double height = 720.0);

}  // namespace gapsound
