#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <string>
#include <vector>

#include "base/tick.hpp"
#include "looks.hpp"

using namespace gapsound;

namespace {

constexpr std::uint64_t kReps = 40;

struct Played {
  Setup setup;
  std::vector<Record> reps;
};

// Every shipped look, played once for all cases of this file.
const std::vector<Played>& played() {
  static const std::vector<Played> all = [] {
    std::vector<Played> found;
    for (const std::string& name : looks::names()) {
      Played p{looks::setupOf(name), {}};
      for (std::uint64_t seed = 1; seed <= kReps; ++seed)
        p.reps.push_back(play(p.setup, looks::model(), seed));
      found.push_back(std::move(p));
    }
    return found;
  }();
  return all;
}

constexpr std::size_t at(int i) { return static_cast<std::size_t>(i); }

double quantile(std::vector<double> x, double share) {
  REQUIRE(!x.empty());
  std::sort(x.begin(), x.end());
  return x[static_cast<std::size_t>(share * static_cast<double>(x.size() - 1))];
}

bool isOffensiveLine(const Man& man) {
  return man.group == Group::guard || man.group == Group::center || man.group == Group::off_tackle;
}

// First touch of an offensive and a defensive lineman in a rep.
struct Touch {
  const Record* rep = nullptr;
  int tick = 0, blocker = 0, defender = 0;
};

std::vector<Touch> lineTouches() {
  std::vector<Touch> found;
  for (const Played& p : played())
    for (const Record& rep : p.reps)
      for (const Event& e : rep.events)
        if (e.what == Happening::engages && isOffensiveLine(p.setup.men[at(e.man)]) &&
            p.setup.men[at(e.other)].fit.level == 1)
          found.push_back({&rep, e.tick, e.man, e.other});
  return found;
}

int blockersOn(const Frame& f, int defender) {
  return static_cast<int>(std::count_if(f.men.begin(), f.men.begin() + kOffense,
                                        [&](const Pose& p) { return p.engaged == defender; }));
}

// First tick from which two men keep their hands on him for `held` ticks; -1 when that never happens.
int firstDoubled(const Record& rep, int defender, int held) {
  int since = 0;
  for (int k = 0; k < static_cast<int>(rep.frames.size()); ++k) {
    since = blockersOn(rep.frames[at(k)], defender) >= 2 ? since + 1 : 0;
    if (since > held) return k - held;
  }
  return -1;
}

int countOf(const Record& rep, Happening what) {
  return static_cast<int>(
      std::count_if(rep.events.begin(), rep.events.end(), [&](const Event& e) { return e.what == what; }));
}

}  // namespace

// Measured from league player tracking: first touch of the lines 0.5-1.0 s after the snap (quartiles).
TEST_CASE("the lines meet half a second to a second after the snap") {
  std::vector<double> first;
  for (const Touch& t : lineTouches()) first.push_back(seconds(t.tick));
  MESSAGE("median first touch ", quantile(first, 0.5), " s");
  CHECK(quantile(first, 0.5) >= 0.5);
  CHECK(quantile(first, 0.5) <= 1.0);
}

