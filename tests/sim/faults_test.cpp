#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <functional>

#include "base/tick.hpp"
#include "football/faults.hpp"
#include "looks.hpp"
#include "scenario/settings.hpp"
#include "sim/play.hpp"

using namespace gapsound;
using namespace looks;

namespace {

constexpr int kReps = 24;
constexpr double kMoment = 1.9;  // s after the snap: fits are taken, the ball is near the line

int indexOf(const Setup& setup, const char* id) {
  for (int i = 0; i < kMen; ++i)
    if (setup.men[static_cast<std::size_t>(i)].id == id) return i;
  FAIL("no man " << id);
  return kNobody;
}

Setup withFault(Setup setup, int man, FaultKind kind, double amount) {
  setup.men[static_cast<std::size_t>(man)].faults = {{kind, amount}};
  return setup;
}

struct Mean {
  Vec2 pos;          // his place at the moment asked for
  double speed = 0;  // and how fast he is
  int logged = 0;    // reps whose log has his mistake
};

Mean meanOf(const Setup& setup, int man, FaultKind kind, double at_s) {
  Mean mean;
  for (int seed = 1; seed <= kReps; ++seed) {
    const Record record = play(setup, model(), static_cast<std::uint64_t>(seed));
    const auto tick = std::min<std::size_t>(static_cast<std::size_t>(ticks(at_s)), record.frames.size() - 1);
    const Pose& pose = record.frames[tick].men[static_cast<std::size_t>(man)];
    mean.pos = mean.pos + (1.0 / kReps) * pose.pos;
    mean.speed += length(pose.vel) / kReps;
    mean.logged += std::any_of(record.events.begin(), record.events.end(), [&](const Event& e) {
      return e.what == Happening::errs && e.man == man && e.code == static_cast<int>(kind);
    });
  }
  return mean;
}

struct Change {
  Vec2 pos;
  double speed = 0;
  int logged = 0;
};

/// What the mistake does to the man's place and speed; and it must stand in the log of nearly every rep.
Change changeBy(const Setup& sound, const char* id, FaultKind kind, double amount, double at_s = kMoment) {
  const int man = indexOf(sound, id);
  REQUIRE(gapsound::mayHave(sound.men[static_cast<std::size_t>(man)], factsOf(kind)));
  const Mean a = meanOf(sound, man, kind, at_s);
  const Mean b = meanOf(withFault(sound, man, kind, amount), man, kind, at_s);
  INFO(factsOf(kind).name << " on " << id << ": " << b.pos.x - a.pos.x << ", " << b.pos.y - a.pos.y << ", "
                          << b.speed - a.speed << " yd/s, logged " << b.logged);
  CHECK(a.logged == 0);
  CHECK(b.logged >= kReps / 2);
  return {b.pos - a.pos, b.speed - a.speed, b.logged};
}

/// Ticks of the first two seconds in which he and his partner have hands on the same man, mean of the reps.
double doubledTicks(const Setup& setup, int man) {
  const int partner = setup.men[static_cast<std::size_t>(man)].block.partner;
  double sum = 0.0;
  for (int seed = 1; seed <= kReps; ++seed) {
    const Record record = play(setup, model(), static_cast<std::uint64_t>(seed));
    const auto end = std::min<std::size_t>(static_cast<std::size_t>(ticks(2.0)), record.frames.size());
    for (std::size_t t = 0; t < end; ++t) {
      const auto& men = record.frames[t].men;
      const int his = men[static_cast<std::size_t>(man)].engaged;
      sum += his != kNobody && his == men[static_cast<std::size_t>(partner)].engaged;
    }
  }
  return sum / kReps;
}

Setup power() { return setupOf("power-right-spill"); }

bool mayHave(const Setup& setup, const char* id, FaultKind kind) {
  return gapsound::mayHave(setup.men[static_cast<std::size_t>(indexOf(setup, id))], factsOf(kind));
}

}  // namespace

TEST_CASE("mistakes of the end change his place the way their words say") {
  CHECK(changeBy(power(), "SE", FaultKind::kicked_out, 1.5, 1.2).pos.y < -0.2);
  CHECK(changeBy(power(), "SE", FaultKind::upfield, 2.0, 1.2).pos.y < -0.5);
  CHECK(changeBy(power(), "SE", FaultKind::washed, 3.0).pos.x < -0.3);
  CHECK(changeBy(power(), "SE", FaultKind::reached, 2.0).pos.x < -0.2);
  CHECK(changeBy(power(), "SE", FaultKind::crossed_inside, 3.0).pos.x < -0.3);
}

TEST_CASE("the same mistakes on a tackle inside") {
  CHECK(changeBy(power(), "DT", FaultKind::washed, 3.0).pos.x < -0.1);
  CHECK(changeBy(power(), "DT", FaultKind::reached, 2.0).pos.x < -0.1);
  CHECK(changeBy(power(), "DT", FaultKind::crossed_inside, 3.0).pos.x < -0.1);
  CHECK(changeBy(power(), "DT", FaultKind::upfield, 3.0).pos.y < -0.02);
}

