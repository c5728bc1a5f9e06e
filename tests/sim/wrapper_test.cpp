// The puller who leads through: whom he looks for.
#include <doctest/doctest.h>

#include <algorithm>

#include "looks.hpp"

using namespace gapsound;

namespace {

int manWith(const Setup& setup, BlockKind kind) {
  const auto man =
      std::find_if(setup.men.begin(), setup.men.end(), [kind](const Man& m) { return m.block.kind == kind; });
  REQUIRE(man != setup.men.end());
  return static_cast<int>(man - setup.men.begin());
}

int manNamed(const Setup& setup, const std::string& id) {
  const auto man =
      std::find_if(setup.men.begin(), setup.men.end(), [&id](const Man& m) { return m.id == id; });
  REQUIRE(man != setup.men.end());
  return static_cast<int>(man - setup.men.begin());
}

/// The defender he first has hands on, by the tick `until` (-1: of the whole rep).
int firstMet(const Record& record, int man, int until = -1) {
  const auto last = until < 0 ? record.frames.size() : static_cast<std::size_t>(until) + 1;
  for (std::size_t tick = 0; tick < last; ++tick)
    if (const int met = record.frames[tick].men[static_cast<std::size_t>(man)].engaged; met != kNobody)
      return met;
  return kNobody;
}

/// In how many of the reps he has hands on somebody before the ball is across, or at all where it never is.
int metInTime(const Setup& setup, int man, int reps) {
  int met = 0;
  for (int seed = 1; seed <= reps; ++seed) {
    const Record record = play(setup, looks::model(), static_cast<std::uint64_t>(seed));
    met += firstMet(record, man, record.line_tick) != kNobody;
  }
  return met;
}

}  // namespace

// Common practice, no source: the wrapper has his eyes on the backer; the end is the kicker's.
TEST_CASE("a wrapper meets a backer more often than the end whom a mate kicks out") {
  constexpr int kWrapReps = 200;
  const Setup setup = looks::setupOf("counter-right-guard-and-h");
  const int wrapper = manWith(setup, BlockKind::wrap);
  const int end = setup.men[static_cast<std::size_t>(manWith(setup, BlockKind::kick))].block.target;
  int at_end = 0, at_backer = 0;
  for (std::uint64_t seed = 1; seed <= kWrapReps; ++seed) {
    const int met = firstMet(play(setup, looks::model(), seed), wrapper);
    at_end += met == end;
    at_backer += met != kNobody && setup.men[static_cast<std::size_t>(met)].fit.level == 2;
  }
  MESSAGE("wrapper first meets the end ", at_end, ", a backer ", at_backer, " of ", kWrapReps);
  CHECK(at_backer > at_end + kWrapReps / 16);
}

// Common practice, no source: on a zone run the lead goes to his backer, not to a hole.
TEST_CASE("a back who leads on a zone run is on his backer before the ball is there") {
  constexpr int kLeadReps = 60;
  for (const char* look : {"zone-left-h-back", "zone-right-sniffer-man", "wide-zone-right-two-backs"}) {
    const Setup setup = looks::setupOf(look);
    const int met = metInTime(setup, manWith(setup, BlockKind::lead), kLeadReps);
    CAPTURE(look);
    CAPTURE(met);
    CHECK(met > kLeadReps * 6 / 10);
  }
}

// Common practice, no source: the guard beside the man left for the trap gets past him on the free side.
TEST_CASE("on trap the guard gets by the man who is trapped, and his mate traps him") {
  constexpr int kLeadReps = 60;
  const Setup setup = looks::setupOf("trap-right-sniffer");
  const int trapper = manWith(setup, BlockKind::kick);
  const int trapped = setup.men[static_cast<std::size_t>(trapper)].block.target;
  int on_trapped = 0;
  for (std::uint64_t seed = 1; seed <= kLeadReps; ++seed)
    on_trapped += firstMet(play(setup, looks::model(), seed), trapper) == trapped;
  CAPTURE(on_trapped);
  CHECK(on_trapped > kLeadReps * 7 / 10);
  const int guard = manNamed(setup, "RG");
  CHECK(metInTime(setup, guard, kLeadReps) > kLeadReps * 6 / 10);
}

// Common practice, no source: who holds the edge for a pulling tackle lets him by first.
TEST_CASE("the tackle who pulls on counter gets to somebody in most reps, though a back holds his edge") {
  constexpr int kLeadReps = 60;
  const Setup setup = looks::setupOf("counter-left-stack-box");
  const int wrapper = manWith(setup, BlockKind::wrap);
  int met = 0;
  for (std::uint64_t seed = 1; seed <= kLeadReps; ++seed)
    met += firstMet(play(setup, looks::model(), seed), wrapper) != kNobody;
  CAPTURE(met);
  CHECK(met > kLeadReps * 6 / 10);
}
