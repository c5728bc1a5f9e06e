#include <doctest/doctest.h>

#include <cmath>
#include <initializer_list>
#include <vector>

#include "../sim/bench.hpp"
#include "played.hpp"

using namespace gapsound;
using played::at;
using played::quantile;

namespace {

constexpr double kMetresPerYard = 0.9144;
constexpr int kBack = 4, kBlocker = 1, kTackle = 12;

bool isOffensiveLine(const Man& man) {
  return man.group == Group::guard || man.group == Group::center || man.group == Group::off_tackle;
}

/// First touch of an offensive and a defensive lineman in a rep.
struct Touch {
  const Record* rep = nullptr;
  int tick = 0, blocker = 0, defender = 0;
};

std::vector<Touch> lineTouches() {
  std::vector<Touch> found;
  for (const played::Look& look : played::looks()) {
    if (look.setup.opening) continue;
    for (const Record& rep : look.reps)
      for (const Event& e : rep.events)
        if (e.what == Happening::engages && isOffensiveLine(look.setup.men[at(e.man)]) &&
            look.setup.men[at(e.other)].fit.level == 1)
          found.push_back({&rep, e.tick, e.man, e.other});
  }
  return found;
}

/// Two linemen of the same weight, face to face, hands on each other; the blocker `push` times as strong.
double driveSpeed(double push, double seconds_run) {
  bench::Bench bench(
      bench::withoutLuck(), 1,
      {{.man = kBlocker, .mass_kg = 140.0, .spot = {0.0, -0.42}},
       {.man = kTackle, .group = Group::tackle, .mass_kg = 140.0, .spot = {0.0, 0.42}, .face = {0.0, -1.0}}});
  bench.man(kBlocker).body.push = push;
  Intent& drives = bench.actors[at(kBlocker)].intent;
  drives.hands_on = kTackle;
  drives.want = drives.push = {0.0, 1.0};
  Intent& holds = bench.actors[at(kTackle)].intent;
  holds.want = holds.push = {0.0, -1.0};
  bench.run(seconds_run);
  return bench.world().vel(kTackle).y;
}

// Measured from league player tracking (300 pairs): 0.5-1.0 s, median 0.75.
void checkFirstTouch() {
  std::vector<double> first;
  for (const Touch& t : lineTouches()) first.push_back(seconds(t.tick));
  MESSAGE("median first touch ", quantile(first, 0.5), " s");
  CHECK(quantile(first, 0.5) >= 0.5);
  CHECK(quantile(first, 0.5) <= 1.0);
}

// Measured from league player tracking: engaged centers 0.67-0.94 yd apart (quartiles), 0.82 at the median.
void checkArmLength() {
  std::vector<double> apart;
  for (const Touch& t : lineTouches())
    for (int k = t.tick + 6; k < t.tick + 60 && k <= t.rep->end_tick; k += 6) {
      const Frame& f = t.rep->frames[at(k)];
      if (f.men[at(t.blocker)].engaged == t.defender)
        apart.push_back(distance(f.men[at(t.blocker)].pos, f.men[at(t.defender)].pos));
    }
  MESSAGE("median spacing ", quantile(apart, 0.5), " yd, quartiles ", quantile(apart, 0.25), " to ",
          quantile(apart, 0.75));
  CHECK(quantile(apart, 0.5) > 0.67);
  CHECK(quantile(apart, 0.5) < 0.94);
}

// Measured from league player tracking: 80 % of engaged pairs move less than 1.2 yd along the field in their
// next second.
void checkDrift() {
  std::vector<double> size;
  for (const Touch& t : lineTouches()) {
    if (t.tick + 60 > t.rep->end_tick) continue;
    const auto y = [&](int tick) { return t.rep->frames[at(tick)].men[at(t.defender)].pos.y; };
    size.push_back(std::abs(y(t.tick + 60) - y(t.tick)));
  }
  MESSAGE("80 in a hundred pairs drift less than ", quantile(size, 0.8), " yd in a second");
  CHECK(quantile(size, 0.8) < 1.2);
  CHECK(quantile(size, 0.8) > 0.3);
}

// League charting 2010-11: 9.4 and 9.9 % of tackles, assists and misses are misses.
void checkMisses() {
  int made = 0, missed = 0;
  for (const played::Look& look : played::looks())
    for (const Record& rep : look.reps)
      for (const Event& e : rep.events) {
        made += e.what == Happening::wraps;
        missed += e.what == Happening::misses_tackle;
      }
  const double share = static_cast<double>(missed) / (made + missed);
  MESSAGE("missed ", missed, " of ", made + missed, ", ", 100.0 * share, " %");
  CHECK(share > 0.08);
  CHECK(share < 0.12);
}

}  // namespace

