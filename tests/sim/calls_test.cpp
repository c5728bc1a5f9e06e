// What a call changes on the field, on the same seeds.
#include <doctest/doctest.h>

#include "looks.hpp"
#include "study/reps.hpp"

using namespace gapsound;
using namespace gapsound::looks;

namespace {

constexpr int kSnaps = 120;

/// Mean yards to the run's side of `who`, 2 s after the snap.
double meanAcross(const Setup& setup, const std::string& who) {
  std::size_t man = 0;
  while (setup.men[man].id != who) ++man;
  double sum = 0.0;
  for (std::uint64_t seed = 1; seed <= kSnaps; ++seed)
    sum += setup.direction * frameAt(playTape(setup, model(), seed), 2.0).men[man].pos.x;
  return sum / kSnaps;
}

}  // namespace

TEST_CASE("called over, the back-side backer goes farther across and the first one stays farther inside") {
  const Setup under = setupOf("power-right-spill");
  const Setup over = setupOf("power-right-spill", {"defense.call.overlap=over"});
  const auto idOf = [&](FitRole role) {
    for (const Man& man : under.men)
      if (!man.attacks && man.fit.if_right == role) return man.id;
    return std::string();
  };
  const std::string first = idOf(FitRole::first_backer), next = idOf(FitRole::fill_backer);
  REQUIRE_FALSE(next.empty());
  CHECK(meanAcross(over, next) > meanAcross(under, next) + 0.5);
  CHECK(meanAcross(over, first) < meanAcross(under, first) - 0.5);
}

TEST_CASE("a safety called to force stands wider than one in the alley") {
  const Setup alley = setupOf("power-right-spill");
  const Setup force = setupOf("power-right-spill", {"defense.call.force=safety"});
  CHECK(meanAcross(force, "SS") > meanAcross(alley, "SS") + 0.5);
}

TEST_CASE("called over where nobody overlaps, the first backer is over the top as ever") {
  const Setup fold = setupOf("power-right-spill", {"defense.call.bs_backer=fold"});
  const Setup both =
      setupOf("power-right-spill", {"defense.call.bs_backer=fold", "defense.call.overlap=over"});
  for (std::uint64_t seed = 1; seed <= 5; ++seed)
    CHECK(play(fold, model(), seed).hash == play(both, model(), seed).hash);
}
