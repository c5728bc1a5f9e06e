// Read plays and quarterback runs: the quarterback decides from what he sees of one man, late, and runs.
#include <doctest/doctest.h>

#include <algorithm>

#include "../scenario/looks.hpp"
#include "base/tick.hpp"
#include "looks.hpp"
#include "scenario/resolve.hpp"

using namespace gapsound;

namespace {

Setup made(const char* formation, const char* scheme, const char* front) {
  Scenario s = looks::scenario(formation, scheme, front);
  s.level = Level::pro;
  return looks::resolved(s);
}

std::size_t at(int i) { return static_cast<std::size_t>(i); }

const Event* eventOf(const Record& record, Happening what) {
  const auto found = std::find_if(record.events.begin(), record.events.end(),
                                  [&](const Event& e) { return e.what == what; });
  return found == record.events.end() ? nullptr : &*found;
}

}  // namespace

TEST_CASE(
    "on a read play the quarterback gives on some snaps and keeps on others, and the ball is where it says") {
  const Setup setup = made("F13", "R14", "D06");
  int kept = 0, gave = 0;
  for (std::uint64_t seed = 1; seed <= 60; ++seed) {
    const Record r = play(setup, looks::model(), seed);
    kept += r.kept;
    gave += r.handoff_tick >= 0;
    CHECK(r.kept == (eventOf(r, Happening::keeps) != nullptr));
    CHECK_FALSE((r.kept && r.handoff_tick >= 0));
    const int last = r.frames.back().carrier;
    CHECK(last == (r.kept ? setup.passer : r.handoff_tick >= 0 ? setup.carrier : setup.passer));
    if (r.kept) CHECK(distance(r.frames.back().ball, r.frames.back().men[at(setup.passer)].pos) < 0.5);
  }
  CHECK(kept > 3);
  CHECK(gave > 3);
}

TEST_CASE("an end who runs upfield is not closing on the back: the ball is given") {
  Setup setup = made("F13", "R14", "D04");
  setup.men[at(setup.read.who)].faults.push_back({FaultKind::upfield, 3.0});
  for (std::uint64_t seed = 1; seed <= 20; ++seed) CHECK_FALSE(play(setup, looks::model(), seed).kept);
}

TEST_CASE("the quarterback's choice rests on nothing younger than his own delay") {
  const Setup setup = made("F13", "R14", "D06");
  for (std::uint64_t seed = 1; seed <= 20; ++seed) {
    const Record r = play(setup, looks::model(), seed);
    const Event* keep = eventOf(r, Happening::keeps);
    if (!keep) continue;
    CHECK(seconds(keep->tick) >= setup.run.mesh_s - looks::model().read_before_s);
    const Frame& seen = r.frames[at(keep->tick - ticks(looks::model().see_offense_s))];
    const double closed = seen.men[at(setup.read.who)].pos.x - r.frames[0].men[at(setup.read.who)].pos.x;
    CHECK(closed > 0.0);  // he saw the end come inside
  }
}

TEST_CASE("until the ball is pulled a read play and its keep look alike to the defense") {
  const Setup setup = made("F13", "R14", "D06");
  for (std::uint64_t seed = 1; seed <= 20; ++seed) {
    const Record r = play(setup, looks::model(), seed);
    const Event* keep = eventOf(r, Happening::keeps);
    if (!keep) continue;
    Setup gives = setup;
    gives.read = {};
    gives.men = setup.men;
    const Record g = play(gives, looks::model(), seed);
    const std::size_t until = at(keep->tick);
    REQUIRE(g.frames.size() > until);
    for (int d = kOffense; d < kMen; ++d) {
      CHECK(r.frames[until].men[at(d)].pos == g.frames[until].men[at(d)].pos);
    }
  }
}

TEST_CASE("a quarterback run: nobody is handed the ball and he crosses the line with it") {
  for (const char* scheme : {"R16", "R18"}) {
    const Setup setup = made("F01", scheme, "D01");
    int crossed = 0;
    for (std::uint64_t seed = 1; seed <= 20; ++seed) {
      const Record r = play(setup, looks::model(), seed);
      CHECK(r.handoff_tick < 0);
      CHECK(r.frames.back().carrier == setup.passer);
      crossed += r.line_tick >= 0;
    }
    CHECK(crossed >= 10);
  }
}

TEST_CASE("a toss: the ball leaves the hand, flies and is caught on time") {
  const Setup setup = made("F08", "R12", "D01");
  const Record r = play(setup, looks::model(), 1);
  const Event* toss = eventOf(r, Happening::tosses);
  REQUIRE(toss != nullptr);
  CHECK(r.handoff_tick > toss->tick);
  CHECK(seconds(r.handoff_tick) == doctest::Approx(setup.run.mesh_s).epsilon(0.05));
  const Frame& flight = r.frames[at((toss->tick + r.handoff_tick) / 2)];
  CHECK(flight.carrier == kNobody);
  CHECK(distance(flight.ball, flight.men[at(setup.passer)].pos) > 0.8);
}

TEST_CASE(
    "power read: an end who boxes is left outside the keeper, one who squeezes gets the sweep outside him") {
  int kept_on_box = 0, kept_on_squeeze = 0;
  for (const Structure structure : {Structure::box, Structure::spill}) {
    Setup setup = made("F06", "R15", "D03");
    for (Man& man : setup.men) man.fit.structure_right = man.fit.structure_left = structure;
    for (std::uint64_t seed = 1; seed <= 30; ++seed) {
      (structure == Structure::box ? kept_on_box : kept_on_squeeze) += play(setup, looks::model(), seed).kept;
    }
  }
  CHECK(kept_on_box > kept_on_squeeze + 5);
}
