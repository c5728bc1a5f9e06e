#pragma once
#include <utility>
#include <vector>

namespace gapsound {

/// Values that count for different amounts.
class Weighted {
 public:
  void add(double value, double weight) {
    values_.emplace_back(value, weight);
    sum_ += weight;
  }
  [[nodiscard]] bool empty() const { return values_.empty(); }
  /// 0 without values, like all below.
  [[nodiscard]] double mean() const;
  /// Of the population.
  [[nodiscard]] double sd() const;
  /// The least value with at least `share` of the weight at or below it.
  [[nodiscard]] double quantile(double share) const;
  /// Share of the weight at or above `least`.
  [[nodiscard]] double shareFrom(double least) const;

 private:
  std::vector<std::pair<double, double>> values_;
  double sum_ = 0.0;
};

/// Pearson's r of pairs that count for different amounts; 0 when either side does not vary.
class WeightedPairs {
 public:
  void add(double a, double b, double weight);
  [[nodiscard]] double correlation() const;

 private:
  double sum_ = 0, a_ = 0, b_ = 0, aa_ = 0, bb_ = 0, ab_ = 0;
};

}  // namespace gapsound
