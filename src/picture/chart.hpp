#pragma once
#include <optional>
#include <string>
#include <vector>

#include "picture/display_list.hpp"

namespace gapsound {

/// A curve with its interval; `low` and `high` are empty or as long as `x`.
struct Curve {
  std::string name;
  std::vector<double> x, y, low, high;
};

/// A value on the x axis worth pointing at, with its interval when there is one.
struct AxisMark {
  double x = 0.0;
  std::string words;
  std::optional<std::pair<double, double>> interval;
};

struct ChartData {
  std::string title;
  std::string sentence;  // the finding, under the title
  std::string x_label, y_label;
  std::vector<Curve> curves;  // at most two; the second is dashed with open points
  std::vector<AxisMark> marks;
  std::string footnote;
};

/// Bars with intervals, longest names first served: one row each.
struct BarData {
  struct Row {
    std::string name;
    double value = 0.0, low = 0.0, high = 0.0;  // low == high: no interval
    std::string note;
  };
  std::string title, sentence, x_label, footnote;
  std::vector<Row> rows;  // [1, 40]
};

/// One page each. Curves need at least one point; values must be finite.
[[nodiscard]] DisplayList chartPage(const ChartData& data, double width = 1280.0, double height = 720.0);
[[nodiscard]] DisplayList barPage(const BarData& data, double width = 1280.0, double height = 720.0);

/// A window onto [low, high] with round steps; at most about `most` steps.
struct Scale {
  double low = 0.0, high = 1.0, step = 0.5;
  int digits = 0;  // after the point, enough for the step
};
/// The round scale that just holds both values; widened when they are equal.
[[nodiscard]] Scale roundScale(double low, double high, int most = 8);

}  // namespace gapsound
