#include <doctest/doctest.h>

#include <algorithm>
#include <boost/math/distributions/binomial.hpp>
#include <boost/math/distributions/normal.hpp>
#include <boost/math/distributions/students_t.hpp>
#include <boost/math/statistics/bivariate_statistics.hpp>
#include <boost/math/statistics/t_test.hpp>
#include <boost/math/statistics/univariate_statistics.hpp>
#include <boost/math/tools/toms748_solve.hpp>
#include <cmath>

#include "base/stream.hpp"
#include "study/statistics.hpp"
#include "study/tally.hpp"

// The statistics of studies against Boost.Math, which has its own code for each of them.

using namespace gapsound;
using doctest::Approx;
namespace stats = boost::math::statistics;

namespace {

/// Gains of a run: mostly short, now and then all the way.
std::vector<double> gains(std::uint64_t seed, std::size_t n) {
  Stream luck(seed, 1, "gains");
  std::vector<double> yards(n);
  for (double& y : yards) {
    const double usual = 3.0 + 3.5 * luck.normal();
    y = luck.chance(0.05) ? 20.0 + 40.0 * luck.unit() : usual;
  }
  return yards;
}

/// The share p on one side of hits / n at which the score (hits - n p) / sqrt(n p (1 - p)) is z: the score
/// test turned round, by root finding.
double shareWithScore(int hits, int n, double z, double low, double high) {
  const auto off = [=](double p) {
    const double score = hits - n * p;
    return score * score - z * z * n * p * (1.0 - p);
  };
  std::uintmax_t steps = 200;
  const auto root =
      boost::math::tools::toms748_solve(off, low, high, boost::math::tools::eps_tolerance<double>(50), steps);
  return 0.5 * (root.first + root.second);
}

}  // namespace

TEST_CASE("mean, deviation, median and correlation are Boost.Math's") {
  for (const std::size_t n : {3U, 20U, 401U}) {
    const auto a = gains(n, n), b = gains(n + 1, n);
    CHECK(meanOf(a) == Approx(stats::mean(a)).epsilon(1e-12));
    CHECK(sdOf(a) == Approx(std::sqrt(stats::sample_variance(a))).epsilon(1e-12));
    CHECK(correlationOf(a, b) == Approx(stats::correlation_coefficient(a, b)).epsilon(1e-10));
    auto shuffled = a;
    CHECK(medianOf(a) == Approx(stats::median(shuffled)).epsilon(1e-12));
  }
}

TEST_CASE("the paired test is Boost.Math's t test of the differences") {
  for (const std::size_t n : {5U, 30U, 400U})
    for (const std::uint64_t seed : {1U, 2U, 3U}) {
      const auto a = gains(seed, n);
      auto b = gains(seed + 100, n);
      for (std::size_t k = 0; k < n; ++k) b[k] = 0.7 * a[k] + 0.3 * b[k] + 0.4;
      std::vector<double> differences(n);
      for (std::size_t k = 0; k < n; ++k) differences[k] = b[k] - a[k];
      const auto [t, p] = stats::one_sample_t_test(differences, 0.0);
      const Paired paired = pairedDifference(a, b);
      CHECK(paired.p_value == Approx(p).epsilon(1e-9));
      CHECK(paired.difference / (paired.sd / std::sqrt(static_cast<double>(n))) == Approx(t).epsilon(1e-9));
    }
}

TEST_CASE(
    "the ends of a mean gain's interval are the means the t test rejects at just that level, one long run "
    "added") {
  for (const double level : {0.9, 0.95, 0.999})
    for (const std::size_t n : {5U, 30U, 400U}) {
      auto sample = gains(9, n);
      const Interval i = gainInterval(sample, level);
      sample.push_back(std::min(20.0, meanOf(sample) + 5.0 * sdOf(sample)));
      CHECK(stats::one_sample_t_test(sample, i.low).second == Approx(1.0 - level).epsilon(1e-8));
      CHECK(stats::one_sample_t_test(sample, i.high).second == Approx(1.0 - level).epsilon(1e-8));
    }
}