TEST_CASE("mistakes of backers") {
  CHECK(changeBy(power(), "S", FaultKind::scrape_wide, 4.0).pos.x > 0.8);
  CHECK(changeBy(power(), "S", FaultKind::over_run, 4.0).pos.x > 0.8);
  CHECK(std::abs(changeBy(power(), "S", FaultKind::scrape_late, 1.0).pos.x) > 0.4);
  CHECK(changeBy(power(), "S", FaultKind::too_deep, 4.0).pos.y > 0.5);
  CHECK(changeBy(power(), "W", FaultKind::flowed, 1.0).pos.x > 0.3);
  CHECK(changeBy(power(), "W", FaultKind::no_fold, 1.0).pos.x < -0.2);
}

TEST_CASE("a backer who reads the back on counter goes the wrong way first") {
  const Setup counter = setupOf("counter-right-guard-and-h");
  CHECK(changeBy(counter, "W", FaultKind::wrong_key, 1.0, 1.4).pos.x < -0.1);
}

TEST_CASE("mistakes of safeties") {
  const Setup slow = setupOf("power-right-spill", {"players.SS.downhill_yps=4"});
  CHECK(changeBy(slow, "SS", FaultKind::too_fast, 4.0).pos.y < -0.1);
  CHECK(changeBy(power(), "SS", FaultKind::too_slow, 3.0, 1.8).speed < -0.3);
  CHECK(changeBy(power(), "SS", FaultKind::over_run, 4.0, 2.2).pos.x > 0.5);
  CHECK(changeBy(power(), "SS", FaultKind::too_deep, 4.0, 2.2).pos.y > 0.3);
  CHECK(changeBy(power(), "SS", FaultKind::late_read, 0.8, 2.0).pos.y > 0.5);
  CHECK(changeBy(power(), "FS", FaultKind::flowed, 1.0, 2.4).pos.x > 0.8);
  CHECK(changeBy(power(), "FS", FaultKind::over_run, 4.0, 2.4).pos.x > 0.1);
}

TEST_CASE("a force who loses the edge to the inside, a corner behind him who does") {
  const Setup cloud = setupOf("counter-right-guard-and-h");
  for (int i = kOffense; i < kMen; ++i) {
    const Man& man = cloud.men[static_cast<std::size_t>(i)];
    if (man.fit.level == 3 && man.fit.if_right == FitRole::corner && man.spot.x > 0.0)
      CHECK(changeBy(cloud, man.id.c_str(), FaultKind::inside_lost, 3.0, 2.2).pos.x < -0.2);
  }
}

TEST_CASE("mistakes of blockers") {
  CHECK(changeBy(power(), "LG", FaultKind::late_pull, 0.6, 1.2).pos.x < -0.5);
  Setup zone = setupOf("zone-right-odd");
  int tried = 0;
  for (int i = 0; i < kOffense; ++i) {
    const Man& man = zone.men[static_cast<std::size_t>(i)];
    if (!gapsound::mayHave(man, factsOf(FaultKind::early_climb))) continue;
    CHECK(changeBy(zone, man.id.c_str(), FaultKind::early_climb, 1.0).logged > 0);
    const double sound = doubledTicks(zone, i);
    CHECK(doubledTicks(withFault(zone, i, FaultKind::early_climb, 1.0), i) < 0.7 * sound);
    ++tried;
  }
  CHECK(tried > 0);
}

TEST_CASE("a mistake of a share happens on that share of the snaps") {
  const Setup sound = power();
  const int w = indexOf(sound, "W");
  int logged = 0;
  constexpr int kMany = 200;
  const Setup half = withFault(sound, w, FaultKind::no_fold, 0.5);
  for (int seed = 1; seed <= kMany; ++seed) {
    const Record record = play(half, model(), static_cast<std::uint64_t>(seed));
    logged += std::any_of(record.events.begin(), record.events.end(),
                          [&](const Event& e) { return e.what == Happening::errs; });
  }
  CHECK(logged > 60);   // 5 standard deviations of 200 throws at a half are 35; a read that comes too late
  CHECK(logged < 136);  // leaves some out
}

TEST_CASE("mistakes that make no sense for a man are refused") {
  const Setup setup = power();
  CHECK_FALSE(mayHave(setup, "C", FaultKind::late_pull));
  CHECK_FALSE(mayHave(setup, "LG", FaultKind::early_climb));
  CHECK_FALSE(mayHave(setup, "DT", FaultKind::kicked_out));
  CHECK_FALSE(mayHave(setup, "SS", FaultKind::no_fold));
  CHECK_FALSE(mayHave(setup, "S", FaultKind::inside_lost));
  CHECK_FALSE(mayHave(setup, "S", FaultKind::too_fast));
  CHECK_FALSE(mayHave(setup, "CR", FaultKind::flowed));
  CHECK_FALSE(mayHave(setup, "M", FaultKind::whiff));
  CHECK_FALSE(mayHave(setup, "LG", FaultKind::late_read));
}