// Measured from league player tracking: engaged centres 0.67-0.94 yd apart (quartiles), 0.82 at the median.
TEST_CASE("blocked pairs stand at arm's length") {
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
TEST_CASE("an engaged pair stays about where it met") {
  std::vector<double> drift;
  for (const Touch& t : lineTouches()) {
    if (t.tick + 60 > t.rep->end_tick) continue;
    const auto y = [&](int tick, int man) { return t.rep->frames[at(tick)].men[at(man)].pos.y; };
    drift.push_back(y(t.tick + 60, t.defender) - y(t.tick, t.defender));
  }
  std::vector<double> size = drift;
  for (double& d : size) d = std::abs(d);
  MESSAGE("drift in a second: median ", quantile(drift, 0.5), " yd, p80 of its size ", quantile(size, 0.8));
  CHECK(quantile(size, 0.8) < 1.2);
  CHECK(quantile(size, 0.8) > 0.3);
}

// Common practice, no source: a double team that stays together moves its lineman one to two yards in a
// second.
TEST_CASE("the double teams of a play move their men") {
  constexpr int kHeld = 45;
  double moved = 0.0;
  int n = 0;
  for (const Played& p : played())
    for (const Record& rep : p.reps)
      for (int d = kOffense; d < kMen; ++d) {
        if (p.setup.men[at(d)].fit.level != 1) continue;
        const int from = firstDoubled(rep, d, kHeld);
        if (from < 0) continue;
        moved += rep.frames[at(from + kHeld)].men[at(d)].pos.y - rep.frames[at(from)].men[at(d)].pos.y;
        ++n;
      }
  REQUIRE(n > 30);
  const double speed = moved / n / seconds(kHeld);
  MESSAGE(n, " double teams kept for ", seconds(kHeld), " s move their man ", speed, " yd/s");
  CHECK(speed > 0.8);
  CHECK(speed < 2.0);
}

// Measured from league player tracking: no linebacker faster than 1.5 yd/s before 0.25 s.
TEST_CASE("backers stand until they have seen something") {
  double fastest = 0.0;
  for (const Played& p : played())
    for (const Record& rep : p.reps)
      for (int i = kOffense; i < kMen; ++i)
        if (p.setup.men[at(i)].fit.level == 2)
          fastest = std::max(fastest, length(rep.frames[at(ticks(0.25))].men[at(i)].vel));
  MESSAGE("fastest backer after 0.25 s ", fastest, " yd/s");
  CHECK(fastest < 1.5);
}

// League charting 2010-11: 9.4 and 9.9 % of tackles, assists and misses are misses.
TEST_CASE("about a tenth of the tackles tried are missed") {
  int made = 0, missed = 0;
  for (const Played& p : played())
    for (const Record& rep : p.reps) {
      made += countOf(rep, Happening::wraps);
      missed += countOf(rep, Happening::misses_tackle);
    }
  const double share = static_cast<double>(missed) / (made + missed);
  MESSAGE("missed share ", share);
  CHECK(share > 0.06);
  CHECK(share < 0.14);
}

// Nearer than half of the two chests one man would stand in the other (estimate): the world's contacts must
// hold.
TEST_CASE("nobody is faster than his body and nobody stands inside of another") {
  double excess = 0.0, closest = 9.0;
  for (const Played& p : played())
    for (const Record& rep : p.reps)
      for (std::size_t k = 0; k < rep.frames.size(); k += 5) {
        const Frame& f = rep.frames[k];
        for (std::size_t i = 0; i < kMen; ++i) {
          excess = std::max(excess, length(f.men[i].vel) / p.setup.men[i].body.top_speed);
          for (std::size_t j = i + 1; j < kMen; ++j)
            if (static_cast<int>(i) != p.setup.passer && static_cast<int>(j) != p.setup.passer)
              closest = std::min(closest, distance(f.men[i].pos, f.men[j].pos) /
                                              (p.setup.men[i].body.chest + p.setup.men[j].body.chest));
        }
      }
  MESSAGE("fastest at ", excess, " of his top speed, closest pair ", closest, " of their chests");
  CHECK(excess < 1.05);
  CHECK(closest > 0.5);
}

TEST_CASE("a rep's record tells one consistent story") {
  for (const Played& p : played())
    for (const Record& rep : p.reps) {
      REQUIRE(rep.frames.size() == at(rep.end_tick) + 1);
      CHECK(std::is_sorted(rep.events.begin(), rep.events.end(),
                           [](const Event& a, const Event& b) { return a.tick < b.tick; }));
      if (rep.line_tick >= 0) CHECK(rep.frames[at(rep.line_tick)].ball.y >= 0.0);
      if (rep.handoff_tick >= 0) CHECK(rep.frames[at(rep.handoff_tick + 1)].carrier == p.setup.carrier);
      double farthest = -99.0;
      for (std::size_t tick = at(std::max(rep.handoff_tick, 0)); tick < rep.frames.size(); ++tick)
        if (rep.frames[tick].carrier != kNobody) farthest = std::max(farthest, rep.frames[tick].ball.y);
      CHECK(rep.yards >= std::min(farthest, p.setup.to_goal) - 1e-9);
      CHECK(rep.yards <= farthest + looks::model().fall_forward_yd + 1e-9);
    }
}
