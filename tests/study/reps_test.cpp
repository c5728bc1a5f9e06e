#include <doctest/doctest.h>

#include "looks.hpp"
#include "study/reps.hpp"
#include "study/vary.hpp"
#include "study/versus.hpp"

using namespace gapsound;

namespace {

const std::vector<Setup>& pair() {
  static const std::vector<Setup> setups{looks::shipped("power-right-spill"),
                                         looks::shipped("counter-left-wing")};
  return setups;
}

std::vector<std::uint64_t> hashesOf(const std::vector<std::vector<Summary>>& rows) {
  std::vector<std::uint64_t> hashes;
  for (const auto& row : rows)
    for (const Summary& rep : row) hashes.push_back(rep.hash);
  return hashes;
}

}  // namespace

TEST_CASE("one, two and eight threads give the same reps in the same places") {
  const auto one = playAll(pair(), looks::model(), 11, 12, 1);
  const auto two = playAll(pair(), looks::model(), 11, 12, 2);
  const auto eight = playAll(pair(), looks::model(), 11, 12, 8);
  CHECK(hashesOf(one) == hashesOf(two));
  CHECK(hashesOf(one) == hashesOf(eight));
  for (std::size_t k = 0; k < one[1].size(); ++k) {
    CHECK(one[1][k].yards == eight[1][k].yards);
    CHECK(one[1][k].cross_x == eight[1][k].cross_x);
    CHECK(one[1][k].cutback_open == eight[1][k].cutback_open);
  }
  CHECK(one[0][3].hash == summarize(playTape(pair()[0], looks::model(), 14)).hash);
  CHECK(one[0][3].hash != one[0][4].hash);
}

TEST_CASE("a study that is stopped early keeps whole pairs, the same as in a full run") {
  const auto full = playAll(pair(), looks::model(), 1, 12, 2);
  const auto part = playAll(pair(), looks::model(), 1, 12, 2, [](double share) { return share < 0.4; });
  REQUIRE(part[0].size() == part[1].size());
  CHECK(part[0].size() < 12);
  REQUIRE(part[0].size() >= 4);
  for (std::size_t k = 0; k < part[0].size(); ++k) CHECK(part[1][k].hash == full[1][k].hash);
}

TEST_CASE("progress rises to the whole and is told by one thread at a time") {
  double last = 0.0;
  bool rising = true;
  (void)playAll(pair(), looks::model(), 1, 6, 4, [&](double share) {
    rising = rising && share > last;
    last = share;
    return true;
  });
  CHECK(rising);
  CHECK(last == doctest::Approx(1.0));
}

TEST_CASE("a fault inside a rep reaches the caller") {
  const auto stumble = [](double) -> bool { throw std::runtime_error("stumbled"); };
  CHECK_THROWS_WITH((void)playAll(pair(), looks::model(), 1, 8, 2, stumble), "stumbled");
}

TEST_CASE("a look against itself differs by nothing") {
  const Versus v = versus(pair()[0], pair()[0], looks::model(), 1, 20, 2);
  CHECK(v.n == 20);
  CHECK(v.yards.ci == Interval{0.0, 0.0});
  CHECK(v.yards.p_value == 1.0);
  CHECK(v.a.mean == v.b.mean);
}

TEST_CASE("a change of the safety leaves the first half second of everybody else as it was") {
  Setup changed = pair()[0];
  for (Man& man : changed.men)
    if (man.id == "SS") man.fit.downhill_yps = 3.0;
  const Tape a = playTape(pair()[0], looks::model(), 5);
  const Tape b = playTape(changed, looks::model(), 5);
  for (std::size_t k = 0; k < kMen; ++k)
    CHECK(a.record.frames[20].men[k].pos == b.record.frames[20].men[k].pos);
  CHECK(a.record.hash != b.record.hash);
}

TEST_CASE("a sweep of real reps is the same on any number of threads") {
  SweepPlan plan;
  plan.axes = {{"players.SS.downhill_yps", "the downhill speed of SS", "yd/s", {4.0, 8.0}}};
  for (const double speed : plan.axes[0].values) {
    plan.setups.push_back(pair()[0]);
    for (Man& man : plan.setups.back().men)
      if (man.id == "SS") man.fit.downhill_yps = speed;
  }
  plan.n = 12, plan.threads = 1, plan.about_safety = true;
  const SweepResult one = vary(plan, looks::model());
  plan.threads = 8;
  const SweepResult eight = vary(plan, looks::model());
  REQUIRE(one.cells.size() == 2);
  CHECK(one.cells[1].gains.n == 12);
  CHECK(one.cells[1].gains.mean == eight.cells[1].gains.mean);
  CHECK(one.sentence == eight.sentence);
}
