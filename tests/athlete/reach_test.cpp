#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <initializer_list>

#include "athlete/reach.hpp"
#include "base/numbers.hpp"
#include "base/stream.hpp"
#include "drills.hpp"

using namespace gapsound;
using namespace gapsound::drills;

namespace {

constexpr double kTop = 10.0, kTau = ReachSamples::kTau;

// The law a = (u - v)/T over a stretch of constant u, exactly, with the platform's own exponential.
void run(Vec2& pos, Vec2& vel, Vec2 u, double t) {
  const double kept = std::exp(-t / kTau);
  pos += t * u + (kTau * (1.0 - kept)) * (vel - u);
  vel = u + kept * (vel - u);
}

Vec2 controlFrom(Stream& luck) {
  const double angle = 6.2831853 * luck.unit();
  const double share = luck.chance(0.5) ? 1.0 : std::sqrt(luck.unit());
  return kTop * share * fixedDirection(angle);
}

Vec2 wander(Stream& luck, Vec2 vel, double t) {
  const int pieces = 1 + static_cast<int>(8.0 * luck.unit());
  Vec2 pos;
  for (int i = 0; i < pieces; ++i) run(pos, vel, controlFrom(luck), t / pieces);
  return pos;
}

double lastSample() { return reachSamples().t.back(); }

double bruteForceTime(Vec2 vel, Vec2 goal, double radius) {
  for (double t = 0.0; t < lastSample(); t += 0.001) {
    const Disc2 disc = reachAfter({}, vel, kTop, kTau, t);
    if (distance(goal, disc.centre) <= radius + disc.radius) return t;
  }
  return kNever;
}

struct Spread {
  double least = 99.0, most = -99.0, sum = 0.0;
  int n = 0;
  void add(double x) {
    least = std::min(least, x);
    most = std::max(most, x);
    sum += x;
    ++n;
  }
  [[nodiscard]] double mean() const { return sum / n; }
};

// How much farther than the disc's edge a man gets by full effort along `toward` for t seconds.
double beyondDisc(const Body& body, Vec2 vel, Vec2 toward, double t) {
  const Disc2 disc = reachAfter({}, vel, body.top_speed, body.tau, t);
  Runner man{.body = body, .vel = vel, .face = unit(vel, toward)};
  while (man.clock() < t - 1e-9) man.step(body.top_speed * toward, toward);
  return dot(man.pos - disc.centre, toward) - disc.radius;
}

}  // namespace

TEST_CASE("no bounded control ever leaves the reachable disc") {
  Stream luck(11, 1, "disc");
  double spare = 99.0;
  for (const double t : {0.2, 0.7, 1.4, 2.2})
    for (const Vec2 vel : {Vec2{}, Vec2{7.0, 0.0}, Vec2{-3.0, 6.0}}) {
      const Disc2 disc = reachAfter({}, vel, kTop, kTau, t);
      for (int i = 0; i < 3000; ++i)
        spare = std::min(spare, disc.radius - distance(wander(luck, vel, t), disc.centre));
    }
  CHECK(spare > -1e-9);
}

TEST_CASE("every point of the reachable disc is reached by one constant control") {
  Stream luck(12, 1, "disc");
  for (int i = 0; i < 3000; ++i) {
    const double t = 0.1 + 2.1 * luck.unit();
    Vec2 pos{3.0, -1.0};
    Vec2 vel = 0.9 * controlFrom(luck);
    const Disc2 disc = reachAfter(pos, vel, kTop, kTau, t);
    const Vec2 control = controlFrom(luck);
    run(pos, vel, control, t);
    REQUIRE(distance(pos, disc.centre + (disc.radius / kTop) * control) < 1e-9);
  }
}

TEST_CASE("straight ahead the body's caps cost nothing") {
  for (const double t : {0.5, 1.0, 2.0})
    CHECK(std::abs(beyondDisc(back(), {0.0, 3.0}, {0.0, 1.0}, t)) < 0.1);  // half a step of 60 Hz at 10 yd/s
}

TEST_CASE("the body's caps against the disc: how wrong 'can he be there by then' is") {
  constexpr int kDirections = 24;
  for (const double speed : {0.0, 4.0, 8.0})
    for (const double t : {0.4, 0.8, 1.4}) {
      Spread error;
      for (int k = 0; k < kDirections; ++k)
        error.add(beyondDisc(back(), {speed, 0.0}, fixedDirection(k * 6.283185307 / kDirections), t));
      MESSAGE("at ", speed, " yd/s, ", t, " s: real minus disc, mean ", error.mean(), ", ", error.least,
              " to ", error.most, " yd");
      CHECK(error.most < 0.2);                        // the disc promises hardly less than a man can
      CHECK(error.least > -0.36 * t * speed - 0.05);  // and too much where he has to turn back at speed
    }
}

TEST_CASE("time to reach a still goal is the brute-force first time") {
  Stream luck(13, 1, "time");
  double worst = 0.0;
  for (int i = 0; i < 400; ++i) {
    const Vec2 vel = 0.8 * controlFrom(luck);
    const Vec2 goal = 2.0 * controlFrom(luck);
    const double found = timeToReach({}, vel, kTop, goal, 0.5);
    const double t = bruteForceTime(vel, goal, 0.5);
    if (t == kNever)
      CHECK(found >= lastSample() - 0.01);
    else if (found < kNever)
      worst = std::max(worst, std::abs(found - t));
    else
      CHECK(t > lastSample() - 0.01);
  }
  CHECK(worst < 0.05);  // straight between samples a quarter of a second apart or less
}

TEST_CASE("a meeting is where both are at that time") {
  Stream luck(14, 1, "meet");
  int met = 0;
  for (int i = 0; i < 400; ++i) {
    const Vec2 vel = 0.5 * controlFrom(luck);
    const Vec2 mover = controlFrom(luck);
    const Vec2 mover_vel = 0.6 * controlFrom(luck);
    const Meeting m = firstMeeting({}, vel, kTop, mover, mover_vel, 0.9);
    if (m.t == kNever) continue;
    ++met;
    const Disc2 disc = reachAfter({}, vel, kTop, kTau, m.t);
    CHECK(distance(m.point, mover + m.t * mover_vel) < 1e-9);
    CHECK(distance(disc.centre, m.point) < disc.radius + 0.9 + 0.25);
  }
  CHECK(met > 200);
}

TEST_CASE("out of reach is never, at hand is now") {
  CHECK(timeToReach({}, {}, kTop, {0.0, 60.0}, 0.5) == kNever);
  CHECK(timeToReach({}, {}, kTop, {0.0, 0.4}, 0.5) == 0.0);
}

TEST_CASE("the shared samples are the formulas at one common time constant") {
  const ReachSamples& s = reachSamples();
  for (std::size_t k = 0; k < ReachSamples::kCount; ++k) {
    CHECK(s.carry[k] == carryOf(s.t[k], kTau));
    CHECK(s.reach[k] + s.carry[k] == doctest::Approx(s.t[k]));
  }
  CHECK(lastSample() >= 2.0);
  CHECK(lastSample() < kNever);
}
