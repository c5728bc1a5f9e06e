#include "study/statistics.hpp"

#include <algorithm>
#include <boost/math/distributions/normal.hpp>
#include <boost/math/distributions/students_t.hpp>
#include <cmath>

#include "base/stream.hpp"

namespace gapsound {
namespace {

double sorted(const std::vector<double>& ascending, double p) {
  if (ascending.empty()) return 0.0;
  const double place = p * static_cast<double>(ascending.size() - 1);
  const auto below = static_cast<std::size_t>(place);
  const std::size_t above = std::min(below + 1, ascending.size() - 1);
  return ascending[below] + (place - static_cast<double>(below)) * (ascending[above] - ascending[below]);
}

double studentQuantile(int n, double level) {
  return boost::math::quantile(boost::math::students_t(n - 1), 0.5 + 0.5 * level);
}

Interval studentInterval(double mean, double sd, int n, double level) {
  if (n < 2 || sd == 0.0) return {mean, mean};
  const double half = studentQuantile(n, level) * sd / std::sqrt(n);
  return {mean - half, mean + half};
}

double twoSided(double mean, double sd, int n) {
  if (n < 2 || mean == 0.0) return 1.0;
  if (sd == 0.0) return 0.0;
  const double t = mean / (sd / std::sqrt(n));
  return 2.0 * boost::math::cdf(boost::math::complement(boost::math::students_t(n - 1), std::abs(t)));
}

}  // namespace

double meanOf(std::span<const double> sample) {
  double sum = 0.0;
  for (const double x : sample) sum += x;
  return sample.empty() ? 0.0 : sum / static_cast<double>(sample.size());
}

double sdOf(std::span<const double> sample) {
  if (sample.size() < 2) return 0.0;
  const double mean = meanOf(sample);
  double sum = 0.0;
  for (const double x : sample) sum += (x - mean) * (x - mean);
  return std::sqrt(sum / static_cast<double>(sample.size() - 1));
}

double quantileOf(std::span<const double> sample, double p) {
  std::vector<double> ascending(sample.begin(), sample.end());
  std::sort(ascending.begin(), ascending.end());
  return sorted(ascending, p);
}

double correlationOf(std::span<const double> a, std::span<const double> b) {
  const double mean_a = meanOf(a), mean_b = meanOf(b);
  double ab = 0.0, aa = 0.0, bb = 0.0;
  for (std::size_t k = 0; k < a.size(); ++k) {
    ab += (a[k] - mean_a) * (b[k] - mean_b);
    aa += (a[k] - mean_a) * (a[k] - mean_a);
    bb += (b[k] - mean_b) * (b[k] - mean_b);
  }
  return aa > 0.0 && bb > 0.0 ? ab / std::sqrt(aa * bb) : 0.0;
}

double wholeYards(double yards) { return std::round(yards); }

Interval gainInterval(std::span<const double> gains, double level) {
  return gainInterval(meanOf(gains), sdOf(gains), static_cast<int>(gains.size()), level);
}

Interval gainInterval(double mean, double sd, int n, double level) {
  if (n < 2 || sd == 0.0) return {mean, mean};
  constexpr double kLongRun = 20.0, kFarthest = 5.0;  // yd; standard deviations
  const double beyond = std::clamp(kLongRun - mean, 0.0, kFarthest * sd);
  const double with = n + 1.0;
  const double squares = (n - 1.0) * sd * sd + beyond * beyond * n / with;
  return studentInterval(mean + beyond / with, std::sqrt(squares / n), n + 1, level);
}

Interval shareInterval(int hits, int n, double level) {
  if (n <= 0) return {0.0, 1.0};
  const double z = boost::math::quantile(boost::math::normal(), 0.5 + 0.5 * level);
  const double share = static_cast<double>(hits) / n;
  const double shrink = 1.0 + z * z / n;
  const double centre = (share + z * z / (2.0 * n)) / shrink;
  const double half = z / shrink * std::sqrt(share * (1.0 - share) / n + z * z / (4.0 * n * n));
  return {std::max(centre - half, 0.0), std::min(centre + half, 1.0)};
}

Paired pairedFrom(int n, double mean, double sd, double level) {
  return {n, mean, sd, twoSided(mean, sd, n), studentInterval(mean, sd, n, level)};
}

Paired pairedDifference(std::span<const double> a, std::span<const double> b, double level) {
  std::vector<double> differences(a.size());
  for (std::size_t k = 0; k < a.size(); ++k) differences[k] = b[k] - a[k];
  return pairedFrom(static_cast<int>(differences.size()), meanOf(differences), sdOf(differences), level);
}

Interval intervalAt(const Paired& paired, double level) {
  return studentInterval(paired.difference, paired.sd, paired.n, level);
}

std::vector<Checkpoint> checkpointsOf(int n, double alpha) {
  constexpr double kEarly = 0.006;
  constexpr int kLeast = 200;  // fewer have no bell
  std::vector<Checkpoint> stages;
  for (int halves = 10; halves > 0; --halves) {
    const int at = std::max(static_cast<int>(n * std::exp2(-0.5 * halves)), kLeast);
    if (at < n && (stages.empty() || at > stages.back().n)) stages.push_back({at, kEarly * alpha});
  }
  stages.push_back({n, alpha});
  return stages;
}

Interval bootstrapInterval(int n, int resamples, std::uint64_t seed, double level,
                           const std::function<double(std::span<const std::size_t>)>& statistic) {
  Stream stream(seed, 0, "bootstrap");
  std::vector<std::size_t> drawn(static_cast<std::size_t>(n));
  std::vector<double> results;
  for (int r = 0; r < resamples; ++r) {
    for (auto& k : drawn) k = static_cast<std::size_t>(stream.unit() * n);
    const double result = statistic(drawn);
    if (!std::isnan(result)) results.push_back(result);
  }
  std::sort(results.begin(), results.end());
  return {sorted(results, 0.5 - 0.5 * level), sorted(results, 0.5 + 0.5 * level)};
}

}  // namespace gapsound
