#pragma once
#include <cstdint>
#include <functional>
#include <span>
#include <vector>

namespace gapsound {

struct Interval {
  double low = 0.0, high = 0.0;
  bool operator==(const Interval&) const = default;
};

/// 0 for an empty sample.
[[nodiscard]] double meanOf(std::span<const double> sample);
/// Standard deviation of the population the sample came from (n - 1); 0 below two values.
[[nodiscard]] double sdOf(std::span<const double> sample);
/// Quantile p in [0, 1] by linear interpolation between the order statistics (Hyndman & Fan 1996, type 7).
/// 0 for an empty sample.
[[nodiscard]] double quantileOf(std::span<const double> sample, double p);
[[nodiscard]] inline double medianOf(std::span<const double> sample) { return quantileOf(sample, 0.5); }
/// Pearson's r; 0 when either side does not vary. Equal lengths.
[[nodiscard]] double correlationOf(std::span<const double> a, std::span<const double> b);
/// A gain as the league counts it: the nearest whole yard, halves away from zero.
[[nodiscard]] double wholeYards(double yards);

/// Third moment about the mean over sd^3, both unbiased; 0 below three values or where nothing varies.
[[nodiscard]] double skewnessOf(std::span<const double> sample);
/// Interval of a mean at `level` in (0, 1) for values with a long tail to one side: Student's where there is
/// no skewness, else reaching further to the side of the tail (Willink 2005, Communications in Statistics
/// 34:753), with the skewness bounded to what his expansion carries at this n. The bare mean below two
/// values.
[[nodiscard]] Interval meanInterval(std::span<const double> sample, double level = 0.95);
/// The same from the mean, standard deviation and skewness of n values.
[[nodiscard]] Interval skewedInterval(double mean, double sd, double skewness, int n, double level = 0.95);
/// Wilson's score interval of a share (Wilson 1927); [0, 1] for n = 0.
[[nodiscard]] Interval shareInterval(int hits, int n, double level = 0.95);

/// b - a, value by value on common random numbers.
struct Paired {
  int n = 0;
  double difference = 0.0;  // mean of b - a
  double sd = 0.0;          // of the single differences
  double p_value = 1.0;     // two-sided, Student's t
  Interval ci;              // at the level asked for
};
/// The same from the mean and standard deviation of n differences.
[[nodiscard]] Paired pairedFrom(int n, double mean, double sd, double level = 0.95);
/// Paired t test. Identical sides give [0, 0] and p = 1. Equal lengths.
[[nodiscard]] Paired pairedDifference(std::span<const double> a, std::span<const double> b,
                                      double level = 0.95);
/// The interval of a paired difference at another level.
[[nodiscard]] Interval intervalAt(const Paired& paired, double level);

/// Percentile bootstrap: `statistic` is called with n indices drawn with replacement, `resamples` times.
/// NaN results are left out; an empty interval [0, 0] when none is left.
[[nodiscard]] Interval bootstrapInterval(
    int n, int resamples, std::uint64_t seed, double level,
    const std::function<double(std::span<const std::size_t>)>& statistic);

}  // namespace gapsound
