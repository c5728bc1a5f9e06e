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

/// Interval of a mean gain in yards at `level` in (0, 1): Student's, with one run counted that has not
/// happened yet. One real run in forty gains 20 yd or more, so a hundred snaps often show none and Student's
/// interval then ends too low. The run added gains 20 yd, at most five standard deviations more than the
/// mean, at least the mean. The bare mean below two values.
[[nodiscard]] Interval gainInterval(std::span<const double> gains, double level = 0.95);
/// The same from the mean and standard deviation of n gains.
[[nodiscard]] Interval gainInterval(double mean, double sd, int n, double level = 0.95);
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

/// A paired test may end before its last rep. It is looked at after a 32nd of the n pairs, at 200 at the
/// soonest, whenever they have grown by the root of 2, and at the end; on the way only six thousandths of the
/// level count, so that looking early costs the last look next to nothing (Haybittle 1971; Peto et al. 1976).
struct Checkpoint {
  int n = 0;
  double alpha = 0.001;  // what counts at this stage
};
[[nodiscard]] std::vector<Checkpoint> checkpointsOf(int n, double alpha);

/// Percentile bootstrap: `statistic` is called with n indices drawn with replacement, `resamples` times.
/// NaN results are left out; an empty interval [0, 0] when none is left.
[[nodiscard]] Interval bootstrapInterval(
    int n, int resamples, std::uint64_t seed, double level,
    const std::function<double(std::span<const std::size_t>)>& statistic);

}  // namespace gapsound
