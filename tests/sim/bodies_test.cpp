#include <doctest/doctest.h>

#include <cmath>
#include <initializer_list>

#include "any_look.hpp"
#include "base/stream.hpp"
#include "base/tick.hpp"
#include "bench.hpp"

using namespace gapsound;
using namespace gapsound::bench;

namespace {

constexpr int kBack = 0, kBacker = 11;

PhysicsWorld::Torso torso(Vec2 pos, Vec2 face, double mass, bool attacks) {
  return {pos, face, mass, 0.33, 0.20, false, attacks};
}

// Everybody else stands out of the way.
std::array<PhysicsWorld::Torso, kMen> emptyField() {
  std::array<PhysicsWorld::Torso, kMen> men;
  for (int i = 0; i < kMen; ++i) men[at(i)] = torso({200.0 + 5.0 * i, 0.0}, {0.0, 1.0}, 100.0, isOffense(i));
  return men;
}

Vec2 momentum(const PhysicsWorld& world, const std::array<PhysicsWorld::Torso, kMen>& men) {
  Vec2 sum;
  for (int i = 0; i < kMen; ++i) sum += men[at(i)].mass_kg * world.vel(i);
  return sum;
}

double energy(const PhysicsWorld& world, const std::array<PhysicsWorld::Torso, kMen>& men) {
  double sum = 0.0;
  for (int i = 0; i < kMen; ++i) sum += 0.5 * men[at(i)].mass_kg * dot(world.vel(i), world.vel(i));
  return sum;
}

}  // namespace

TEST_CASE("a body nobody touches keeps its velocity") {
  PhysicsWorld world(emptyField());
  world.setVelocity(3, {1.5, -4.0});
  const Vec2 from = world.pos(3);
  for (int k = 0; k < 120; ++k) world.step();
  CHECK(length(world.vel(3) - Vec2{1.5, -4.0}) < 1e-4);
  CHECK(distance(world.pos(3), from + 2.0 * Vec2{1.5, -4.0}) < 1e-3);
}

TEST_CASE("a constant push follows a t^2 / 2") {
  auto men = emptyField();
  men[3].mass_kg = 137.0;
  PhysicsWorld world(men);
  const Vec2 from = world.pos(3);
  constexpr double acceleration = 3.0, t = 1.5;
  for (int k = 0; k < ticks(t); ++k) {
    world.push(3, {0.0, acceleration * 137.0});
    world.step();
  }
  CHECK(world.vel(3).y == doctest::Approx(acceleration * t).epsilon(1e-4));
  const double ahead = 0.5 * acceleration * t * kStep;  // speed before place: half a step
  CHECK(world.pos(3).y - from.y == doctest::Approx(0.5 * acceleration * t * t + ahead).epsilon(1e-4));
}

TEST_CASE("a drag force decays as an exponential") {
  auto men = emptyField();
  PhysicsWorld world(men);
  world.setVelocity(3, {0.0, 6.0});
  constexpr double rate = 2.0;
  for (int k = 0; k < 60; ++k) {
    world.push(3, (-rate * men[3].mass_kg) * world.vel(3));
    world.step();
  }
  CHECK(world.vel(3).y == doctest::Approx(6.0 * std::exp(-rate)).epsilon(0.04));  // explicit steps of 1/60 s
}

TEST_CASE("a man who turns shoves nobody: side by side at one speed, mate or opponent") {
  for (const int other : {4, kBacker}) {
    auto men = emptyField();
    men[3] = torso({0.0, 0.0}, {1.0, 0.0}, 100.0, true);
    men[at(other)] = torso({0.55, 0.1}, {0.0, 1.0}, 110.0, isOffense(other));
    PhysicsWorld world(men);
    const Vec2 run{-0.5, 6.0};
    for (const int man : {3, other}) world.setVelocity(man, run);
    for (int k = 0; k < 15; ++k) {
      world.turn(3, 1.5707963 / (15 * kStep));
      world.step();
    }
    CAPTURE(other);
    CHECK(world.face(3).y > 0.999);
    CHECK(distance(world.pos(3), world.pos(other)) > 0.56);  // his shoulders have made room for themselves
    CHECK(length(world.vel(3) - run) < 1e-3);
    CHECK(length(world.vel(other) - run) < 1e-3);
  }
}

