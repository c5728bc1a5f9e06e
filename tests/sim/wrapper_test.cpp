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

/// The defender he first has hands on.
int firstMet(const Record& record, int man) {
  for (const Frame& frame : record.frames)
    if (const int met = frame.men[static_cast<std::size_t>(man)].engaged; met != kNobody) return met;
  return kNobody;
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
