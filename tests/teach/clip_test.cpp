#include "teach/clip.hpp"

#include <doctest/doctest.h>

#include <algorithm>

#include "analysis/lanes.hpp"
#include "teach/caution.hpp"
#include "teach/view.hpp"
#include "words.hpp"

using namespace gapsound;

namespace {

std::vector<ClipFrame> only(const ClipScript& script, Scene scene) {
  std::vector<ClipFrame> found;
  for (const ClipFrame& frame : framesOf(script)) {
    if (frame.scene == scene) found.push_back(frame);
  }
  return found;
}

}  // namespace

TEST_CASE("a clip opens with its title and ends with the whole caution") {
  const ClipScript script = clipOf(made_up::tape());
  const auto frames = framesOf(script);
  CHECK(only(script, Scene::title).size() == 25);
  CHECK(frames.front().scene == Scene::title);
  CHECK(frames.back().scene == Scene::caution);
  CHECK(says(clipPage(script, frames.front()), "Power right"));
  for (const std::string& line : cautionLines()) CHECK(says(clipPage(script, frames.back()), line));
}

TEST_CASE("frames follow the simulation: a twenty-fifth of a second each, a quarter of it in slow motion") {
  const ClipScript script = clipOf(made_up::tape());
  double before = -1.0;
  bool slow_before = false;
  for (const ClipFrame& frame : framesOf(script)) {
    if (frame.scene != Scene::play && frame.scene != Scene::slow) continue;
    if (before >= 0.0) {
      const double step = frame.t - before;
      if (slow_before)
        CHECK(step == doctest::Approx(0.01));
      else
        CHECK(step <= 0.04 + 1e-9);
      CHECK(step > 0.0);
    }
    before = frame.t;
    slow_before = frame.scene == Scene::slow;
  }
  CHECK(before >= lengthOf(made_up::tape()) - 0.04);
}

TEST_CASE("slow motion is around the crossing, and the picture is held there") {
  const ClipScript script = clipOf(made_up::tape());
  const auto slow = only(script, Scene::slow);
  const auto held = only(script, Scene::freeze);
  REQUIRE_FALSE(slow.empty());
  REQUIRE_FALSE(held.empty());
  CHECK(slow.front().t < 2.4);
  CHECK(slow.back().t > 2.4);
  CHECK(held.front().t == doctest::Approx(2.4));
  CHECK(std::all_of(held.begin(), held.end(), [&](const ClipFrame& f) { return f.t == held.front().t; }));
}

TEST_CASE("a rep of usual length makes a clip of about ten seconds") {
  const auto frames = framesOf(clipOf(made_up::tape())).size();
  CHECK(frames >= 200);
  CHECK(frames <= 300);
}

TEST_CASE("the line is shown while the picture is held and at no other time") {
  ClipScript script = clipOf(made_up::tape());
  script.line = "Here is the line.";
  CHECK(says(clipPage(script, only(script, Scene::freeze).front()), script.line));
  CHECK_FALSE(says(clipPage(script, only(script, Scene::play).front()), script.line));
}

TEST_CASE("two reps stand side by side at the same instant, with what differs named") {
  const Tape a = made_up::tape();
  Tape b = a;
  b.record.frames.resize(150);  // ends sooner: its last picture stays
  const ClipScript script = clipOf(a, "held", b, "lost", "The safety comes at 9 yd/s.");
  CHECK(says(clipPage(script, framesOf(script).front()), "The safety comes at 9 yd/s."));
  const DisplayList page = clipPage(script, only(script, Scene::freeze).front());
  CHECK(says(page, "held"));
  CHECK(says(page, "lost"));
  CHECK(says(page, "The safety comes at 9 yd/s."));
  int fields = 0;
  for (const Panel& panel : page.panels) fields += count<Disc>(panel, StyleId::ball);
  CHECK(fields == 2);
  CHECK(framesOf(script).size() >= framesOf(clipOf(b)).size());
}

TEST_CASE("two reps without a word on what differs say how each ended") {
  const ClipScript script = clipOf(made_up::tape(), "held", made_up::tape(), "lost", "");
  CHECK(script.line == "held: gain of 4.0 yd, tackled. lost: gain of 4.0 yd, tackled.");
}

