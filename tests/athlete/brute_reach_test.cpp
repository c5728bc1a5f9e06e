#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <initializer_list>

#include "athlete/reach.hpp"
#include "base/numbers.hpp"
#include "base/stream.hpp"
#include "drills.hpp"

// The reachable disc against a hundred thousand controls played out.

using namespace gapsound;
using namespace gapsound::drills;

namespace {

constexpr int kControls = 100000;
constexpr std::size_t kSectors = 24;
constexpr double kTurn = 6.283185307179586;

Vec2 sector(std::size_t k) { return fixedDirection(kTurn * static_cast<double>(k) / kSectors); }

/// How far places reach from a centre, direction by direction.
class Support {
 public:
  explicit Support(Vec2 centre) : centre_(centre) { farthest_.fill(-99.0); }
  void add(Vec2 place) {
    const Vec2 off = place - centre_;
    beyond_ = std::max(beyond_, length(off));
    for (std::size_t k = 0; k < kSectors; ++k) farthest_[k] = std::max(farthest_[k], dot(off, sector(k)));
  }
  [[nodiscard]] double farthest(std::size_t k) const { return farthest_[k]; }
  [[nodiscard]] double beyond() const { return beyond_; }

 private:
  Vec2 centre_;
  std::array<double, kSectors> farthest_{};
  double beyond_ = 0.0;
};

/// Up to four stretches of one wish each, most of them at full effort: the edge is reached by such.
struct Control {
  std::array<Vec2, 4> wish{};
  int stretches = 1;
  [[nodiscard]] Vec2 at(double share) const {
    return wish[static_cast<std::size_t>(std::min(static_cast<int>(share * stretches), stretches - 1))];
  }
};

Control drawn(Stream& luck, double top_speed) {
  Control control;
  control.stretches = 1 + static_cast<int>(4.0 * luck.unit());
  for (Vec2& wish : control.wish) {
    const double angle = kTurn * luck.unit();
    const double effort = luck.chance(0.8) ? 1.0 : luck.unit();
    wish = top_speed * effort * fixedDirection(angle);
  }
  return control;
}

/// The law a = (u - v)/T alone, exactly, stretch by stretch.
Vec2 endOfLaw(const Control& control, Vec2 vel, double tau, double t) {
  const double each = t / control.stretches;
  const double kept = std::exp(-each / tau);
  Vec2 pos;
  for (int k = 0; k < control.stretches; ++k) {
    const Vec2 u = control.wish[static_cast<std::size_t>(k)];
    pos += each * u + (tau * (1.0 - kept)) * (vel - u);
    vel = u + kept * (vel - u);
  }
  return pos;
}

/// The same wishes through the body's caps, at the simulation's own step.
Vec2 endOfBody(const Control& control, const Body& body, Vec2 vel, double t) {
  Runner man{.body = body, .vel = vel, .face = unit(vel, {0.0, 1.0})};
  while (man.clock() < t - 1e-9) man.step(control.at(man.clock() / t));
  return man.pos;
}

}  // namespace

TEST_CASE("a hundred thousand controls fill the disc exactly when only the sprint law binds") {
  constexpr double kTop = 10.9, kTau = 1.15;
  Stream luck(31, 1, "law");
  for (const double t : {0.3, 0.8, 1.4, 2.2})
    for (const Vec2 vel : {Vec2{}, Vec2{8.0, 0.0}}) {
      const Disc2 disc = reachAfter({}, vel, kTop, kTau, t);
      Support reached(disc.centre);
      for (int k = 0; k < kControls / 8; ++k) reached.add(endOfLaw(drawn(luck, kTop), vel, kTau, t));
      CHECK(reached.beyond() <= disc.radius + 1e-9);
      for (std::size_t k = 0; k < kSectors; ++k) CHECK(reached.farthest(k) > 0.999 * disc.radius);
    }
}

TEST_CASE("with the body's caps the disc is off by a known little, most where he would have to turn back") {
  constexpr double kHorizon = 0.8;
  const Body body = back();
  Stream luck(32, 1, "caps");
  for (const double speed : {0.0, 3.0, 6.0, 9.0}) {
    const Vec2 vel{speed, 0.0};
    const Disc2 disc = reachAfter({}, vel, body.top_speed, body.tau, kHorizon);
    Support reached(disc.centre);
    for (int k = 0; k < kControls / 4; ++k)
      reached.add(endOfBody(drawn(luck, body.top_speed), body, vel, kHorizon));
    double least = 99.0, sum = 0.0;
    for (std::size_t k = 0; k < kSectors; ++k) {
      const double error = reached.farthest(k) - disc.radius;
      least = std::min(least, error);
      sum += error / kSectors;
    }
    MESSAGE("25000 controls from ", speed, " yd/s over ", kHorizon, " s, disc of radius ", disc.radius,
            " yd: reached minus disc, mean ", sum, ", worst ", least, ", farthest beyond ",
            reached.beyond() - disc.radius, " yd");
    CHECK(reached.beyond() < disc.radius + 0.15);  // a step and a half of the world's own rounding
    CHECK(sum > -0.12 - 0.08 * speed);
    CHECK(least > -0.45 - 0.19 * speed);  // he has to turn round first, at any speed
  }
}
