#include <doctest/doctest.h>

#include <algorithm>
#include <set>

#include "../scenario/looks.hpp"
#include "scenario/check.hpp"
#include "sim/play.hpp"
#include "study/reps.hpp"
#include "study/trade_facts.hpp"

using namespace gapsound;

namespace {

std::size_t gapsIn(const char* formation, const char* scheme, const char* front) {
  return gapsOf(looks::resolved(formation, scheme, front)).size();
}

Summary gains(double yards) {
  Summary rep;
  rep.yards = yards;
  return rep;
}

}  // namespace

TEST_CASE("statement 17, exact: an attached tight end adds a gap, each of two adds one") {
  // Common practice, no source.
  CHECK(gapsIn("F13", "R04", "D04") == 6);
  CHECK(gapsIn("F06", "R04", "D03") == 7);
  CHECK(gapsIn("F09", "R04", "D01") == 8);
}

TEST_CASE("statement 17, exact: a lead back, a puller and a quarterback who runs make one more each") {
  CHECK(gapsIn("F01", "R10", "D01") == gapsIn("F06", "R04", "D03") + 1);
  CHECK(gapsIn("F13", "R01", "D04") == gapsIn("F13", "R04", "D04") + 1);
  CHECK(gapsIn("F13", "R16", "D04") == gapsIn("F13", "R01", "D04") + 1);
}

TEST_CASE("statement 30, exact: a trial turned over gains the same to the last bit") {
  for (const TradeFact& fact : tradeFacts()) {
    const Setup setup = looks::resolved(fact.trials.front().b);
    const Record one = play(setup, looks::model(), 9);
    const Record other = play(mirrored(setup), looks::model(), 9);
    CAPTURE(fact.number);
    CHECK(one.yards == other.yards);
    CHECK(one.hash == other.hash);
  }
}

TEST_CASE("29 statements are tried by playing, each once, and every miss has its explanation") {
  std::set<int> numbers;
  for (const TradeFact& fact : tradeFacts()) {
    CAPTURE(fact.number);
    CHECK(numbers.insert(fact.number).second);
    CHECK_FALSE(fact.trials.empty());
    for (const Trial& trial : fact.trials) {
      CHECK(trial.shown == trial.why.empty());
      CHECK_FALSE((trial.shown && trial.beyond));
    }
    CHECK_FALSE(fact.trials.front().beyond);
  }
  CHECK(numbers.size() == 29);
  CHECK(*numbers.rbegin() == 31);
  CHECK(numbers.count(17) + numbers.count(30) == 0);
}

TEST_CASE("a trial holds by its sign and its certainty together") {
  Trial trial;
  trial.what = Yardstick::stuffed;
  std::vector<Summary> a, b;
  for (int k = 0; k < 100; ++k) {
    a.push_back(gains(k % 2 == 0 ? 3.0 : -1.0));
    b.push_back(gains(k % 5 == 0 ? 3.0 : 0.2));
  }
  CHECK(judge(trial, 1, 1, a, b).holds);
  CHECK(judge(trial, 1, 1, a, b).paired.difference == doctest::Approx(0.3));
  trial.sign = -1;
  CHECK_FALSE(judge(trial, 1, 1, a, b).holds);
  CHECK_FALSE(judge(trial, 1, 1, a, a).holds);
}

TEST_CASE("a trial is judged alike, whatever was played of its sides for others") {
  const std::vector<TradeFact> facts = tradeFacts();
  const auto four =
      std::find_if(facts.begin(), facts.end(), [](const TradeFact& f) { return f.number == 4; });
  PlayedLooks shared(looks::library(), looks::model()), fresh(looks::library(), looks::model());
  const double gain = judged(four->trials[0], 40, shared).paired.difference;
  const double outside = judged(four->trials[1], 20, shared).paired.difference;
  CHECK(outside == judged(four->trials[1], 20, fresh).paired.difference);
  CHECK(gain == judged(four->trials[0], 40, shared).paired.difference);
}

TEST_CASE("a statement holds by all trials of its own looks, and not by what is tried beyond them") {
  TradeFact fact;
  fact.trials.resize(3);
  fact.trials[2].beyond = true;
  std::vector<TrialResult> results(3);
  CHECK(verdictOf(fact, results) == Verdict::misses);
  results[2].holds = true;
  CHECK(verdictOf(fact, results) == Verdict::misses);
  results[0].holds = true;
  CHECK(verdictOf(fact, results) == Verdict::in_part);
  results[1].holds = true;
  results[2].holds = false;
  CHECK(verdictOf(fact, results) == Verdict::holds);
}

// One case: what is played of a look for one statement serves the others.
TEST_CASE("long: every statement of the trade, by the trials that bear it out") {
  PlayedLooks played(looks::library(), looks::model());
  for (const TradeFact& fact : tradeFacts()) {
    for (const Trial& trial : fact.trials) {
      if (!trial.shown) continue;
      const TrialResult r = judged(trial, trial.n, played);
      CAPTURE(fact.number);
      CAPTURE(trial.words);
      CAPTURE(r.paired.difference);
      CAPTURE(r.paired.p_value);
      CHECK(r.holds);
    }
  }
}
