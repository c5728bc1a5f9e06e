#include <doctest/doctest.h>
#include <imgui.h>

#include <cmath>
#include <numbers>

#include "app/hands.hpp"
#include "io/theme_file.hpp"
#include "painters/window/drop.hpp"
#include "painters/window/imgui_input.hpp"
#include "painters/window/list_painter.hpp"
#include "painters/window/outlines.hpp"

using namespace gapsound;

namespace {

double areaOf(const std::vector<Vec2>& outline) {
  double sum = 0.0;
  for (std::size_t i = 0; i < outline.size(); ++i)
    sum += cross(outline[i], outline[(i + 1) % outline.size()]);
  return std::abs(0.5 * sum);
}

double lengthOfRun(const std::vector<Vec2>& run) {
  double sum = 0.0;
  for (std::size_t i = 1; i < run.size(); ++i) sum += distance(run[i - 1], run[i]);
  return sum;
}

}  // namespace

TEST_CASE("a concave outline is cut into triangles that cover it once") {
  const std::vector<Vec2> band = {{0, 0}, {10, 4}, {20, 0}, {30, 6}, {30, 10}, {20, 5}, {10, 9}, {0, 4}};
  CHECK_FALSE(isConvex(band));
  double sum = 0.0;
  for (const auto& [a, b, c] : triangles(band)) sum += 0.5 * std::abs(cross(b - a, c - a));
  CHECK(sum == doctest::Approx(areaOf(band)));
  CHECK(triangles(band).size() == band.size() - 2);
}

TEST_CASE("circles and rounded boxes have the area they should") {
  CHECK(areaOf(circleOutline({3, 4}, 20.0)) == doctest::Approx(std::numbers::pi * 400.0).epsilon(0.01));
  const double corners = (4.0 - std::numbers::pi) * 25.0;
  CHECK(areaOf(boxOutline({0, 0, 60, 40}, 5.0)) == doctest::Approx(2400.0 - corners).epsilon(0.01));
  CHECK(isConvex(boxOutline({0, 0, 60, 40}, 5.0)));
}

TEST_CASE("a dashed line has ink where the dash says, round corners too") {
  const auto straight = dashed({{0, 0}, {100, 0}}, false, {8.0, 2.0});
  CHECK(straight.size() == 10);
  for (const auto& run : straight) CHECK(lengthOfRun(run) == doctest::Approx(8.0));
  double ink = 0.0;
  for (const auto& run : dashed({{0, 0}, {35, 0}, {35, 35}, {0, 35}}, true, {5.0, 5.0}))
    ink += lengthOfRun(run);
  CHECK(ink == doctest::Approx(70.0));
}

TEST_CASE("a dropped list names files, spaces and all, and nothing else") {
  const auto files = filesInUriList(
      "# a comment\r\nfile:///home/looks/my%20look.json\r\nhttp://x/y\r\nfile://host/b.json\r\n");
  CHECK(files == std::vector<std::string>{"/home/looks/my look.json", "/b.json"});
  CHECK(filesInUriList("file:///a%2").front() == "/a%2");
  CHECK(filesInUriList("").empty());
}

TEST_CASE("no event of a frame hides another") {
  InputQueue queue;
  for (const InputEvent& event : clickEvents({5, 5})) queue.push(event);
  for (const InputEvent& event : keyEvents({Key::a, true, false, false})) queue.push(event);
  std::vector<std::size_t> frames;
  while (!queue.empty()) frames.push_back(queue.next().size());
  CHECK(frames.size() >= 4);
  CHECK(frames[0] == 2);  // move and press
  CHECK(frames[1] == 1);  // release
}

TEST_CASE("a key knows the modifiers held while it went down") {
  ImGuiHost host;
  ImGui::GetIO().Fonts->Build();
  std::vector<KeyPress> pressed;
  InputQueue queue;
  for (const InputEvent& event : keyEvents({Key::z, true, true, false})) queue.push(event);
  while (!queue.empty()) {
    for (const KeyPress& press : host.begin(queue.next(), 0.01, 640, 480)) {
      if (press.key == Key::z) pressed.push_back(press);
    }
    ImGui::EndFrame();
  }
  REQUIRE(pressed.size() == 1);
  CHECK(pressed[0] == KeyPress{Key::z, true, true, false});
  CHECK(nameOf(pressed[0]) == "ctrl+shift+z");
  CHECK(keyPressNamed("ctrl+shift+z") == pressed[0]);
  CHECK_FALSE(keyPressNamed("hyper+z"));
}

TEST_CASE("text stands with its capitals in the middle of where it is put, and as wide as its size says") {
  ImGuiHost host;
  FontShelf fonts;
  fonts.fill(1.0);
  ImGui::GetIO().Fonts->Build();
  const auto small = fonts.choose(FontRole::condensed, true, 15.0);
  const auto large = fonts.choose(FontRole::condensed, true, 30.0);
  const auto width = [](const FontShelf::Choice& c) {
    return c.font->CalcTextSizeA(c.size, FLT_MAX, 0.0F, "SS at the line").x;
  };
  CHECK(width(large) / width(small) == doctest::Approx(2.0).epsilon(0.05));
  static_cast<void>(host.begin({}, 0.01, 640, 480));
  DisplayList list{640, 480, {pagePanel({0, 0, 640, 480})}};
  list.panels[0].shapes.push_back(Label{{320, 240}, "HHHH", 40.0, StyleId::title});
  ImDrawList& into = *ImGui::GetBackgroundDrawList();
  paint(into, list, shippedTheme("paper"), fonts, 1.0);
  float top = 1e9F, bottom = 0.0F;
  for (const ImDrawVert& vertex : into.VtxBuffer) {
    top = std::min(top, vertex.pos.y);
    bottom = std::max(bottom, vertex.pos.y);
  }
  CHECK(0.5F * (top + bottom) == doctest::Approx(240.0F).epsilon(0.01));
  CHECK(bottom - top == doctest::Approx(0.73 * 40.0).epsilon(0.1));  // Inter's capitals: 0.727 of the em
  ImGui::EndFrame();
}
