#include <doctest/doctest.h>

#include <cmath>
#include <string>
#include <vector>

#include "played.hpp"

// How runs look on league player tracking of 2017-19, against the same measures of our own reps.

using namespace gapsound;
using played::at;
using played::quantile;

namespace {

bool isOffensiveLine(const Man& man) {
  return man.group == Group::guard || man.group == Group::center || man.group == Group::off_tackle;
}

bool handsOff(const Setup& setup) { return setup.carrier != setup.passer && !setup.opening; }

/// Nobody in the way: the defense stands forty yards off.
Setup alone(Setup setup) {
  for (int k = kOffense; k < kMen; ++k) {
    Man& man = setup.men[at(k)];
    man.spot = {-20.0 + 4.0 * (k - kOffense), 40.0};
    man.fit.man_on = kNobody;
    man.fit.fires = false;
  }
  return setup;
}

struct Unblocked {
  std::vector<double> handoff, line, speed;
};

constexpr double kTag = 0.1;  // s, how well the source knows the moment of the snap

/// The runs of the shipped looks, without waiting for a puller, whose back stands where the source's do, with
/// nobody in the way.
Unblocked unblockedFrom(double least_depth, double most_depth) {
  Unblocked found;
  for (const played::Look& look : played::looks()) {
    const double depth = -look.setup.men[at(look.setup.carrier)].spot.y;
    if (!handsOff(look.setup) || look.setup.run.patient || depth < least_depth || depth > most_depth)
      continue;
    const Setup setup = alone(look.setup);
    for (std::uint64_t seed = 1; seed <= 3; ++seed) {
      const Record rep = play(setup, looks::model(), seed);
      if (rep.handoff_tick < 0 || rep.line_tick < 0 || rep.kept) continue;
      found.handoff.push_back(seconds(rep.handoff_tick));
      found.line.push_back(seconds(rep.line_tick));
      found.speed.push_back(length(rep.frames[at(rep.line_tick)].men[at(setup.carrier)].vel));
    }
  }
  return found;
}

void checkUnblocked(const Unblocked& runs, double soonest, double latest) {
  REQUIRE(runs.line.size() >= 15);
  MESSAGE(runs.line.size(), " runs: hand-off ", quantile(runs.handoff, 0.5), " s, line ",
          quantile(runs.line, 0.0), " / ", quantile(runs.line, 0.5), " / ", quantile(runs.line, 1.0),
          " s at ", quantile(runs.speed, 0.0), " / ", quantile(runs.speed, 0.5), " / ",
          quantile(runs.speed, 1.0), " yd/s");
  CHECK(quantile(runs.handoff, 0.5) > soonest);
  CHECK(quantile(runs.handoff, 0.5) < latest);
  CHECK(quantile(runs.line, 0.5) > 2.0 - kTag);
  CHECK(quantile(runs.line, 1.0) < 3.2 + kTag);
  CHECK(quantile(runs.speed, 0.0) > 5.3);
  CHECK(quantile(runs.speed, 0.5) < 8.0);
}

/// Speeds of the carriers of all given runs t seconds after the snap.
std::vector<double> carrierSpeeds(double t) {
  std::vector<double> speeds;
  for (const played::Look& look : played::looks()) {
    if (!handsOff(look.setup)) continue;
    for (const Record& rep : look.reps)
      if (rep.end_tick >= ticks(t))
        speeds.push_back(length(rep.frames[at(ticks(t))].men[at(look.setup.carrier)].vel));
  }
  return speeds;
}

// Measured from league player tracking: the median of runs with men in the way, 2.5 s.
void checkCrossing() {
  std::vector<double> line;
  for (const played::Look& look : played::looks())
    for (const Record& rep : look.reps)
      if (handsOff(look.setup) && rep.line_tick >= 0) line.push_back(seconds(rep.line_tick));
  MESSAGE("median crossing ", quantile(line, 0.5), " s");
  CHECK(std::abs(quantile(line, 0.5) - 2.5) <= 0.2 + kTag);
}

// Measured from league player tracking, 10th to 90th percentile.
void checkBackSpeed() {
  const double one = quantile(carrierSpeeds(1.0), 0.5), two = quantile(carrierSpeeds(2.0), 0.5);
  MESSAGE("median speed at 1 s ", one, ", at 2 s ", two, " yd/s");
  CHECK(one > 3.2);
  CHECK(one < 5.3);
  CHECK(two > 4.6);
  CHECK(two < 7.2);
}

// Measured from league player tracking: no backer faster than 1.5 yd/s before 0.25 s; half of them are by
// 0.5-0.8 s, give or take the source's 0.1 s; on runs they are 0.5-1.1 yd forward after a second (quartiles).
void checkFirstSteps() {
  double early = 0.0;
  std::vector<double> moved, forward;
  for (const played::Look& look : played::looks()) {
    if (look.setup.opening) continue;
    for (const Record& rep : look.reps)
      for (int k = kOffense; k < kMen; ++k) {
        const Man& man = look.setup.men[at(k)];
        if (man.fit.level != 2 || man.group != Group::backer) continue;
        early = std::max(early, length(rep.frames[at(ticks(0.25))].men[at(k)].vel));
        const int first = played::firstFaster(rep, k, 1.5);
        if (first >= 0) moved.push_back(seconds(first));
        forward.push_back(rep.frames[0].men[at(k)].pos.y - rep.frames[at(ticks(1.0))].men[at(k)].pos.y);
      }
  }
  MESSAGE("fastest after 0.25 s ", early, " yd/s, 1.5 yd/s after ", quantile(moved, 0.5),
          " s, forward after 1 s ", quantile(forward, 0.5), " yd");
  CHECK(early < 1.5);
  CHECK(quantile(moved, 0.5) > 0.5);
  CHECK(quantile(moved, 0.5) < 0.8 + kTag);
  CHECK(quantile(forward, 0.5) > 0.5);
  CHECK(quantile(forward, 0.5) < 1.1);
}

// Measured from league player tracking, twenty pulls of more than four yards: 4 yd sideways at 1.55 +- 0.18
// s, at most 6.7 yd/s, deepest 2.2 yd behind the line.
void checkPulls() {
  std::vector<double> four, fastest, deepest;
  for (const played::Look& look : played::looks())
    for (const Record& rep : look.reps)
      for (int k = 0; k < kOffense; ++k) {
        const Man& man = look.setup.men[at(k)];
        if (!isOffensiveLine(man) || man.block.pull == PullStyle::none || look.setup.opening) continue;
        double across = -1.0, fast = 0.0, deep = 0.0;
        for (std::size_t tick = 0; tick < rep.frames.size(); ++tick) {
          const Pose& pose = rep.frames[tick].men[at(k)];
          fast = std::max(fast, length(pose.vel));
          deep = std::max(deep, -pose.pos.y);
          if (std::abs(pose.pos.x - rep.frames[0].men[at(k)].pos.x) < 4.0) continue;
          across = seconds(static_cast<int>(tick));
          break;
        }
        if (across < 0.0) continue;
        four.push_back(across), fastest.push_back(fast), deepest.push_back(deep);
      }
  REQUIRE(four.size() > 50);
  MESSAGE(four.size(), " pulls: 4 yd across after ", quantile(four, 0.1), " / ", quantile(four, 0.5), " / ",
          quantile(four, 0.9), " s, up to ", quantile(fastest, 1.0), " yd/s, deepest ",
          quantile(deepest, 0.1), " / ", quantile(deepest, 0.5), " / ", quantile(deepest, 0.9), " yd");
  CHECK(std::abs(quantile(four, 0.5) - 1.55) < 0.25);
  CHECK(quantile(fastest, 1.0) < 6.7);
  CHECK(quantile(deepest, 0.5) > 1.7);
  CHECK(quantile(deepest, 0.5) < 3.1);
}

}  // namespace

// Measured from league player tracking: hand-off 1.1-1.4 s under center, 1.0-1.4 from the gun; line crossed
// at 2.0-3.2 s with 5.3-8.0 yd/s. With nobody in the way ours are at the early end.
TEST_CASE("check 10: nobody in the way, a back under center takes the ball and crosses on time") {
  checkUnblocked(unblockedFrom(6.5, 8.0), 1.1, 1.4);
}
TEST_CASE("check 10: the same from the gun") { checkUnblocked(unblockedFrom(4.5, 6.4), 0.95, 1.4); }

// One case: the looks are played once for all of it.
TEST_CASE("checks 10, 11, 13 and 15 on shipped looks") {
  SUBCASE("check 10: real runs cross the line two and a half seconds after the snap") { checkCrossing(); }
  SUBCASE("check 11: a back's speed one and two seconds after the snap") { checkBackSpeed(); }
  SUBCASE("check 13: backers stand until they have seen something, then step up") { checkFirstSteps(); }
  SUBCASE("check 15: a puller is four yards across after a second and a half") { checkPulls(); }
}
