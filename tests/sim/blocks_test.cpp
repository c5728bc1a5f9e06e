#include <doctest/doctest.h>

#include <cmath>
#include <functional>
#include <initializer_list>

#include "bench.hpp"

using namespace gapsound;
using namespace gapsound::bench;

namespace {

constexpr int kLeft = 1, kRight = 2, kTackle = 12;
constexpr int kSeeds = 200;

struct Line : Bench {
  using Bench::Bench;
  void drives(int blocker, double stand = 0.0) {
    Intent& intent = actors[at(blocker)].intent;
    intent.hands_on = kTackle;
    intent.want = intent.push = {0.0, 1.0};
    if (stand == 0.0) return;
    intent.drive = Drive::double_team;
    intent.stand = stand;
  }
  void holdsGround() {
    Intent& intent = actors[at(kTackle)].intent;
    intent.want = intent.push = {0.0, -1.0};
  }
};

// Two linemen of the same weight, face to face, hands on each other.
struct TwoEqual : Line {
  TwoEqual(const Model& model, std::uint64_t seed)
      : Line(model, seed,
             {{.man = kLeft, .mass_kg = 140.0, .spot = {0.0, -0.42}},
              {.man = kTackle,
               .group = Group::tackle,
               .mass_kg = 140.0,
               .spot = {0.0, 0.42},
               .face = {0.0, -1.0}}}) {
    drives(kLeft);
    holdsGround();
  }
};

// A combination block: two linemen a guard's split apart fire out at one tackle, who comes at them.
struct TwoOnOne : Line {
  TwoOnOne(const Model& model, std::uint64_t seed)
      : Line(model, seed,
             {{.man = kLeft, .mass_kg = 142.0, .spot = {-0.5, -0.9}},
              {.man = kRight, .mass_kg = 142.0, .spot = {0.5, -0.9}},
              {.man = kTackle,
               .group = Group::tackle,
               .mass_kg = 139.0,
               .spot = {0.0, 0.60},
               .face = {0.0, -1.0}}}) {
    drives(kLeft, -1.0);
    drives(kRight, 1.0);
    for (const int blocker : {kLeft, kRight}) actors[at(blocker)].intent.want = {0.0, 3.5};
    holdsGround();
  }
  void runUntilBothHaveHim() {
    for (int k = 0; k < ticks(2.0) && contact().blockersOn(kTackle) < 2; ++k) step();
    REQUIRE(contact().blockersOn(kTackle) == 2);
  }
};

Model neverParted(Model model) {
  model.whiff_share = model.shed_base = model.shed_near = 0.0;
  return model;
}

double meanOver(const std::function<double(std::uint64_t)>& one) {
  double sum = 0.0;
  for (std::uint64_t seed = 1; seed <= kSeeds; ++seed) sum += one(seed);
  return sum / kSeeds;
}

}  // namespace

// The same source, with the luck of the snap in it.
TEST_CASE("over many snaps two equal linemen drift nowhere on average") {
  const Model model = neverParted(shipped());
  const double drift = meanOver([&](std::uint64_t seed) {
    TwoEqual bench(model, seed);
    bench.run(0.3);
    const double from = bench.world().pos(kTackle).y;
    bench.run(1.0);
    return bench.world().pos(kTackle).y - from;
  });
  MESSAGE("mean drift ", drift, " yd/s");
  CHECK(std::abs(drift) < 0.3);
}

// Measured from league player tracking: an engaged pair moves 0.9 yd either way in its next second (sd).
TEST_CASE("but single snaps are won and lost") {
  const Model model = neverParted(shipped());
  const double square = meanOver([&](std::uint64_t seed) {
    TwoEqual bench(model, seed);
    for (const int i : {kLeft, kTackle}) {
      Stream power(seed, bench.man(i).stream, "strength");
      bench.actors[at(i)].strength = fixedExp(model.push_luck_man * power.normal());
    }
    bench.run(1.0);
    const double moved = bench.world().pos(kTackle).y - 0.42;
    return moved * moved;
  });
  MESSAGE("sd of a pair's drift in a second ", std::sqrt(square), " yd");
  CHECK(std::sqrt(square) > 0.3);
  CHECK(std::sqrt(square) < 1.2);
}

