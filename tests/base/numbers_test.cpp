#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <initializer_list>
#include <numbers>

#include "base/numbers.hpp"
#include "base/tick.hpp"

// The reference here is the platform's own mathematics, which the simulation itself must not use.
using namespace gapsound;

TEST_CASE("fixedExp keeps its promised relative error over the whole range") {
  double worst = 0.0;
  for (double x = -700.0; x <= 700.0; x += 0.0937)
    worst = std::max(worst, std::abs(fixedExp(x) / std::exp(x) - 1.0));
  for (double x = -3.0; x <= 3.0; x += 0.000317)
    worst = std::max(worst, std::abs(fixedExp(x) / std::exp(x) - 1.0));
  CHECK(worst < 1e-12);
  CHECK(fixedExp(0.0) == 1.0);
}

TEST_CASE("fixedExp saturates outside of its range") {
  CHECK(fixedExp(-1e6) == 0.0);
  CHECK(fixedExp(1e6) == fixedExp(700.0));
}

TEST_CASE("fixedAngle agrees with atan2 all round and at any length") {
  double worst = 0.0;
  for (double a = -3.1415; a <= 3.1415; a += 0.00071)
    for (const double r : {1e-6, 0.7, 350.0})
      worst = std::max(worst, std::abs(fixedAngle({r * std::cos(a), r * std::sin(a)}) - a));
  CHECK(worst < 1e-6);
}

TEST_CASE("fixedAngle on the axes and at nothing") {
  constexpr double pi = std::numbers::pi;
  CHECK(fixedAngle({0.0, 0.0}) == 0.0);
  CHECK(fixedAngle({2.0, 0.0}) == 0.0);
  CHECK(fixedAngle({0.0, 2.0}) == doctest::Approx(pi / 2));
  CHECK(fixedAngle({0.0, -2.0}) == doctest::Approx(-pi / 2));
  CHECK(fixedAngle({-2.0, 0.0}) == doctest::Approx(pi));
}

TEST_CASE("fixedDirection is cosine and sine") {
  double worst = 0.0;
  for (double a = -40.0; a <= 40.0; a += 0.0113) {
    const Vec2 d = fixedDirection(a);
    worst = std::max({worst, std::abs(d.x - std::cos(a)), std::abs(d.y - std::sin(a))});
  }
  for (const double a : {-1e4, -3217.25, 9999.9}) {
    const Vec2 d = fixedDirection(a);
    worst = std::max({worst, std::abs(d.x - std::cos(a)), std::abs(d.y - std::sin(a))});
  }
  CHECK(worst < 1e-9);
}

TEST_CASE("a direction's angle is the angle it was made from") {
  for (double a = -3.1; a <= 3.1; a += 0.1)
    CHECK(fixedAngle(fixedDirection(a)) == doctest::Approx(a).epsilon(1e-6));
}

TEST_CASE("ramp goes either way and stays between 0 and 1") {
  CHECK(ramp(2.0, 1.0, 3.0) == 0.5);
  CHECK(ramp(0.0, 1.0, 3.0) == 0.0);
  CHECK(ramp(9.0, 1.0, 3.0) == 1.0);
  CHECK(ramp(2.5, 3.0, 1.0) == 0.25);
}

TEST_CASE("logistic is even about one half") {
  CHECK(logistic(0.0) == 0.5);
  for (const double x : {0.3, 2.0, 11.0}) CHECK(logistic(x) + logistic(-x) == doctest::Approx(1.0));
}

TEST_CASE("a tick is the nearest step of the clock") {
  CHECK(seconds(ticks(1.3)) == doctest::Approx(1.3));
  CHECK(ticks(0.009) == 1);
  CHECK(ticks(0.008) == 0);
  CHECK(ticks(-0.009) == -1);
}