TEST_CASE(
    "a mean gain's interval reaches further up while no long run was seen, and is Student's with many "
    "snaps") {
  const auto student = [](const std::vector<double>& x) {
    const double n = static_cast<double>(x.size());
    return boost::math::quantile(boost::math::students_t(n - 1), 0.975) * sdOf(x) / std::sqrt(n);
  };
  std::vector<double> few(100, 3.0);
  for (std::size_t k = 0; k < 50; ++k) few[k] = 1.0;
  const Interval short_runs = gainInterval(few);
  CHECK(short_runs.high - meanOf(few) > 1.3 * student(few));
  CHECK(meanOf(few) - short_runs.low < 1.1 * student(few));
  few[99] = 90.0;
  const Interval one_long = gainInterval(few);
  CHECK(one_long.high - one_long.low < 1.05 * 2.0 * student(few));
  const auto many = gains(9, 20000);
  const Interval whole = gainInterval(many);
  CHECK(whole.high - whole.low < 1.001 * 2.0 * student(many));
  CHECK(whole.high + whole.low == Approx(2.0 * meanOf(many)).epsilon(0.002));
}

TEST_CASE("the ends of a share's interval solve the score equation") {
  for (const double level : {0.9, 0.95, 0.999}) {
    const double z = boost::math::quantile(boost::math::normal(), 0.5 + 0.5 * level);
    for (const int n : {10, 60, 400})
      for (const int hits : {1, n / 3, n / 2, n - 2}) {
        const Interval i = shareInterval(hits, n, level);
        const double share = static_cast<double>(hits) / n;
        CHECK(i.low == Approx(shareWithScore(hits, n, z, 1e-12, share)).epsilon(1e-9));
        CHECK(i.high == Approx(shareWithScore(hits, n, z, share, 1.0 - 1e-12)).epsilon(1e-9));
      }
  }
}

// Clopper & Pearson 1934: the exact interval, which is never too short.
TEST_CASE("from a hundred reps on the share's interval is the exact one to within a point") {
  using boost::math::binomial;
  for (const int n : {100, 400, 1000})
    for (const int hits : {n / 20, n / 5, n / 2, 4 * n / 5}) {
      const Interval i = shareInterval(hits, n);
      CHECK(std::abs(i.low - binomial::find_lower_bound_on_p(n, hits, 0.025)) < 0.012);
      CHECK(std::abs(i.high - binomial::find_upper_bound_on_p(n, hits, 0.025)) < 0.012);
    }
}

TEST_CASE("over all shares the interval covers the truth nineteen times in twenty") {
  constexpr int kReps = 100;
  double least = 1.0, sum = 0.0;
  int shares = 0;
  for (double p = 0.03; p < 0.975; p += 0.01) {
    const boost::math::binomial hits(kReps, p);
    double covered = 0.0;
    for (int k = 0; k <= kReps; ++k) {
      const Interval i = shareInterval(k, kReps);
      if (i.low <= p && p <= i.high) covered += boost::math::pdf(hits, k);
    }
    least = std::min(least, covered);
    sum += covered;
    ++shares;
  }
  CHECK(sum / shares == Approx(0.95).epsilon(0.006));
  CHECK(least > 0.91);
}

// The interval of a median that binomial counts give: no assumption about the distribution.
TEST_CASE("the bootstrap of a median is the binomial interval of its order statistics") {
  constexpr int kReps = 399;
  const auto sample = gains(21, kReps);
  auto ascending = sample;
  std::sort(ascending.begin(), ascending.end());
  const boost::math::binomial below(kReps, 0.5);
  const auto at = [&](double p) {
    return ascending[static_cast<std::size_t>(boost::math::quantile(below, p))];
  };
  const Interval boot = bootstrapInterval(kReps, 2000, 1, 0.95, [&](std::span<const std::size_t> drawn) {
    std::vector<double> values;
    for (const std::size_t k : drawn) values.push_back(sample[k]);
    return medianOf(values);
  });
  CHECK(std::abs(boot.low - at(0.025)) < 0.15);
  CHECK(std::abs(boot.high - at(0.975)) < 0.15);
}