TEST_CASE("the line of a rep's clip reads the lane its frozen picture shows") {
  const Tape tape = made_up::tape();
  const ClipScript script = clipOf(tape);
  const ClipFrame held = only(script, Scene::freeze).front();
  const double ball = frameAt(tape, held.t).ball.x;
  int read = 0;
  for (const Lane& lane : lanesAt(tape.setup, frameAt(tape, 2.4))) {
    if (ball < lane.left || ball > lane.right) continue;
    ++read;
    CHECK(script.line.find(" " + lane.gap + ", ") != std::string::npos);
    REQUIRE(script.sides[0].lane_x.has_value());
    CHECK(*script.sides[0].lane_x == doctest::Approx(lane.centre()));
  }
  CHECK(read <= 1);
  CHECK(script.line.rfind("T ", 0) == 0);
  Tape stopped = tape;
  stopped.record.line_tick = -1;
  CHECK(clipOf(stopped).line == "T never crosses the line.");
}

TEST_CASE("a runner who crosses the line at a slant is said to run through the lane he gets to") {
  Tape tape = made_up::tape();
  const double crossing = seconds(tape.record.line_tick);
  for (Frame& f : tape.record.frames)
    if (f.carrier != kNobody) f.men[static_cast<std::size_t>(f.carrier)].vel = {9.0, 3.0};
  const double ball = frameAt(tape, crossing).ball.x;
  const ClipScript script = clipOf(tape);
  REQUIRE(script.sides[0].lane_x.has_value());
  const auto lanes = lanesAt(tape, frameAt(tape, crossing));
  const Lane* straight = nearestLane(lanes, ball);
  const Lane* slanted = nearestLane(lanes, ball + 3.0 * (lanes.front().y - frameAt(tape, crossing).ball.y));
  REQUIRE(straight != slanted);
  CHECK(*script.sides[0].lane_x == doctest::Approx(slanted->centre()));
  CHECK(script.line.find(" " + slanted->gap + ", ") != std::string::npos);
}

TEST_CASE("the last picture is held with how it ended") {
  const ClipScript script = clipOf(made_up::tape());
  const auto ending = only(script, Scene::ending);
  REQUIRE_FALSE(ending.empty());
  CHECK(ending.front().t == doctest::Approx(4.0));
  CHECK(says(clipPage(script, ending.front()), "A gain of 4.0 yd, tackled."));
  const ClipScript both = clipOf(made_up::tape(), "held", made_up::tape(), "lost", "");
  CHECK(says(clipPage(both, only(both, Scene::ending).front()), "held: gain of 4.0 yd, tackled"));
}

TEST_CASE("hidden names stay hidden in every frame") {
  ClipScript script = clipOf(made_up::tape());
  script.names = false;
  CHECK_FALSE(says(clipPage(script, only(script, Scene::play)[40]), "NT"));
}

TEST_CASE("the ball never leaves the view") {
  Tape tape = made_up::tape();
  for (std::size_t i = 0; i < tape.record.frames.size(); ++i) {  // a long run to the sideline
    tape.record.frames[i].ball = {0.09 * static_cast<double>(i), -6.0 + 0.14 * static_cast<double>(i)};
  }
  const FieldView base{{-14.0, -8.0}, {14.0, 11.0}};
  for (double t = 0.0; t <= lengthOf(tape); t += 0.1) {
    const FieldView view = viewAt(tape, t, base);
    const Vec2 ball = frameAt(tape, t).ball;
    CHECK(ball.x > view.low.x);
    CHECK(ball.x < view.high.x);
    CHECK(ball.y > view.low.y);
    CHECK(ball.y < view.high.y);
  }
}

TEST_CASE("no word of a clip runs off its page") {
  const ClipScript script = clipOf(made_up::tape(), "safety at 5 yd/s", made_up::tape(), "safety at 9 yd/s",
                                   "The strong safety comes downhill at 9 yd/s instead of 5 yd/s.");
  for (const Scene scene : {Scene::title, Scene::play, Scene::freeze, Scene::caution}) {
    const DisplayList page = clipPage(script, only(script, scene).front());
    for (const Label& label : all<Label>(page.panels.front())) {
      if (label.wrap > 0.0) continue;
      const PageRect box = boxOf(page.panels.front(), label);
      CHECK(box.x >= 0.0);
      CHECK(box.right() <= page.width);
      CHECK(box.bottom() <= page.height);
    }
  }
}
