#include "study/weighted.hpp"

#include <algorithm>
#include <cmath>

namespace gapsound {

double Weighted::mean() const {
  double total = 0.0;
  for (const auto& [value, weight] : values_) total += weight * value;
  return sum_ > 0.0 ? total / sum_ : 0.0;
}

double Weighted::sd() const {
  const double centre = mean();
  double total = 0.0;
  for (const auto& [value, weight] : values_) total += weight * (value - centre) * (value - centre);
  return sum_ > 0.0 ? std::sqrt(total / sum_) : 0.0;
}

double Weighted::quantile(double share) const {
  auto ascending = values_;
  std::sort(ascending.begin(), ascending.end());
  double below = 0.0;
  for (const auto& [value, weight] : ascending) {
    below += weight;
    if (below >= share * sum_) return value;
  }
  return ascending.empty() ? 0.0 : ascending.back().first;
}

double Weighted::shareFrom(double least) const {
  double above = 0.0;
  for (const auto& [value, weight] : values_) above += value >= least ? weight : 0.0;
  return sum_ > 0.0 ? above / sum_ : 0.0;
}

void WeightedPairs::add(double a, double b, double weight) {
  sum_ += weight;
  a_ += weight * a;
  b_ += weight * b;
  aa_ += weight * a * a;
  bb_ += weight * b * b;
  ab_ += weight * a * b;
}

double WeightedPairs::correlation() const {
  const double aa = sum_ * aa_ - a_ * a_, bb = sum_ * bb_ - b_ * b_;
  return aa > 0.0 && bb > 0.0 ? (sum_ * ab_ - a_ * b_) / std::sqrt(aa * bb) : 0.0;
}

}  // namespace gapsound
