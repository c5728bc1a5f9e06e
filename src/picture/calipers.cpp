#include "picture/calipers.hpp"

#include <fmt/format.h>

namespace gapsound {
namespace {

constexpr double kPassable = 1.2;  // yd
constexpr double kPost = 0.22;     // yd, half height of a gate's posts
constexpr double kFoot = 0.42;     // yd, half height of a caliper's jaws

StyleId styleOf(LaneState state) {
  switch (state) {
    case LaneState::open:
      return StyleId::lane_open;
    case LaneState::contested:
      return StyleId::lane_contested;
    case LaneState::closed:
      return StyleId::lane_closed;
  }
  return StyleId::lane_closed;
}

bool measured(const Lane& lane, const FieldLook& look) {
  if (look.caliper_x && lane.left <= *look.caliper_x && *look.caliper_x <= lane.right) return true;
  if (look.calipers == Calipers::none || !passable(lane)) return false;
  return look.calipers == Calipers::passable || lane.state == LaneState::open;
}

void upright(Panel& panel, double x, double y, double half, StyleId style) {
  panel.shapes.push_back(Line{{x, y - half}, {x, y + half}, style});
}

std::vector<Vec2> textPlaces(Vec2 gate, double height) {
  std::vector<Vec2> places;
  for (const double up : {2.2, 3.4, 4.6, -2.2, -3.4}) {
    for (const double aside : {0.0, 3.0, -3.0})
      places.push_back({gate.x + aside * height, gate.y - up * height});
  }
  return places;
}

void drawCaliper(Panel& panel, const Lane& lane, const FieldLook& look, FreeSpace& space) {
  upright(panel, lane.left, lane.y, kFoot, StyleId::caliper);
  upright(panel, lane.right, lane.y, kFoot, StyleId::caliper);
  panel.shapes.push_back(Line{{lane.left, lane.y}, {lane.right, lane.y}, StyleId::caliper});
  const std::string text = yardsText(lane.width()) + "   " + marginText(lane.margin);
  const double size = 1.1 * look.text;
  const double width = roughWidth(text, size) + size;
  const double height = 1.5 * size;
  const Vec2 gate = panel.camera.toPage({lane.centre(), lane.y});
  const Vec2 middle = space.place(textPlaces(gate, height), width, height);
  const Camera& camera = panel.camera;
  panel.shapes.push_back(Line{{lane.centre(), lane.y}, camera.fromPage(middle), StyleId::caliper});
  const Vec2 half{0.5 * width, 0.5 * height};
  panel.shapes.push_back(
      Rect{camera.fromPage(middle - half), camera.fromPage(middle + half), 0.0, StyleId::caliper_text});
  panel.shapes.push_back(Label{camera.fromPage(middle), text, size, StyleId::caliper_text});
}

}  // namespace

bool passable(const Lane& lane) { return lane.width() >= kPassable; }
LaneState shownState(const Lane& lane) { return passable(lane) ? lane.state : LaneState::closed; }

std::string yardsText(double yards) { return fmt::format("{:.1f} yd", yards); }
std::string marginText(double margin) {
  return fmt::format("{}{:.2f} s", margin < 0 ? "–" : "+", std::abs(margin));
}

void drawLanes(Panel& panel, const std::vector<Lane>& lanes) {
  for (const Lane& lane : lanes) {
    const StyleId style = styleOf(shownState(lane));
    panel.shapes.push_back(Line{{lane.left, lane.y}, {lane.right, lane.y}, style});
    if (shownState(lane) == LaneState::closed) continue;
    upright(panel, lane.left, lane.y, kPost, style);
    upright(panel, lane.right, lane.y, kPost, style);
  }
}

void drawCalipers(Panel& panel, const std::vector<Lane>& lanes, const FieldLook& look, FreeSpace& space) {
  for (const Lane& lane : lanes) {
    if (measured(lane, look)) drawCaliper(panel, lane, look, space);
  }
}

}  // namespace gapsound
