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

double nearestOther(const Frame& f, std::size_t man) {
  double nearest = 99.0;
  for (std::size_t k = 0; k < f.men.size(); ++k)
    if (k != man) nearest = std::min(nearest, distance(f.men[k].pos, f.men[man].pos));
  return nearest;
}

// Common practice, no source: a double team that stays together moves its lineman one to two yards in a
// second.
void checkDoubleTeams() {
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

// His own legs carry nobody past his top speed; a hit may, by a hundredth or two: told apart by whether
// anybody is within two yards. Nearer than half of the two chests one man would stand in the other
// (estimate): the world's contacts must hold.
void checkSpeedAndRoom() {
  double excess = 0.0, excess_alone = 0.0, closest = 9.0;
  for (const Played& p : played())
    for (const Record& rep : p.reps)
      for (std::size_t k = 0; k < rep.frames.size(); k += 5) {
        const Frame& f = rep.frames[k];
        for (std::size_t i = 0; i < kMen; ++i) {
          const double share = length(f.men[i].vel) / p.setup.men[i].body.top_speed;
          excess = std::max(excess, share);
          if (nearestOther(f, i) > 2.0) excess_alone = std::max(excess_alone, share);
          for (std::size_t j = i + 1; j < kMen; ++j)
            if (static_cast<int>(i) != p.setup.passer && static_cast<int>(j) != p.setup.passer)
              closest = std::min(closest, distance(f.men[i].pos, f.men[j].pos) /
                                              (p.setup.men[i].body.chest + p.setup.men[j].body.chest));
        }
      }
  MESSAGE("fastest at ", excess, " of his top speed, alone at ", excess_alone, ", closest pair ", closest,
          " of their chests");
  CHECK(excess_alone < 1.02);
  CHECK(excess < 1.03);
  CHECK(closest > 0.5);
}

void checkRecord() {
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

}  // namespace

// One case: they are played once for all of it.
TEST_CASE("shipped looks in figures") {
  SUBCASE("the double teams of a play move their men") { checkDoubleTeams(); }
  SUBCASE("nobody is faster than his body and nobody stands inside of another") { checkSpeedAndRoom(); }
  SUBCASE("a rep's record tells one consistent story") { checkRecord(); }
}
