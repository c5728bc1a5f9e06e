#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "analysis/door.hpp"
#include "analysis/gaps.hpp"
#include "analysis/lanes.hpp"
#include "analysis/openings.hpp"
#include "athlete/reach.hpp"
#include "drawn.hpp"

using namespace gapsound;
using doctest::Approx;

namespace {

/// The double team on DT and the kick on SE, the ball on its way: the lane between them is 2.5 to 4.9 less
/// bodies.
Frame doorOpen(const Setup& setup, Vec2 ball) {
  return drawn::picture(setup, "T",
                        {{"T", ball},
                         {"DT", {1.6, 1.4}, {0, -1}, "RG"},
                         {"RG", {1.3, 0.7}, {0, 1}, "DT"},
                         {"RT", {2.1, 0.7}, {0, 1}, "DT"},
                         {"SE", {4.9, 0.6}, {0, -1}, "F"},
                         {"F", {4.3, -0.1}, {0, 1}, "SE"},
                         {"C", {-0.5, 0.4}, {0, 1}, "NT"},
                         {"LT", {-2.6, 0.1}, {0, 1}, "WE"},
                         {"Y", {2.0, 3.6}, {0, 1}, "M"},
                         {"M", {1.9, 4.3}, {0, -1}},
                         {"LG", {2.6, -1.5}},
                         {"Q", {0.5, -5.0}}});
}

const Lane* laneAt(const std::vector<Lane>& lanes, double x) {
  const auto it =
      std::find_if(lanes.begin(), lanes.end(), [=](const Lane& l) { return l.left <= x && x <= l.right; });
  return it == lanes.end() ? nullptr : &*it;
}

}  // namespace

TEST_CASE("a turned body is as wide as its shoulders, its chest, or the ellipse between") {
  Body body;
  body.shoulder = 0.4, body.chest = 0.2;
  CHECK(halfExtent(body, {0, 1}).x == Approx(0.4));
  CHECK(halfExtent(body, {0, 1}).y == Approx(0.2));
  CHECK(halfExtent(body, {1, 0}).x == Approx(0.2));
  CHECK(halfExtent(body, {1, 0}).y == Approx(0.4));
  const double slant = std::sqrt(0.5);
  CHECK(halfExtent(body, {slant, slant}).x == Approx(std::sqrt(0.5 * (0.16 + 0.04))));
}

TEST_CASE("a lane runs edge to edge between two adjacent bodies") {
  const Setup setup = drawn::power();
  const auto lanes = lanesAt(setup, doorOpen(setup, {2.0, -3.0}));
  const Lane* door = laneAt(lanes, 3.3);
  REQUIRE(door != nullptr);
  CHECK(door->left == Approx(2.1 + 0.4));
  CHECK(door->right == Approx(4.3 - 0.4));
  CHECK(door->width() == Approx(1.4));
  CHECK(door->left_man == drawn::man("RT"));
  CHECK(door->right_man == drawn::man("F"));
  CHECK(door->y == Approx(1.0));
  CHECK(door->gap == "C+");
  CHECK(door->relation == Relation::designed);
  for (std::size_t k = 1; k < lanes.size(); ++k) CHECK(lanes[k - 1].right < lanes[k].left);
}

TEST_CASE("a man who turns sideways in the hole widens it") {
  const Setup setup = drawn::power();
  Frame square = doorOpen(setup, {2.0, -3.0});
  Frame turned = square;
  turned.men[drawn::at("F")].face = {1.0, 0.0};
  const double before = laneAt(lanesAt(setup, square), 3.3)->width();
  CHECK(laneAt(lanesAt(setup, turned), 3.3)->width() == Approx(before + 0.2));
}

TEST_CASE("past the line the lanes are cut a yard ahead of the ball") {
  const Setup setup = drawn::power();
  Frame f = doorOpen(setup, {3.0, 3.0});
  const auto lanes = lanesAt(setup, f);
  REQUIRE_FALSE(lanes.empty());
  CHECK(lanes.front().y == Approx(4.0));
  const auto bounds = [&](int man) {
    return std::any_of(lanes.begin(), lanes.end(),
                       [=](const Lane& l) { return l.left_man == man || l.right_man == man; });
  };
  CHECK(bounds(drawn::man("W")));
  CHECK_FALSE(bounds(drawn::man("SE")));
}

