#include <doctest/doctest.h>

#include "study/card.hpp"
#include "study/distribution.hpp"

using namespace gapsound;
using doctest::Approx;

namespace {

Summary rep(double yards, double t_line = 2.5) {
  Summary s;
  s.yards = yards, s.t_line = t_line, s.t_handoff = 1.2, s.t_end = 4.0;
  s.lane_gap = t_line < 0.0 ? "" : yards > 5.0 ? "D+" : "C+";
  return s;
}

const std::vector<Summary> kTen{rep(-2.4, -1), rep(-0.4), rep(0.4), rep(1.6),  rep(3.4),
                                rep(3.5),      rep(5.2),  rep(9.6), rep(14.0), rep(25.0)};

}  // namespace

TEST_CASE("shares count whole yards, the mean counts raw ones") {
  const Distribution d = distributionOf(kTen);
  CHECK(d.n == 10);
  CHECK(d.mean == Approx(5.99));
  CHECK(d.lost == Approx(0.1));
  CHECK(d.stuffed == Approx(0.3));
  CHECK(d.four_plus == Approx(0.5));
  CHECK(d.ten_plus == Approx(0.3));
  CHECK(d.twelve_plus == Approx(0.2));
  CHECK(d.twenty_plus == Approx(0.1));
  CHECK(d.median == Approx(3.5));  // between 3 and 4
  CHECK(d.mean_ci.low < d.mean);
  CHECK(d.mean_ci.high > d.mean);
}

TEST_CASE("success is 40, 60, 100 percent of the distance by down") {
  CHECK(distributionOf(kTen, {1, 10.0}).success == Approx(0.5));
  CHECK(distributionOf(kTen, {2, 10.0}).success == Approx(0.3));
  CHECK(distributionOf(kTen, {3, 10.0}).success == Approx(0.3));
  CHECK(distributionOf(kTen, {3, 2.0}).success == Approx(0.7));
}

TEST_CASE("lanes are shares of all reps, timings medians of those where it happened") {
  const Distribution d = distributionOf(kTen);
  CHECK(d.lanes.at("D+").share == Approx(0.4));
  CHECK(d.lanes.at("C+").share == Approx(0.5));
  CHECK(d.lanes.at("D+").mean == Approx((5.2 + 9.6 + 14.0 + 25.0) / 4));
  CHECK(d.lanes.count("") == 0);
  CHECK(d.timing.t_line == Approx(2.5));
  CHECK(d.timing.never_crossed == Approx(0.1));
}

TEST_CASE("the miss share is of all tries of all reps") {
  auto reps = kTen;
  reps[0].tackle_tries = 1, reps[1].tackle_tries = 3, reps[1].tackle_misses = 1;
  CHECK(distributionOf(reps).missed_tackles == Approx(0.25));
}

TEST_CASE("no reps give an empty distribution") { CHECK(distributionOf({}).n == 0); }

TEST_CASE("a card line passes inside its band only") {
  CardLine line;
  CHECK(line.passes());
  line.band = Interval{1.0, 2.0}, line.value = 2.5;
  CHECK_FALSE(line.passes());
  line.value = 1.5;
  CHECK(line.passes());
}

TEST_CASE("the top man is the one with most first contacts") {
  std::vector<Summary> reps(4);
  reps[0].first_contact_man = 15, reps[1].first_contact_man = 15, reps[2].first_contact_man = 16;
  CHECK(topFirstContact(reps).man == 15);
  CHECK(topFirstContact(reps).share == Approx(2.0 / 3.0));
  CHECK(topFirstContact({}).man == kNobody);
}