// Closed form: a push that falls with speed as a (1 - v/s) on one side, k times it on the other, both men
// losing d v to the ground, stands at v = a (k - 1) / (a (k + 1) / s + 2 d).
TEST_CASE("the steady drive is where push, counter-push and loss balance") {
  const Model model = withoutLuck();
  for (const double k : {0.85, 1.0, 1.1, 1.3}) {
    TwoEqual bench(model, 1);
    bench.man(kLeft).body.push = k;
    bench.run(3.0);
    const double balance = model.push_accel * (k - 1.0) /
                           (model.push_accel * (k + 1.0) / model.push_speed + 2.0 * model.clinch_damping);
    CHECK(std::abs(bench.world().vel(kTackle).y - balance) < 0.02);
  }
}

TEST_CASE("the stronger the man, the faster the drive") {
  double before = -9.0;
  for (const double push : {0.8, 0.9, 1.0, 1.1, 1.25}) {
    TwoEqual bench(withoutLuck(), 1);
    bench.man(kLeft).body.push = push;
    bench.run(1.5);
    const double speed = bench.world().vel(kTackle).y;
    CHECK(speed > before);
    before = speed;
  }
}

// Common practice, no source: a good double team moves its tackle a yard or two before one of them climbs.
TEST_CASE("two on one move a tackle a yard or two in a second") {
  const Model model = neverParted(shipped());
  const double moved = meanOver([&](std::uint64_t seed) {
    TwoOnOne bench(model, seed);
    bench.runUntilBothHaveHim();
    const double from = bench.world().pos(kTackle).y;
    bench.run(1.0);
    return bench.world().pos(kTackle).y - from;
  });
  MESSAGE("a double team moves its man ", moved, " yd in its first second");
  CHECK(moved > 1.0);
  CHECK(moved < 2.0);
}

TEST_CASE("both of a double team keep their hands on him") {
  TwoOnOne bench(withoutLuck(), 1);
  bench.runUntilBothHaveHim();
  bench.run(1.0);
  CHECK(bench.contact().blockersOn(kTackle) == 2);
  CHECK(std::abs(bench.world().pos(kTackle).x) < 0.3);
}

// Measured from league player tracking: engaged centres 0.67-0.94 yd apart.
TEST_CASE("a blocked pair stands at arm's length") {
  TwoEqual bench(withoutLuck(), 1);
  bench.run(1.0);
  const double apart = distance(bench.world().pos(kLeft), bench.world().pos(kTackle));
  CHECK(apart > 0.67);
  CHECK(apart < 0.94);
}

// Newton's third law: in a clinch without pushing, hands move nobody's common centre.
TEST_CASE("hands alone do not move a pair") {
  Model model = withoutLuck();
  model.push_accel = 0.0;
  model.clinch_damping = 0.0;
  TwoEqual bench(model, 1);
  bench.man(kLeft).body.lateral = 0.0;  // no steering with the feet
  bench.world().setVelocity(kTackle, {0.8, 0.5});
  bench.run(0.8);
  const Vec2 sum = bench.world().vel(kLeft) + bench.world().vel(kTackle);
  CHECK(length(sum - Vec2{0.8, 0.5}) < 0.02);
}

TEST_CASE("the helmet's side decides who has leverage") {
  const Vec2 up{0.0, 3.0};
  CHECK(leverageAtTouch({0.0, 0.0}, up, {0.0, 0.9}, {}) == doctest::Approx(0.0));
  CHECK(leverageAtTouch({0.0, 0.0}, up, {-0.2, 0.9}, {}) > 0.3);
  CHECK(leverageAtTouch({0.0, 0.0}, up, {0.2, 0.9}, {}) < -0.3);
  CHECK(leverageAtTouch({0.0, 0.0}, up, {-2.0, 0.9}, {}) == 1.0);
  CHECK(leverageAtTouch({0.0, 0.0}, {0.1, 0.0}, {-0.2, 0.9}, {}) == 0.0);
}
