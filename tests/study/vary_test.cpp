#include <doctest/doctest.h>

#include <cmath>

#include "base/stream.hpp"
#include "study/vary.hpp"

using namespace gapsound;

namespace {

SweepPlan planFor(std::vector<double> values) {
  SweepPlan plan;
  plan.axes = {{"players.SS.downhill_yps", "the downhill speed of SS", "yd/s", std::move(values)}};
  return plan;
}

/// Reps whose mean gain and share of open cutbacks are as given for each cell, with noise in common and of
/// their own.
Rows repsWith(const std::vector<double>& means, const std::vector<double>& windows, int n,
              std::uint64_t seed) {
  Rows rows(means.size(), std::vector<Outcome>(static_cast<std::size_t>(n)));
  for (std::size_t rep = 0; rep < static_cast<std::size_t>(n); ++rep) {
    Stream stream(seed + rep, 0, "rep");
    const double common = 3.0 * stream.normal();
    for (std::size_t cell = 0; cell < means.size(); ++cell) {
      rows[cell][rep].yards = means[cell] + common + stream.normal();
      rows[cell][rep].cutback_open = stream.chance(windows[cell]);
    }
  }
  return rows;
}

const std::vector<double> kFlat(5, 0.2);

/// Judging reps first, as a plan of one setting plays them.
Rows joined(Rows judging, const Rows& choosing) {
  for (std::size_t k = 0; k < judging.size(); ++k)
    judging[k].insert(judging[k].end(), choosing[k].begin(), choosing[k].end());
  return judging;
}

}  // namespace

TEST_CASE("the break point is the first value past the best one that costs half a yard") {
  const std::vector<double> means{6.0, 4.6, 4.0, 4.1, 5.2};
  const auto plan = planFor({3, 5, 7, 9, 11});
  const auto r = sweepOf(plan, joined(repsWith(means, kFlat, 1500, 9001), repsWith(means, kFlat, 1500, 1)));
  CHECK(r.best == 2);
  REQUIRE(r.break_point);
  CHECK(r.break_point->value == 11.0);
  CHECK(r.break_point->ci.low <= 11.0);
  CHECK(r.break_point->ci.high >= 11.0);
  CHECK(r.break_point->found > 0.95);
  CHECK(r.sentence.find("9 yd/s") != std::string::npos);
  CHECK(r.cells[r.best].past_best.p_value == 1.0);
}

TEST_CASE("a cutback that stands open ten times more in a hundred breaks it too") {
  const std::vector<double> means{4.0, 4.05, 4.1, 4.15, 4.2}, windows{0.2, 0.2, 0.36, 0.5, 0.6};
  const auto r = sweepOf(planFor({3, 5, 7, 9, 11}),
                         joined(repsWith(means, windows, 1500, 9001), repsWith(means, windows, 1500, 1)));
  CHECK(r.best == 0);
  REQUIRE(r.break_point);
  CHECK(r.break_point->value == 7.0);
  CHECK(r.sentence.find("cutback") != std::string::npos);
}

TEST_CASE("what costs before the best value is no break point") {
  const std::vector<double> means{7.0, 6.0, 5.0, 4.2, 4.0};
  const auto r = sweepOf(planFor({3, 5, 7, 9, 11}),
                         joined(repsWith(means, kFlat, 1500, 9001), repsWith(means, kFlat, 1500, 1)));
  CHECK(r.best == 4);
  CHECK_FALSE(r.break_point);
  CHECK(r.sentence.find("no break point") != std::string::npos);
}

TEST_CASE("where no value is told from the best the sentence names none") {
  const std::vector<double> means(5, 4.0);
  const auto r = sweepOf(planFor({3, 5, 7, 9, 11}),
                         joined(repsWith(means, kFlat, 1500, 9001), repsWith(means, kFlat, 1500, 1)));
  CHECK_FALSE(r.break_point);
  CHECK(r.sentence ==
        "There is no break point: from 3 to 11 yd/s the downhill speed of SS makes no sure difference.");
}

TEST_CASE("the best cell is chosen on other seeds than those that judge it") {
  const auto plan = planFor({1, 2});
  const auto choosing = repsWith({4.0, 5.0}, {0.2, 0.2}, 800, 1);
  const auto judging = repsWith({5.0, 4.0}, {0.2, 0.2}, 800, 5001);
  const auto r = sweepOf(plan, joined(judging, choosing));
  CHECK(r.best == 0);
  CHECK(r.cells[1].past_best.difference < -0.5);
}

TEST_CASE("the answer about a safety says what it leaves out") {
  auto plan = planFor({3, 5, 7, 9, 11});
  plan.about_safety = true;
  const std::vector<double> means{5.0, 4.0, 4.0, 4.0, 5.0};
  const auto r = sweepOf(plan, joined(repsWith(means, kFlat, 300, 9001), repsWith(means, kFlat, 300, 1)));
  CHECK(r.sentence.find("no pass threat is in this number") != std::string::npos);
}

TEST_CASE("two settings make a map without a break point") {
  SweepPlan plan = planFor({3, 5});
  plan.axes.push_back({"players.SS.read_delay_s", "the read of SS", "s", {0.5, 1.0}});
  const std::vector<double> means{5.0, 4.0, 6.0, 3.0};
  const auto rows = repsWith(means, std::vector<double>(4, 0.2), 500, 1);
  const auto r = sweepOf(plan, rows);
  CHECK(r.best == 3);
  CHECK(r.cells[2].at == std::vector<double>{5, 0.5});
  CHECK_FALSE(r.break_point);
}
