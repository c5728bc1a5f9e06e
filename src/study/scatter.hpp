#pragma once
#include <cstddef>
#include <span>
#include <vector>

namespace gapsound {

/// How values that belong together scatter about their means: covariance pooled over groups, and the distance
/// it makes of a difference (Mahalanobis 1936).
class Scatter {
 public:
  explicit Scatter(std::size_t dims) : dims_(dims), sums_(dims * dims, 0.0) {}
  /// One group: `reps` rows of dims() values, one after the other. Groups of one row say nothing.
  void add(std::span<const double> rows);
  /// To be called once, after the groups: the covariance times `weight`, off the diagonal shrunk by `shrink`
  /// in [0, 1), `floor` > 0 added to the diagonal.
  void finish(double weight, double shrink, double floor);
  [[nodiscard]] std::size_t dims() const { return dims_; }
  /// Values turned so that squared distances between them count in variances; after finish().
  [[nodiscard]] std::vector<double> whitened(std::span<const double> row) const;
  /// Half the logarithm of the determinant; after finish().
  [[nodiscard]] double halfLogDeterminant() const;

 private:
  [[nodiscard]] double& at(std::size_t i, std::size_t j) { return sums_[i * dims_ + j]; }
  [[nodiscard]] double at(std::size_t i, std::size_t j) const { return sums_[i * dims_ + j]; }
  void factor();
  std::size_t dims_;
  std::vector<double> sums_;  // then the covariance, then its lower Cholesky factor
  double freedom_ = 0.0;
};

/// Mean of the rows, value by value; `rows` holds at least one.
[[nodiscard]] std::vector<double> meanRow(std::span<const double> rows, std::size_t dims);

}  // namespace gapsound