// Scrum machine review, BMC Sports Sci Med Rehabil 2020: equal packs stand, about a tenth more drives.
TEST_CASE("check 16: two equal linemen push each other nowhere, a tenth more force drives steadily") {
  CHECK(std::abs(driveSpeed(1.0, 2.0)) < 0.3);
  const double early = driveSpeed(1.1, 1.5), late = driveSpeed(1.1, 2.5);
  MESSAGE("a tenth more force drives at ", late, " yd/s");
  CHECK(late > 0.05);
  CHECK(late < 1.0);
  CHECK(late == doctest::Approx(early).epsilon(0.1));
}

// Plastic collision, closed form: (m1 v1 + m2 v2) / (m1 + m2). Seminati, Cazzola, Preatoni et al. 2017: peak
// shoulder forces of 5.3 +- 1.0 kN; a pulse of 0.12 s is an estimate.
TEST_CASE("check 17: a backer and a back head-on go on at their common velocity") {
  std::array<PhysicsWorld::Torso, kMen> men;
  for (int i = 0; i < kMen; ++i)
    men[at(i)] = {{200.0 + 5.0 * i, 0.0}, {0.0, 1.0}, 100.0, 0.33, 0.20, false, isOffense(i)};
  men[at(kBack)] = {{0.0, -1.0}, {0.0, 1.0}, 96.0, 0.33, 0.20, false, true};
  men[at(kTackle)] = {{0.0, 1.0}, {0.0, -1.0}, 108.0, 0.33, 0.20, false, false};
  PhysicsWorld world(men);
  world.setVelocity(kBack, {0.0, 6.5});
  world.setVelocity(kTackle, {0.0, -5.0});
  for (int k = 0; k < 30; ++k) world.step();
  const double common = (96.0 * 6.5 - 108.0 * 5.0) / (96.0 + 108.0);
  CHECK(common == doctest::Approx(0.41).epsilon(0.01));
  CHECK(std::abs(world.vel(kBack).y - common) < 0.05);
  CHECK(std::abs(world.vel(kTackle).y - common) < 0.05);
  const double force_kn = 96.0 * (6.5 - world.vel(kBack).y) * kMetresPerYard / 0.12 / 1000.0;
  CHECK(std::abs(force_kn - 4.5) < 0.5);
  CHECK(force_kn < 6.0);
}

// Gabbett & Kelly 2007, IJSSC 2:467; league player tracking: odds of a make fall 0.3-0.4 per yd/s of closing
// speed.
TEST_CASE("check 18: the slower the collision, the fewer tackles are missed") {
  const Model& model = bench::shipped();
  const auto odds = [&](double closing) {
    const double share = freeTackleShare(model, closing, false, 0.0);
    return std::log(share / (1.0 - share));
  };
  for (double closing = 1.0; closing <= 12.0; closing += 1.0) CHECK(odds(closing) < odds(closing - 1.0));
}

// One case: the looks are played once for all of it.
TEST_CASE("checks 12 and 18 on shipped looks") {
  SUBCASE("check 12: the lines meet half a second to a second after the snap") { checkFirstTouch(); }
  SUBCASE("check 12: blocked pairs stand at arm's length") { checkArmLength(); }
  SUBCASE("check 12: an engaged pair stays about where it met") { checkDrift(); }
  SUBCASE("check 18: about a tenth of the tackles tried are missed") { checkMisses(); }
}
