#include <doctest/doctest.h>

#include <algorithm>
#include <boost/numeric/odeint.hpp>
#include <cmath>
#include <initializer_list>
#include <vector>

#include "athlete/splits.hpp"
#include "base/numbers.hpp"
#include "base/stream.hpp"
#include "drills.hpp"

using namespace gapsound;
using namespace gapsound::drills;

namespace {

// dv/dt = (V - v)/T and dx/dt = v by an integrator that knows nothing of the closed form.
double integratedDistance(double top, double tau, double t) {
  using State = std::vector<double>;
  State x{0.0, 0.0};
  const auto law = [=](const State& s, State& d, double) {
    d[0] = s[1];
    d[1] = (top - s[1]) / tau;
  };
  namespace ode = boost::numeric::odeint;
  ode::integrate_adaptive(ode::make_controlled<ode::runge_kutta_dopri5<State>>(1e-11, 1e-11), law, x, 0.0, t,
                          0.01);
  return x[0];
}

Body lineman() {
  Body body = back();
  body.mass_kg = 142.0;
  body.top_speed = 9.32;
  body.tau = 1.24;
  body.brake = model().loco_brake_line;
  body.lateral = model().loco_lateral_ol;
  return body;
}

Vec2 someVelocity(Stream& luck, double top) {
  const double angle = 6.2831853 * luck.unit();
  const double share = luck.unit();
  return top * share * fixedDirection(angle);
}

}  // namespace

TEST_CASE("the closed form of the sprint law is what an integrator finds") {
  for (const double top : {9.0, 11.0})
    for (const double tau : {0.9, 1.25})
      for (const double t : {0.3, 1.0, 2.5, 5.0})
        CHECK(distanceAt({top, tau}, t) == doctest::Approx(integratedDistance(top, tau, t)).epsilon(1e-7));
}

// Speed before place runs half a step ahead of the law; the push from rest is worth another half.
TEST_CASE("a straight sprint at the simulation's step is the sprint law to within a step and a half") {
  for (const Body& body : {back(), lineman()})
    for (const double yards : {5.0, 10.0, 20.0, 40.0}) {
      const double law = clockTime({body.top_speed, body.tau}, yards, 0.0);
      CHECK(std::abs(sprintTime(body, yards) - law) < 1.5 * kStep);
    }
}

TEST_CASE("the friction ellipse holds for every wish") {
  Stream luck(1, 1, "ellipse");
  double worst = 0.0;
  for (int i = 0; i < 20000; ++i) {
    const Body body = i % 2 == 0 ? back() : lineman();
    const Vec2 vel = someVelocity(luck, body.top_speed);
    const Vec2 want = someVelocity(luck, 1.5 * body.top_speed);
    const double speed = length(vel);
    if (speed < 1.0) continue;
    const Vec2 ahead = unit(vel);
    const Vec2 a = accelerationToward(body, model(), vel, ahead, want);
    const double along = dot(a, ahead);
    const double across = cross(ahead, a) / body.lateral;
    const double cap = along > 0.0 ? (body.top_speed - speed) / body.tau : body.brake;
    const double share = cap > 1e-3 ? along / cap : 0.0;
    worst = std::max(worst, share * share + across * across);
  }
  CHECK(worst < 1.0 + 1e-9);
  CHECK(worst > 0.99);  // and it is used to the full
}

TEST_CASE("nobody runs faster than he can, whichever way he faces") {
  Stream luck(2, 1, "speed");
  const Body body = back();
  Runner man{.body = body};
  double fastest = 0.0;
  for (int k = 0; k < 400; ++k) {
    const Vec2 want = someVelocity(luck, 3.0 * body.top_speed);
    const Vec2 face = someVelocity(luck, 1.0);
    for (int i = 0; i < 30; ++i) {
      man.step(want, face);
      fastest = std::max(fastest, length(man.vel));
    }
  }
  CHECK(fastest <= body.top_speed + 1e-9);
  CHECK(fastest > 0.7 * body.top_speed);
}

TEST_CASE("backpedal and crossover have their own top speeds") {
  const auto settled = [](Vec2 move, Vec2 face) {
    Runner man{.body = back(), .face = face};
    for (int i = 0; i < 600; ++i) man.step(man.body.top_speed * move, face);
    return length(man.vel) / man.body.top_speed;
  };
  CHECK(settled({0.0, 1.0}, {0.0, 1.0}) == doctest::Approx(1.0).epsilon(0.01));
  CHECK(settled({0.0, 1.0}, {0.0, -1.0}) == doctest::Approx(back().backpedal).epsilon(0.01));
  const double sideways = settled({1.0, 0.0}, {0.0, 1.0});
  CHECK(sideways >= model().loco_crossover);
  CHECK(sideways < 0.8);
}

TEST_CASE("the share of speed falls all the way from forwards to backwards, without a jump") {
  const Vec2 face{0.0, 1.0};
  double before = 1.0;
  double biggest = 0.0;
  for (double angle = 0.0; angle <= 3.1415; angle += 0.005) {
    const Vec2 d = fixedDirection(angle);
    const double share = speedShare(back(), model(), face, {d.y, d.x});
    CHECK(share <= before + 1e-12);
    biggest = std::max(biggest, before - share);
    before = share;
  }
  CHECK(biggest < 0.01);
  CHECK(before == doctest::Approx(back().backpedal).epsilon(1e-3));
}

TEST_CASE("left and right are the same game") {
  Stream luck(3, 1, "mirror");
  for (int i = 0; i < 2000; ++i) {
    const Vec2 vel = someVelocity(luck, 10.0);
    const Vec2 face = unit(someVelocity(luck, 1.0));
    const Vec2 want = someVelocity(luck, 12.0);
    const Vec2 a = accelerationToward(back(), model(), vel, face, want);
    const Vec2 b = accelerationToward(back(), model(), mirrored(vel), mirrored(face), mirrored(want));
    REQUIRE(length(mirrored(a) - b) < 1e-12);
  }
}

TEST_CASE("a man who stands and wants to stand does not move") {
  CHECK(accelerationToward(back(), model(), {}, {0.0, 1.0}, {}) == Vec2{});
}

TEST_CASE("a chest turns by the angle asked for and no further than its goal") {
  const Vec2 face{0.0, 1.0};
  const Vec2 goal = unit({-1.0, -0.2});
  const Vec2 turned = turnedToward(face, goal, 0.3);
  CHECK(fixedAngle({dot(face, turned), cross(face, turned)}) == doctest::Approx(0.3).epsilon(1e-6));
  CHECK(turnedToward(face, goal, 3.0) == goal);
  CHECK(length(turned) == doctest::Approx(1.0));
}