TEST_CASE("margin is the earliest free defender's time less the runner's, and a blocked man does not count") {
  const Setup setup = drawn::power();
  Frame f = doorOpen(setup, {3.2, -2.0});
  f.men[drawn::at("T")].vel = {0.0, 5.0};
  const Lane free_backer = *laneAt(lanesAt(setup, f), 3.3);
  const Pose& s = f.men[drawn::at("S")];
  const Vec2 goal{free_backer.centre(), free_backer.y};
  const Body& body = setup.men[drawn::at("S")].body;
  CHECK(free_backer.t_defender == Approx(timeToReach(s.pos, s.vel, body.top_speed, goal, body.shoulder)));
  CHECK(free_backer.margin == Approx(free_backer.t_defender - free_backer.t_runner));

  f.men[drawn::at("S")].engaged = static_cast<std::int8_t>(drawn::man("LG"));
  const Lane blocked = *laneAt(lanesAt(setup, f), 3.3);
  CHECK(blocked.t_defender > free_backer.t_defender);
  CHECK(blocked.state == LaneState::open);
  CHECK(blocked.t_runner == Approx(free_backer.t_runner));
}

TEST_CASE("back side of the double team is a cutback, outside the kicked end a bounce") {
  const Setup setup = drawn::power();
  const Door door = doorAt(setup, doorOpen(setup, {2.0, -3.0}));
  CHECK(door.inner_man == drawn::man("RT"));
  CHECK(door.edge_man == drawn::man("SE"));
  CHECK(door.relationOf(0.4) == Relation::cutback);
  CHECK(door.relationOf(3.3) == Relation::designed);
  CHECK(door.relationOf(5.6) == Relation::bounce);
}

TEST_CASE("a run to the left has its lanes mirrored, the same widths and relations") {
  const Setup right = drawn::power();
  const Frame f = doorOpen(right, {2.0, -3.0});
  Setup left = mirrored(right);
  Frame g = f;
  for (Pose& p : g.men) p.pos = mirrored(p.pos), p.vel = mirrored(p.vel), p.face = mirrored(p.face);
  g.ball = mirrored(g.ball);
  auto there = lanesAt(right, f);
  auto here = lanesAt(left, g);
  std::reverse(here.begin(), here.end());
  REQUIRE(there.size() == here.size());
  for (std::size_t k = 0; k < here.size(); ++k) {
    CHECK(here[k].left == Approx(-there[k].right));
    CHECK(here[k].margin == Approx(there[k].margin));
    CHECK(here[k].relation == there[k].relation);
  }
}

TEST_CASE("gaps are lettered outward from the center and end in the alley") {
  const GapChart gaps(drawn::power());
  CHECK(gaps.at(0.7) == "A+");
  CHECK(gaps.at(-0.7) == "A-");
  CHECK(gaps.at(2.0) == "B+");
  CHECK(gaps.at(3.6) == "C+");
  CHECK(gaps.at(5.3) == "D+");
  CHECK(gaps.at(-3.6) == "C-");
  CHECK(gaps.at(9.0) == "alley+");
}

TEST_CASE("a lane belongs to the man whose call names its gap, until the man in front hands it on") {
  const Setup setup = drawn::power();
  Tape tape{setup, 1, {}};
  tape.record.frames = {doorOpen(setup, {2.0, -3.0})};
  CHECK(laneAt(lanesAt(tape, 0), 3.3)->owner == drawn::man("S"));
  tape.record.events = {{0, Happening::decides, drawn::man("S"), kNobody, static_cast<int>(Fit::over_top)},
                        {0, Happening::decides, drawn::man("M"), kNobody, static_cast<int>(Fit::inside)}};
  CHECK(laneAt(lanesAt(tape, 0), 3.3)->owner == drawn::man("M"));
}

TEST_CASE("an open lane has one cause: its man absent, beaten or missed") {
  const Setup setup = drawn::power();
  Frame f = doorOpen(setup, {3.2, -0.3});
  f.men[drawn::at("T")].vel = {0.0, 6.0};
  CHECK(laneAt(lanesAt(setup, f), 3.3)->cause == Cause::absent);
  f.men[drawn::at("S")].pos = {3.6, 2.9};
  f.men[drawn::at("S")].engaged = static_cast<std::int8_t>(drawn::man("LG"));
  CHECK(laneAt(lanesAt(setup, f), 3.3)->cause == Cause::beaten);
  f.men[drawn::at("S")].engaged = kNobody;
  f.men[drawn::at("S")].down = true;
  CHECK(laneAt(lanesAt(setup, f), 3.3)->cause == Cause::missed);
  f.men[drawn::at("S")].down = false;
  f.men[drawn::at("S")].vel = {-1.0, -5.0};
  const Lane closed = *laneAt(lanesAt(setup, f), 3.3);
  CHECK(closed.state != LaneState::open);
  CHECK(closed.cause == Cause::there);
}
