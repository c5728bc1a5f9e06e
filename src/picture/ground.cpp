#include "picture/ground.hpp"

#include <algorithm>
#include <cmath>

namespace gapsound {
namespace {

constexpr double kLineEvery = 5.0;  // yd
constexpr double kTickHalf = 0.33;  // yd, a hash tick is two feet long
constexpr double kFieldLength = 100.0;

void across(Panel& panel, const Setup& setup, double y, StyleId style) {
  panel.shapes.push_back(Line{{setup.sideline_left, y}, {setup.sideline_right, y}, style});
}

/// First value >= from whose distance to the goal is a whole multiple of `step`.
double firstMark(const Setup& setup, double from, double step) {
  const double to_goal = setup.to_goal - from;
  return setup.to_goal - std::floor(to_goal / step) * step;
}

int numberAt(const Setup& setup, double y) {
  const double to_goal = setup.to_goal - y;
  return static_cast<int>(std::lround(std::min(to_goal, kFieldLength - to_goal)));
}

void drawYardLines(Panel& panel, const Setup& setup, const FieldView& view, double number_size) {
  const double last = std::min(view.high.y, setup.to_goal);
  for (double y = firstMark(setup, view.low.y, kLineEvery); y <= last; y += kLineEvery) {
    across(panel, setup, y, y > setup.to_goal - 0.5 ? StyleId::sideline : StyleId::yard_line);
    const int number = numberAt(setup, y);
    if (number_size <= 0.0 || number <= 0) continue;
    const double x = std::max(view.low.x, setup.sideline_left) + 0.4;
    panel.shapes.push_back(Label{{x, y + 0.75 * number_size / panel.camera.scale_x},
                                 std::to_string(number),
                                 number_size,
                                 StyleId::yard_number,
                                 Anchor::left});
  }
}

void drawHashTicks(Panel& panel, const Setup& setup, const FieldView& view) {
  const double in = hashDistance(setup.level);
  const double last = std::min(view.high.y, setup.to_goal);
  for (double y = firstMark(setup, view.low.y, 1.0); y < last; y += 1.0) {
    for (const double x : {setup.sideline_left + in, setup.sideline_right - in}) {
      panel.shapes.push_back(Line{{x - kTickHalf, y}, {x + kTickHalf, y}, StyleId::hash_tick});
    }
  }
}

}  // namespace

double hashDistance(Level level) {
  switch (level) {
    case Level::high_school:
      return 17.78;
    case Level::college:
      return 20.0;
    case Level::pro:
      return 23.58;
  }
  return 20.0;
}

void drawGround(Panel& panel, const Setup& setup, double number_size) {
  const FieldView view = viewOf(panel.camera, panel.clip);
  panel.shapes.push_back(Rect{view.low, view.high, 0.0, StyleId::ground});
  drawYardLines(panel, setup, view, number_size);
  drawHashTicks(panel, setup, view);
  for (const double x : {setup.sideline_left, setup.sideline_right}) {
    panel.shapes.push_back(Line{{x, view.low.y}, {x, view.high.y}, StyleId::sideline});
  }
  across(panel, setup, setup.distance, StyleId::to_gain);
  across(panel, setup, 0.0, StyleId::scrimmage);
}

}  // namespace gapsound
