#include "teach/week_summary.hpp"

#include <doctest/doctest.h>

#include "pages.hpp"

using namespace gapsound;
using namespace gapsound::pages;

namespace {

std::vector<Summary> gains(std::vector<double> yards) {
  std::vector<Summary> reps;
  for (int round = 0; round < 10; ++round)
    for (const double gain : yards) {
      reps.emplace_back();
      reps.back().yards = gain + 0.01 * round;
    }
  return reps;
}

Plan plan() {
  Plan made;
  made.title = "Week";
  made.runs.resize(2);
  made.runs[0].name = "Power", made.runs[0].share = 0.2;
  made.runs[1].name = "Counter", made.runs[1].share = 0.8, made.runs[1].thin = true, made.runs[1].seen = 4;
  made.calls.resize(2);
  made.calls[0].name = "Over", made.calls[1].name = "Bear";
  return made;
}

// Power: Bear saves 3; Counter: Bear saves 1, but four times as often.
PairReps reps() { return {{gains({5, 6, 7}), gains({2, 3, 4})}, {gains({4, 5, 6}), gains({3, 4, 5})}}; }

}  // namespace

TEST_CASE("what to change first is what saves most a week, and its figures are the reps'") {
  const auto changes = changesOf(plan(), reps());
  REQUIRE(changes.size() == 2);
  CHECK(changes[0].run == 1);
  CHECK(changes[0].saves == doctest::Approx(1.0));
  CHECK(changes[1].saves == doctest::Approx(3.0));
  const auto advice = adviceOf(plan(), reps());
  CHECK(has(advice[0], "Against Counter, 80 % of their runs: play Bear in place of Over"));
  CHECK(has(advice[0], "4.0 yd in place of 5.0, 1.0 less"));
}

TEST_CASE("a change that may save nothing is not advised") {
  PairReps noisy{{gains({5, 6, 7}), gains({7, 6, 5})}, {gains({4, 5, 6}), gains({6, 5, 4})}};
  CHECK(changesOf(plan(), noisy).empty());
  CHECK(has(adviceOf(plan(), noisy)[0], "No other call"));
}

TEST_CASE("the most dangerous pair is the one that hurts most over a week") {
  const auto dangers = dangersOf(plan(), reps());
  REQUIRE(dangers.size() == 4);
  CHECK(dangers[0].run == 1);
  CHECK(dangers[0].call == 0);
  for (std::size_t i = 1; i < dangers.size(); ++i)
    CHECK(dangers[i - 1].mean * dangers[i - 1].weight >= dangers[i].mean * dangers[i].weight);
}

TEST_CASE("the summary is one page with the thin data named") {
  const LaidPage page = weekSummaryPage(plan(), reps(), {"Power against Bear: D-."}, Paper::letter);
  checkLaidOut(page);
  const std::string words = wordsOf(page.list);
  for (const char* part :
       {"What to change first", "Thin data: Counter was charted 4 times", "D-", "No pass threat", "medical"})
    CHECK(has(words, part));
}
