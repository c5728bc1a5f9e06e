#include <doctest/doctest.h>

#include <boost/math/distributions/binomial.hpp>
#include <cmath>
#include <numeric>

#include "base/stream.hpp"
#include "study/statistics.hpp"

using namespace gapsound;
using doctest::Approx;

namespace {

std::vector<double> normals(std::uint64_t seed, std::size_t n, double mean, double sd) {
  Stream stream(seed, 1, "test");
  std::vector<double> values(n);
  for (double& x : values) x = mean + sd * stream.normal();
  return values;
}

}  // namespace

TEST_CASE("mean, deviation and quantiles against sums done by hand") {
  const std::vector<double> x{2, 4, 4, 4, 5, 5, 7, 9};
  CHECK(meanOf(x) == Approx(5.0));
  CHECK(sdOf(x) == Approx(std::sqrt(32.0 / 7.0)));
  CHECK(medianOf(x) == Approx(4.5));
  CHECK(quantileOf(x, 0.25) == Approx(4.0));
  CHECK(quantileOf(x, 0.9) == Approx(7.6));
  CHECK(quantileOf(x, 0.0) == 2.0);
  CHECK(quantileOf(x, 1.0) == 9.0);
  CHECK(medianOf({}) == 0.0);
}

TEST_CASE("whole yards are the nearest ones, halves away from zero") {
  CHECK(wholeYards(0.49) == 0.0);
  CHECK(wholeYards(3.5) == 4.0);
  CHECK(wholeYards(-0.5) == -1.0);
}

TEST_CASE("correlation of a line is one, of its mirror minus one, of a constant nought") {
  const std::vector<double> a{1, 2, 3, 4}, b{3, 5, 7, 9}, c{9, 7, 5, 3}, d{1, 1, 1, 1};
  CHECK(correlationOf(a, b) == Approx(1.0));
  CHECK(correlationOf(a, c) == Approx(-1.0));
  CHECK(correlationOf(a, d) == 0.0);
}

// Student's sleep data (1908): ten patients under two drugs; t = 4.0621, p = 0.002833, interval 0.7001
// to 2.4599.
TEST_CASE("the paired test gives the published answer for Student's sleep data") {
  const std::vector<double> first{0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0.0, 2.0};
  const std::vector<double> second{1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4};
  const Paired paired = pairedDifference(first, second);
  CHECK(paired.difference == Approx(1.58));
  CHECK(paired.p_value == Approx(0.002833).epsilon(0.001));
  CHECK(paired.ci.low == Approx(0.7001).epsilon(0.001));
  CHECK(paired.ci.high == Approx(2.4599).epsilon(0.001));
  const Interval wide = intervalAt(paired, 0.999);
  CHECK(wide.low < paired.ci.low);
  CHECK(wide.high > paired.ci.high);
}

TEST_CASE("identical sides differ by nothing, surely") {
  const auto x = normals(3, 50, 4.0, 6.0);
  const Paired paired = pairedDifference(x, x);
  CHECK(paired.ci == Interval{0.0, 0.0});
  CHECK(paired.p_value == 1.0);
}

TEST_CASE("a constant difference is beyond doubt") {
  const auto x = normals(4, 20, 0.0, 1.0);
  auto y = x;
  for (std::size_t k = 0; k < y.size(); ++k) y[k] = x[k] + 1.0;
  CHECK(pairedDifference(x, y).p_value < 1e-12);
}

// Newcombe (1998, Statistics in Medicine 17:857): 81 of 263 by Wilson's score without correction: 0.2553 to
// 0.3662.
TEST_CASE("the share's interval gives the published answer") {
  const Interval i = shareInterval(81, 263);
  CHECK(i.low == Approx(0.2553).epsilon(0.001));
  CHECK(i.high == Approx(0.3662).epsilon(0.001));
  CHECK(shareInterval(0, 20).low == Approx(0.0));
  CHECK(shareInterval(0, 20).high == Approx(0.1611).epsilon(0.001));
}

TEST_CASE("the share's interval covers the true share about as often as it says") {
  constexpr int kDraws = 40;
  constexpr double kShare = 0.3;
  const boost::math::binomial hits(kDraws, kShare);
  double covered = 0.0;
  for (int k = 0; k <= kDraws; ++k) {
    const Interval i = shareInterval(k, kDraws);
    if (i.low <= kShare && kShare <= i.high) covered += boost::math::pdf(hits, k);
  }
  CHECK(covered > 0.93);
  CHECK(covered < 0.97);
}

TEST_CASE("the mean's interval covers the true mean about as often as it says") {
  int covered = 0;
  constexpr int kTrials = 2000;
  for (int k = 0; k < kTrials; ++k) {
    const Interval i = gainInterval(normals(100 + static_cast<std::uint64_t>(k), 12, 4.0, 6.0));
    covered += i.low <= 4.0 && 4.0 <= i.high;
  }
  CHECK(covered > 0.93 * kTrials);
  CHECK(covered < 0.97 * kTrials);
}

// Student's interval of thirty exponential values holds their mean in 92.7 of a hundred and lets it escape
// upwards in nearly all others.
TEST_CASE("the mean's interval covers the mean of an exponential about as often as it says, on both sides") {
  int below = 0, above = 0;
  constexpr int kTrials = 4000;
  Stream stream(17, 1, "test");
  std::vector<double> x(30);
  for (int k = 0; k < kTrials; ++k) {
    for (double& value : x) value = -std::log(1.0 - stream.unit());
    const Interval i = gainInterval(x);
    below += i.high < 1.0;
    above += i.low > 1.0;
  }
  CHECK(below < 0.045 * kTrials);
  CHECK(above > 0.01 * kTrials);
  CHECK(below + above < 0.065 * kTrials);
}

TEST_CASE("the bootstrap of a mean comes near Student's interval and repeats itself") {
  const auto x = normals(7, 400, 4.0, 6.0);
  const auto mean = [&](std::span<const std::size_t> drawn) {
    double sum = 0.0;
    for (const std::size_t k : drawn) sum += x[k];
    return sum / static_cast<double>(drawn.size());
  };
  const Interval b = bootstrapInterval(400, 2000, 1, 0.95, mean);
  const Interval t = gainInterval(x);
  CHECK(std::abs(b.low - t.low) < 0.08);
  CHECK(std::abs(b.high - t.high) < 0.08);
  CHECK(b == bootstrapInterval(400, 2000, 1, 0.95, mean));
  CHECK_FALSE(b == bootstrapInterval(400, 2000, 2, 0.95, mean));
}

TEST_CASE("looking early at nothing hardly raises a false alarm") {
  Stream luck(5, 0, "nothing there");
  constexpr int kTests = 4000, kPairs = 800;
  constexpr double kLevel = 0.05;
  int alarms = 0;
  std::vector<double> zero(kPairs, 0.0), noise(kPairs);
  for (int test = 0; test < kTests; ++test) {
    for (double& value : noise) value = luck.normal();
    for (const Checkpoint& at : checkpointsOf(kPairs, kLevel)) {
      const auto n = static_cast<std::size_t>(at.n);
      if (pairedDifference(std::span(zero).first(n), std::span(noise).first(n)).p_value >= at.alpha) continue;
      ++alarms;
      break;
    }
  }
  // 5 in 100, a standard deviation of 0.35; five of these above and below.
  CHECK(alarms > kTests * 0.033);
  CHECK(alarms < kTests * 0.067);
}
