#include "picture/field.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <map>
#include <set>

#include "made_up_tape.hpp"
#include "shapes.hpp"

using namespace gapsound;
using namespace gapsound::made_up;

namespace {

FieldLook look() {
  FieldLook plain;
  plain.box = {0.0, 0.0, 1280.0, 720.0};
  return plain;
}

constexpr double kLate = 0.6;  // share of the made-up run

}  // namespace

TEST_CASE("the field camera shows all it must, downfield up, and comes back from the page") {
  const PageRect box{100.0, 50.0, 800.0, 300.0};
  const Camera camera = fieldCamera(box, {-10.0, -5.0}, {10.0, 10.0});
  for (const Vec2 corner : {Vec2{-10.0, -5.0}, Vec2{10.0, 10.0}}) {
    const Vec2 page = camera.toPage(corner);
    CHECK(page.x >= box.x - 1e-9);
    CHECK(page.x <= box.right() + 1e-9);
    CHECK(page.y >= box.y - 1e-9);
    CHECK(page.y <= box.bottom() + 1e-9);
    CHECK(distance(camera.fromPage(page), corner) < 1e-9);
  }
  CHECK(camera.toPage({0.0, 1.0}).y < camera.toPage({0.0, 0.0}).y);
  CHECK(camera.toPage({1.0, 0.0}).x > camera.toPage({0.0, 0.0}).x);
}

TEST_CASE("every man stands where the frame has him, in the sign of his side and level") {
  const Setup men = setup();
  const Frame now = frame(kLate, true);
  const Panel panel = fieldPanel(men, now, look());
  CHECK(count<Disc>(panel, StyleId::offense) ==
        9);  // ten with the back, who has the ball; the centre is square
  CHECK(count<Disc>(panel, StyleId::carrier) == 1);
  CHECK(count<Rect>(panel, StyleId::offense) == 1);
  CHECK(count<Polygon>(panel, StyleId::defense_1) == 4);
  CHECK(count<Polygon>(panel, StyleId::defense_2) == 3);
  CHECK(count<Rect>(panel, StyleId::defense_3) == 4);
  const std::vector<Vec2> middles = signMiddles(panel);
  REQUIRE(middles.size() == kMen);
  for (const Pose& pose : now.men) {
    CHECK(std::any_of(middles.begin(), middles.end(), [&](Vec2 p) { return distance(p, pose.pos) < 0.1; }));
  }
}

TEST_CASE("each man has his own name once, and none when names are hidden") {
  const Setup men = setup();
  const Frame now = frame(kLate, true);
  std::map<std::string, int> seen;
  for (const Label& label : all<Label>(fieldPanel(men, now, look()))) ++seen[label.text];
  for (const Man& man : men.men) CHECK(seen[man.id] == 1);
  FieldLook hidden = look();
  hidden.names = false;
  hidden.yard_numbers = false;
  CHECK(all<Label>(fieldPanel(men, now, hidden)).empty());
}

TEST_CASE("at the snap no name lies on another name or on a man") {
  const Panel panel = fieldPanel(setup(), frame(0.0, false), look());
  std::vector<PageRect> boxes;
  for (const Label& label : all<Label>(panel)) {
    if (label.style == StyleId::defense_letter) boxes.push_back(boxOf(panel, label));
  }
  REQUIRE(boxes.size() == 7);
  for (std::size_t i = 0; i < boxes.size(); ++i) {
    for (std::size_t k = 0; k < i; ++k) CHECK_FALSE(overlap(boxes[i], boxes[k]));
    for (const Vec2 man : signMiddles(panel)) {
      const Vec2 page = panel.camera.toPage(man);
      CHECK_FALSE(overlap(boxes[i], {page.x - 4.0, page.y - 4.0, 8.0, 8.0}));
    }
  }
}

TEST_CASE("a man out of sight leaves no name at the edge") {
  Frame now = frame(0.0, false);
  now.men[15].pos = {-60.0, 4.0};
  for (const Label& label : all<Label>(fieldPanel(setup(), now, look()), StyleId::defense_letter)) {
    CHECK(label.text != "W");
  }
}

TEST_CASE("the ball is one dot beside the man who has it") {
  const Frame now = frame(kLate, true);
  const std::vector<Disc> balls = all<Disc>(fieldPanel(setup(), now, look()), StyleId::ball);
  REQUIRE(balls.size() == 1);
  CHECK(distance(balls[0].centre, now.men[kBack].pos) < 0.6);
  CHECK(distance(balls[0].centre, now.men[kBack].pos) > 0.2);
  Frame flying = now;
  flying.carrier = kNobody;
  flying.ball = {0.5, -2.0};
  CHECK(all<Disc>(fieldPanel(setup(), flying, look()), StyleId::ball)[0].centre == Vec2{0.5, -2.0});
}

TEST_CASE("yard lines lie on the field's fives wherever the ball is spotted") {
  Setup men = setup();
  men.to_goal = 58.0;
  std::set<double> lines;
  for (const Line& line : all<Line>(fieldPanel(men, frame(0.0, false), look()), StyleId::yard_line)) {
    CHECK(line.a.y == line.b.y);
    lines.insert(line.a.y);
  }
  CHECK(lines.count(3.0) == 1);
  CHECK(lines.count(8.0) == 1);
  CHECK(lines.count(-2.0) == 1);
  CHECK(lines.count(0.0) == 0);
  const auto scrimmage = all<Line>(fieldPanel(men, frame(0.0, false), look()), StyleId::scrimmage);
  REQUIRE(scrimmage.size() == 1);
  CHECK(scrimmage[0].a.y == 0.0);
}

