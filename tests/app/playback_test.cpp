#include "app/playback.hpp"

#include <doctest/doctest.h>

#include <cmath>

using namespace gapsound;

namespace {

Playback ready(double length = 5.0) {
  Playback playback;
  playback.load(length);
  return playback;
}

}  // namespace

TEST_CASE("a tape plays at the speed chosen and stops at its end when it does not loop") {
  Playback p = ready(2.0);
  p.setLoop(false);
  p.advance(1.0);
  CHECK(p.time() == 0.0);
  p.play();
  p.advance(0.5);
  CHECK(p.time() == doctest::Approx(0.5));
  p.slower();
  p.advance(0.5);
  CHECK(p.time() == doctest::Approx(0.75));
  p.faster(), p.faster(), p.faster();
  CHECK(p.speed() == 2.0);
  for (int i = 0; i < 20; ++i) p.advance(0.1);
  CHECK(p.time() == doctest::Approx(2.0));
  CHECK_FALSE(p.playing());
  p.toggle();
  CHECK(p.time() == 0.0);
  CHECK(p.playing());
}

TEST_CASE("a looping tape rests at its end and starts over") {
  Playback p = ready(1.0);
  p.play();
  p.advance(1.0);
  p.advance(0.5);
  CHECK(p.atEnd());
  p.advance(1.0);
  CHECK(p.time() == 0.0);
  CHECK(p.playing());
}

TEST_CASE("frames and tenths are exact, pause, and end at the ends") {
  Playback p = ready();
  p.play();
  p.stepFrames(1);
  CHECK_FALSE(p.playing());
  CHECK(p.time() == doctest::Approx(1.0 / 60.0));
  p.stepTenths(3);
  CHECK(p.time() == doctest::Approx(1.0 / 60.0 + 0.3));
  p.stepFrames(-400);
  CHECK(p.time() == 0.0);
  p.end();
  CHECK(p.time() == 5.0);
  p.stepTenths(1);
  CHECK(p.time() == 5.0);
  p.home();
  CHECK(p.time() == 0.0);
}

TEST_CASE("a moment sought is the same number as the moment played to") {
  Playback played = ready();
  played.setLoop(false);
  played.play();
  for (int tick = 1; tick <= 300; ++tick) {
    played.advance(1.0 / 60.0);
    Playback sought = ready();
    sought.seek(tick / 60.0);
    CHECK(std::abs(sought.time() - played.time()) <= 1.0 / 60000.0);
  }
  Playback stepped = ready();
  for (int tick = 0; tick < 77; ++tick) stepped.stepFrames(1);
  Playback sought = ready();
  sought.seek(77 / 60.0);
  CHECK(sought.time() == stepped.time());
}

TEST_CASE("a new tape keeps the moment as near as it can") {
  Playback p = ready();
  p.seek(3.0);
  p.load(4.0);
  CHECK(p.time() == 3.0);
  p.load(2.0);
  CHECK(p.time() == 2.0);
}

TEST_CASE("it halts where it is told to, once") {
  Playback p = ready();
  p.stopAt(1.5);
  p.play();
  for (int i = 0; i < 10; ++i) p.advance(0.2);
  CHECK(p.time() == 1.5);
  CHECK_FALSE(p.playing());
  p.play();
  p.advance(0.2);
  CHECK(p.time() == doctest::Approx(1.7));
}
