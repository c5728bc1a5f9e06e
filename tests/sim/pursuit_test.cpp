#include <doctest/doctest.h>

#include <algorithm>
#include <vector>

#include "bench.hpp"
#include "minds/defender.hpp"
#include "minds/pursuit.hpp"

using namespace gapsound;
using namespace gapsound::bench;

namespace {

constexpr int kBack = 4, kSafety = 18;

/// One back who runs straight upfield and one safety with nobody in between.
struct Chase : Bench {
  Chase(std::uint64_t seed, double back_speed, Vec2 safety)
      : Bench(shipped(), seed,
              {{.man = kBack, .group = Group::back, .mass_kg = 96.0, .vel = {0.0, back_speed}},
               {.man = kSafety,
                .group = Group::safety,
                .mass_kg = 93.0,
                .spot = safety,
                .face = {0.0, -1.0}}}) {
    for (const int i : {kBack, kSafety}) {
      Body& body = man(i).body;
      body.top_speed = 0.97 * 10.88;  // combine means of backs and safeties, in pads
      body.tau = 1.14;
    }
    FitJob& job = man(kSafety).fit;
    job.level = 3;
    job.if_right = job.if_left = FitRole::alley;
    carries(kBack);
    for (int i = 0; i < kMen; ++i)
      lineup_.men[at(i)] = {i == kBack     ? Group::back
                            : i == kSafety ? Group::safety
                                           : Group::guard,
                            world().pos(i), 0.33};
    actors[at(kBack)].intent.want = {0.0, man(kBack).body.top_speed};
  }

  void playUntil(double yards) {
    while (now().frame.ball.y < yards && now().clock_s < 6.0 && !tackling().wrapped()) {
      seen_.push_back(now().frame);
      decide();
      step();
    }
  }
  bool touched() const { return tackling().firstContactTick() >= 0; }

 private:
  void decide() {
    const int back = std::max(now().tick - ticks(shipped().see_defense_s), 0);
    const Glimpse glimpse(seen_[at(back)], seconds(now().tick - back), kSafety, now().frame.men[at(kSafety)],
                          now().clock_s, lineup_);
    Actor& a = actors[at(kSafety)];
    const bool out = a.out_until_s > now().clock_s;
    a.intent =
        out ? Intent{} : decideDefender({glimpse, shipped(), a.man->body, a.man->fit, plan_, {}}, a.defender);
  }

  Lineup lineup_;
  TeamPlan plan_;
  std::vector<Frame> seen_;
};

}  // namespace

// Common practice, no source: with the whole field in front of him a safety does not lose a straight runner.
TEST_CASE("a safety twelve yards deep gets to a straight runner before he has twenty") {
  int reached = 0, tackled = 0, n = 0;
  for (std::uint64_t seed = 1; seed <= 100; ++seed)
    for (const double across : {-6.0, -3.0, 0.0, 2.0, 5.0}) {
      Chase chase(seed, 6.0, {across, 12.0});
      chase.playUntil(20.0);
      ++n;
      if (chase.touched()) ++reached;
      if (chase.tackling().wrapped()) ++tackled;
    }
  MESSAGE("reached ", 100.0 * reached / n, " %, tackled ", 100.0 * tackled / n, " %");
  CHECK(reached > 0.95 * n);
}

TEST_CASE("a safety behind a man of his own speed never catches him") {
  Chase chase(1, 10.0, {0.0, -3.0});
  chase.playUntil(30.0);
  CHECK_FALSE(chase.touched());
}

// League charting 2010-11: 9-10 % of tackles, assists and misses are misses; at usual closing speeds.
TEST_CASE("at the closing speeds of a game about a tenth of the free tackles fail") {
  double misses = 0.0;
  int n = 0;
  for (double closing = 1.3; closing <= 5.1; closing += 0.2) {  // interquartile range of first contacts
    misses += 1.0 - freeTackleShare(shipped(), closing, false, 0.0);
    ++n;
  }
  MESSAGE("miss share ", misses / n);
  CHECK(misses / n > 0.02);
  CHECK(misses / n < 0.12);
}

// Common practice, no source: a back who has stopped in a pile near the line is nobody's to wait for.
TEST_CASE("a back who stops near the line has declared, one on his way or still deep has not") {
  Frame seen;
  Lineup lineup;
  for (Lineup::Place& place : lineup.men) place.group = Group::guard;
  lineup.men[kBack].group = Group::back;
  seen.carrier = kBack;
  const auto declared = [&](double depth, Vec2 vel) {
    seen.ball = seen.men[kBack].pos = {0.0, -depth};
    seen.men[kBack].vel = vel;
    Pose backer;
    backer.pos = {-4.0, 2.0};
    return ballDeclares(Glimpse(seen, 0.2, kSafety, backer, 2.0, lineup), shipped(), 0.0);
  };
  CHECK(declared(1.0, {0.5, 0.0}));
  CHECK_FALSE(declared(1.0, {4.0, 1.0}));
  CHECK_FALSE(declared(4.0, {0.5, 0.0}));
}
