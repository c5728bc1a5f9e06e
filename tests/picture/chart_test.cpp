#include "picture/chart.hpp"

#include <doctest/doctest.h>

#include <algorithm>

#include "shapes.hpp"

using namespace gapsound;

namespace {

ChartData sweep() {
  Curve curve{"early read", {3, 5, 7, 9}, {4.0, 3.5, 3.8, 5.2}, {3.6, 3.1, 3.4, 4.7}, {4.4, 3.9, 4.2, 5.7}};
  ChartData data{"Title", "The finding.", "speed, yd/s", "mean gain, yd", {curve}, {}, "No pass threat."};
  data.marks = {{7.5, "break point 7.5", std::make_pair(7.0, 8.0)}};
  return data;
}

std::vector<std::string> textsOf(const Panel& panel) {
  std::vector<std::string> texts;
  for (const Label& label : all<Label>(panel)) texts.push_back(label.text);
  return texts;
}

bool has(const std::vector<std::string>& texts, const std::string& text) {
  return std::find(texts.begin(), texts.end(), text) != texts.end();
}

}  // namespace

TEST_CASE("scales are round and hold what they must") {
  const Scale a = roundScale(0.0, 5.7);
  CHECK(a.step == doctest::Approx(1.0));
  CHECK(a.low == doctest::Approx(0.0));
  CHECK(a.high == doctest::Approx(6.0));
  const Scale b = roundScale(0.31, 0.44);
  CHECK(b.low <= 0.31);
  CHECK(b.high >= 0.44);
  CHECK(b.digits == 2);
  const Scale flat = roundScale(3.0, 3.0);
  CHECK(flat.low < 3.0);
  CHECK(flat.high > 3.0);
  const Scale negative = roundScale(-1.2, -0.3);
  CHECK(negative.low <= -1.2);
  CHECK(negative.high >= -0.3);
}

TEST_CASE("a curve has a point for every value, left to right, higher when larger, inside its band") {
  const Panel panel = chartPage(sweep()).panels.front();
  const auto points = all<Disc>(panel, StyleId::point);
  REQUIRE(points.size() == 4);
  for (std::size_t i = 1; i < 4; ++i) CHECK(points[i].centre.x > points[i - 1].centre.x);
  CHECK(points[3].centre.y < points[0].centre.y);
  const auto bands = all<Polygon>(panel, StyleId::band);
  REQUIRE(bands.size() == 1);
  REQUIRE(bands[0].points.size() == 8);
  for (std::size_t i = 0; i < 4; ++i) {
    CHECK(bands[0].points[i].y < points[i].centre.y);
    CHECK(bands[0].points[7 - i].y > points[i].centre.y);
  }
}

TEST_CASE("a mark stands at its value between its neighbours, its interval around it") {
  const Panel panel = chartPage(sweep()).panels.front();
  const auto marks = all<Line>(panel, StyleId::mark);
  REQUIRE(marks.size() == 1);
  const auto points = all<Disc>(panel, StyleId::point);
  CHECK(marks[0].a.x ==
        doctest::Approx(points[2].centre.x + 0.25 * (points[3].centre.x - points[2].centre.x)));
}

TEST_CASE("title, finding, axes, names and footnote are all on the page") {
  const auto texts = textsOf(chartPage(sweep()).panels.front());
  for (const char* text : {"Title", "The finding.", "speed, yd/s", "mean gain, yd", "early read",
                           "break point 7.5", "No pass threat."}) {
    INFO(text);
    CHECK(has(texts, text));
  }
}

TEST_CASE("two curves differ in line as well as in colour") {
  ChartData data = sweep();
  data.curves.push_back(data.curves[0]);
  const Panel panel = chartPage(data).panels.front();
  CHECK(all<Polyline>(panel, StyleId::curve).size() == 1);
  CHECK(all<Polyline>(panel, StyleId::curve_2).size() == 1);
}

TEST_CASE("a single value is drawn as a point") {
  ChartData data = sweep();
  data.curves = {{"", {4.0}, {3.0}, {}, {}}};
  data.marks.clear();
  const Panel panel = chartPage(data).panels.front();
  CHECK(all<Disc>(panel, StyleId::point).size() == 1);
  CHECK(all<Polyline>(panel, StyleId::curve).empty());
}

TEST_CASE("bars start at zero, reach their value to either side and name their row") {
  BarData data{"Faults",
               "What each costs.",
               "yd a rep",
               "",
               {{"SE kicked_out", 2.0, 1.6, 2.4, "repaired by M"}, {"DT washed", -1.0, -1.4, -0.6, ""}}};
  const Panel panel = barPage(data).panels.front();
  const auto longer = all<Rect>(panel, StyleId::bar);
  const auto shorter = all<Rect>(panel, StyleId::bar_2);
  REQUIRE(longer.size() == 1);
  REQUIRE(shorter.size() == 1);
  CHECK(longer[0].low.x == doctest::Approx(shorter[0].low.x));
  CHECK(longer[0].high.x - longer[0].low.x == doctest::Approx(2.0 * (shorter[0].low.x - shorter[0].high.x)));
  CHECK(has(textsOf(panel), "SE kicked_out"));
  CHECK(has(textsOf(panel), "repaired by M"));
}

TEST_CASE("a finding of several lines pushes the plot down instead of running into it") {
  ChartData data = sweep();
  const double plain = all<Line>(chartPage(data).panels.front(), StyleId::grid).back().a.y;
  for (int i = 0; i < 5; ++i) data.sentence += " The finding goes on and on and on, for a good while.";
  const Panel panel = chartPage(data).panels.front();
  CHECK(all<Line>(panel, StyleId::grid).back().a.y > plain + 20.0);
}