TEST_CASE("a pile of collisions keeps its momentum and loses energy") {
  for (const std::uint64_t seed : {1, 2, 3}) {
    Stream luck(seed, 0, "pile");
    auto men = emptyField();
    for (int i = 0; i < kMen; ++i) {
      const double x = luck.unit();
      const double mass = 80.0 + 70.0 * luck.unit();
      men[at(i)] = torso({1.1 * (i % 5) + 0.2 * x, 1.1 * (i / 5)}, unit({x - 0.5, 1.0}), mass, isOffense(i));
    }
    PhysicsWorld world(men);
    for (int i = 0; i < kMen; ++i) {
      const double vx = luck.normal();
      world.setVelocity(i, {3.0 * vx, 3.0 * luck.normal()});
    }
    const Vec2 before = momentum(world, men);
    const double stored = energy(world, men);
    for (int k = 0; k < 90; ++k) world.step();
    CHECK(length(momentum(world, men) - before) < 0.5);  // of some 5000 kg yd/s, in single precision
    CHECK(energy(world, men) < 0.8 * stored);
  }
}

TEST_CASE("chests meet at twice the chest, shoulders at twice the shoulder") {
  const auto spacing = [](Vec2 way, Vec2 face) {
    auto men = emptyField();
    men[at(kBack)] = torso(-1.0 * way, face, 100.0, true);
    men[at(kBacker)] = torso(1.0 * way, -face, 100.0, false);
    PhysicsWorld world(men);
    for (int k = 0; k < 90; ++k) {
      world.push(kBack, 300.0 * way);
      world.push(kBacker, -300.0 * way);
      world.step();
    }
    return distance(world.pos(kBack), world.pos(kBacker));
  };
  const double corner = std::cos(0.39269908);  // an eight-cornered torso lies inside of its ellipse
  CHECK(spacing({0.0, 1.0}, {0.0, 1.0}) == doctest::Approx(2.0 * 0.20 * corner).epsilon(0.08));
  CHECK(spacing({1.0, 0.0}, {0.0, 1.0}) == doctest::Approx(2.0 * 0.33 * corner).epsilon(0.08));
}

TEST_CASE("the passer lets his own side through and nobody else's") {
  const auto slowed = [](bool mate) {
    auto men = emptyField();
    const int other = mate ? 1 : kBacker;
    men[at(kBack)] = torso({0.0, 0.0}, {0.0, 1.0}, 100.0, true);
    men[at(kBack)].passes_mates = true;
    men[at(other)] = torso({0.0, 2.0}, {0.0, -1.0}, 100.0, mate);
    PhysicsWorld world(men);
    world.setVelocity(other, {0.0, -3.0});
    for (int k = 0; k < 60; ++k) world.step();
    return world.vel(other).y > -2.5;
  };
  CHECK_FALSE(slowed(true));
  CHECK(slowed(false));
}

TEST_CASE(
    "men who hit at any speed and from any side are never deep in one another, and their centre keeps its "
    "way") {
  Stream luck(11, 0, "hits");
  for (int k = 0; k < 300; ++k) {
    const double angle = 6.283185307179586 * luck.unit(), speed = 10.0 * luck.unit(),
                 phase = 0.3 * luck.unit();
    const Vec2 way{std::cos(angle), std::sin(angle)};
    auto men = emptyField();
    men[kBack] = torso({}, {0.0, 1.0}, 100.0, true);
    men[kBacker] =
        torso((1.0 + phase) * way, unit({std::cos(5.0 * angle), std::sin(5.0 * angle)}), 130.0, false);
    PhysicsWorld world(men);
    world.setVelocity(kBack, speed * way);
    world.setVelocity(kBacker, -10.0 * way);
    const auto centre = [&] {
      return (1.0 / 230.0) * (100.0 * world.pos(kBack) + 130.0 * world.pos(kBacker));
    };
    const Vec2 from = centre();
    const Vec2 drift = (1.0 / 230.0) * ((100.0 * speed - 1300.0) * way);
    Setup setup;
    Frame frame;
    for (const int man : {kBack, kBacker}) {
      setup.men[at(man)].body.shoulder = 0.33, setup.men[at(man)].body.chest = 0.20;
    }
    for (int tick = 1; tick <= 40; ++tick) {
      world.step();
      for (const int man : {kBack, kBacker})
        frame.men[at(man)].pos = world.pos(man), frame.men[at(man)].face = world.face(man);
      CHECK(looks::overlapOf(setup, frame, kBack, kBacker) < 0.09);
      CHECK(distance(centre(), from + tick * kStep * drift) < 1e-3);
    }
  }
}