TEST_CASE("hashes follow the rules of the level, from the sidelines of this spot") {
  Setup men = setup();
  men.sideline_left = -17.78;
  men.sideline_right = 35.55;
  men.level = Level::high_school;
  const Panel panel = fieldPanel(men, frame(0.0, false), look());
  for (const Line& tick : all<Line>(panel, StyleId::hash_tick)) {
    const double x = 0.5 * (tick.a.x + tick.b.x);
    const bool on_a_hash = std::abs(x - 0.0) < 0.01 || std::abs(x - 17.77) < 0.01;
    CHECK(on_a_hash);
  }
}

TEST_CASE("two men in contact get two bars that touch between them") {
  const Frame now = frame(kLate, true);
  const auto bars = all<Line>(fieldPanel(setup(), now, look()), StyleId::contact);
  CHECK(bars.size() == 8);  // four pairs
  const Vec2 meeting = 0.5 * (now.men[6].pos + now.men[14].pos);
  const auto near = std::count_if(bars.begin(), bars.end(), [&](const Line& bar) {
    return distance(0.5 * (bar.a + bar.b), meeting) < 0.1;
  });
  CHECK(near == 2);
}

TEST_CASE("a free man's shoulders lie across the way he faces, before him") {
  Frame now = frame(0.0, false);
  now.men[19].face = {1.0, 0.0};
  const auto bars = all<Line>(fieldPanel(setup(), now, look()), StyleId::shoulder);
  CHECK(bars.size() == kMen);
  const bool found = std::any_of(bars.begin(), bars.end(), [&](const Line& bar) {
    const Vec2 middle = 0.5 * (bar.a + bar.b);
    return middle.x > now.men[19].pos.x && std::abs(middle.y - now.men[19].pos.y) < 1e-9 &&
           std::abs(bar.a.x - bar.b.x) < 1e-9;
  });
  CHECK(found);
}

TEST_CASE("greyed levels stay in place and lose their weight") {
  FieldLook only_backers = look();
  only_backers.shown = {false, false, true, false};
  const Panel panel = fieldPanel(setup(), frame(kLate, true), only_backers);
  CHECK(count<Polygon>(panel, StyleId::defense_2) == 3);
  CHECK(count<Polygon>(panel, StyleId::muted) == 4);
  CHECK(count<Disc>(panel, StyleId::offense) == 0);
}

TEST_CASE("trails lead from where a man was to where he is") {
  const std::vector<Frame> past{frame(0.2, false), frame(0.3, false)};
  const Frame now = frame(0.4, true);
  const Panel panel = fieldPanel(setup(), now, look(), {}, past);
  const auto trails = all<Polyline>(panel, StyleId::trail_offense);
  REQUIRE(trails.size() == kOffense);
  CHECK(trails[0].points.front() == past[0].men[0].pos);
  CHECK(trails[0].points.back() == now.men[0].pos);
  CHECK(all<Polyline>(panel, StyleId::trail_ball).size() == 1);
}

TEST_CASE("lanes are gates of their width in the line of their state") {
  const Panel panel = fieldPanel(setup(), frame(kLate, true), look(), lanes());
  const auto open = all<Line>(panel, StyleId::lane_open);
  REQUIRE(open.size() == 3);  // the gate and its two posts
  CHECK(open[0].a == Vec2{2.2, 1.0});
  CHECK(open[0].b == Vec2{4.4, 1.0});
  CHECK(count<Line>(panel, StyleId::lane_contested) == 3);
  CHECK(count<Line>(panel, StyleId::lane_closed) == 1);
}

TEST_CASE("a way too narrow to run through is drawn shut and not measured, whatever its margin") {
  std::vector<Lane> narrow{lanes().back()};
  narrow[0].right = narrow[0].left + 1.1;
  FieldLook measured = look();
  measured.calipers = Calipers::passable;
  const Panel panel = fieldPanel(setup(), frame(kLate, true), measured, narrow);
  CHECK(count<Line>(panel, StyleId::lane_open) == 0);
  CHECK(count<Line>(panel, StyleId::lane_closed) == 1);
  CHECK(all<Label>(panel, StyleId::caliper_text).empty());
}

TEST_CASE("calipers say width and margin of the lanes asked for") {
  FieldLook measured = look();
  const auto texts = [&](Calipers which) {
    measured.calipers = which;
    std::vector<std::string> found;
    for (const Label& label :
         all<Label>(fieldPanel(setup(), frame(kLate, true), measured, lanes()), StyleId::caliper_text)) {
      found.push_back(label.text);
    }
    return found;
  };
  CHECK(texts(Calipers::none).empty());
  CHECK(texts(Calipers::open) == std::vector<std::string>{"2.2 yd   +0.35 s"});
  CHECK(texts(Calipers::passable).size() == 3);
}

TEST_CASE("a held rep's shadow has every man and no letters") {
  const Panel panel = shadowPanel(setup(), frame(kLate, true), look());
  CHECK(panel.shapes.size() == kMen);
  CHECK(all<Label>(panel).empty());
}

TEST_CASE("the hash of a picture tells frames apart and knows one again") {
  const auto hash = [](double share) {
    return hashOf(DisplayList{1280.0, 720.0, {fieldPanel(setup(), frame(share, true), look(), lanes())}});
  };
  CHECK(hash(0.5) == hash(0.5));
  CHECK(hash(0.5) != hash(0.5001));
}
