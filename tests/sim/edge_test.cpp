// The end on the line: what he squeezes and what he stands against.
#include <doctest/doctest.h>

#include <algorithm>

#include "../scenario/looks.hpp"
#include "base/tick.hpp"
#include "looks.hpp"

using namespace gapsound;

namespace {

Setup spilled(const char* formation, const char* scheme, const char* front) {
  Scenario s = looks::scenario(formation, scheme, front);
  s.level = Level::pro;
  s.defense.mix = CallMix{};  // the same alignment on every snap
  return looks::resolved(s);
}

/// How far inside his place the end of the run's side is after `t` seconds, yd, mean of the seeds.
double inside(const Setup& setup, double t, int seeds) {
  const auto end =
      std::find_if(setup.men.begin(), setup.men.end(), [](const Man& m) { return m.id == "SE"; });
  const auto k = static_cast<std::size_t>(end - setup.men.begin());
  double sum = 0.0;
  for (int seed = 1; seed <= seeds; ++seed) {
    const Record r = play(setup, looks::model(), static_cast<std::uint64_t>(seed));
    const auto tick = static_cast<std::size_t>(ticks(t));
    sum += r.frames.front().men[k].pos.x - r.frames[tick].men[k].pos.x;
  }
  return sum / seeds;
}

}  // namespace

TEST_CASE("an end who spills squeezes a down block and holds his edge against a blocker who steps at him") {
  constexpr int kRepsEach = 40;
  for (const Setup& reached : {spilled("F13", "R04", "D04"), spilled("F01", "R06", "D01")})
    CHECK(inside(reached, 1.0, kRepsEach) < 0.7);
  for (const Setup& left_alone : {spilled("F01", "R01", "D01"), spilled("F03", "R02", "D03")})
    CHECK(inside(left_alone, 1.0, kRepsEach) > 0.8);
}
