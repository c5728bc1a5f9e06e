#include <doctest/doctest.h>

#include <algorithm>
#include <string>
#include <vector>

#include "base/tick.hpp"
#include "looks.hpp"
#include "study/statistics.hpp"

using namespace gapsound;

namespace {

constexpr int kManReps = 200;

Setup powerAgainst(const char* shell) {
  return looks::setupOf("power-right-one-back", {std::string("defense.shell=") + shell,
                                                 "offense.formation=F13", "defense.front=D03"});
}

/// One figure of every rep for each defender who would have a receiver in man.
template <typename Figure>
std::vector<double> figures(const Setup& setup, const Setup& in_man, const Figure& figure) {
  std::vector<double> found;
  for (int seed = 1; seed <= kManReps; ++seed) {
    const Record rep = play(setup, looks::model(), static_cast<std::uint64_t>(seed));
    for (std::size_t k = kOffense; k < kMen; ++k) {
      const int receiver = in_man.men[k].fit.man_on;
      if (receiver == kNobody || in_man.men[static_cast<std::size_t>(receiver)].group != Group::receiver)
        continue;
      found.push_back(figure(rep, k, static_cast<std::size_t>(receiver)));
    }
  }
  return found;
}

}  // namespace

// Common practice, no source: in man the eyes are on the receiver, who carries his man off.
TEST_CASE("in man a defender finds the run later than with his eyes in") {
  const Setup man = powerAgainst("cover 1"), zone = powerAgainst("cover 3 sky");
  const auto knows = [](const Record& rep, std::size_t defender, std::size_t) {
    const auto saw = std::find_if(rep.events.begin(), rep.events.end(), [&](const Event& e) {
      return e.what == Happening::saw_key && e.man == static_cast<int>(defender);
    });
    return seconds(saw == rep.events.end() ? rep.end_tick : saw->tick);
  };
  const auto in_man = figures(man, man, knows), in_zone = figures(zone, man, knows);
  REQUIRE(in_man.size() == in_zone.size());
  REQUIRE(in_man.size() >= 3 * kManReps);
  const Paired difference = pairedDifference(in_zone, in_man, 0.999999);
  MESSAGE("a run is known after ", meanOf(in_man), " s in man, ", meanOf(in_zone), " s in zone");
  CHECK(difference.ci.low > 0.2);
}

TEST_CASE("a man in coverage comes to the ball once it is through") {
  const Setup man = powerAgainst("cover 1");
  const auto closes = [](const Record& rep, std::size_t defender, std::size_t) {
    const int from = rep.line_tick + ticks(0.5);
    if (rep.line_tick < 0 || from + ticks(0.4) > rep.end_tick) return 0.0;
    const auto gap = [&](int tick) {
      const Frame& f = rep.frames[static_cast<std::size_t>(tick)];
      return distance(f.men[defender].pos, f.ball);
    };
    return gap(from) - gap(from + ticks(0.4));
  };
  const auto closed = figures(man, man, closes);
  const std::vector<double> standing(closed.size(), 0.0);
  CHECK(pairedDifference(standing, closed, 0.999999).ci.low > 0.0);
}
