#include <doctest/doctest.h>

#include "base/tick.hpp"
#include "tape/tape.hpp"

using namespace gapsound;
using doctest::Approx;

namespace {

Tape twoTicks() {
  Tape tape;
  tape.record.frames.resize(2);
  Pose& before = tape.record.frames[0].men[3];
  Pose& after = tape.record.frames[1].men[3];
  before.pos = {1.0, 0.0}, after.pos = {2.0, 4.0};
  before.face = {0.0, 1.0}, after.face = {1.0, 0.0};
  after.engaged = 12;
  tape.record.frames[1].ball = {0.0, -2.0};
  return tape;
}

}  // namespace

TEST_CASE("between two ticks places are interpolated and facings stay unit arrows") {
  const Frame f = frameAt(twoTicks(), 0.25 * kStep);
  CHECK(f.men[3].pos.x == Approx(1.25));
  CHECK(f.men[3].pos.y == Approx(1.0));
  CHECK(length(f.men[3].face) == Approx(1.0));
  CHECK(f.ball.y == Approx(-0.5));
  CHECK(f.men[3].engaged == kNobody);
}

TEST_CASE("a tape is held at both ends") {
  const Tape tape = twoTicks();
  CHECK(frameAt(tape, -1.0).men[3].pos == Vec2{1.0, 0.0});
  CHECK(frameAt(tape, 9.0).men[3].pos == Vec2{2.0, 4.0});
  CHECK(frameAt(tape, 9.0).men[3].engaged == 12);
}

TEST_CASE("the length of a tape is the time of its last frame") {
  CHECK(lengthOf(twoTicks()) == Approx(kStep));
  CHECK(lengthOf(Tape{}) == 0.0);
  CHECK(frameAt(Tape{}, 1.0).carrier == kNobody);
}
