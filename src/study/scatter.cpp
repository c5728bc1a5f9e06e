#include "study/scatter.hpp"

#include <cmath>

namespace gapsound {

std::vector<double> meanRow(std::span<const double> rows, std::size_t dims) {
  std::vector<double> mean(dims, 0.0);
  const auto n = static_cast<double>(rows.size() / dims);
  for (std::size_t k = 0; k < rows.size(); ++k) mean[k % dims] += rows[k] / n;
  return mean;
}

void Scatter::add(std::span<const double> rows) {
  const std::size_t n = rows.size() / dims_;
  if (n < 2) return;
  const std::vector<double> mean = meanRow(rows, dims_);
  for (std::size_t r = 0; r < n; ++r)
    for (std::size_t i = 0; i < dims_; ++i)
      for (std::size_t j = 0; j <= i; ++j)
        at(i, j) += (rows[r * dims_ + i] - mean[i]) * (rows[r * dims_ + j] - mean[j]);
  freedom_ += static_cast<double>(n - 1);
}

void Scatter::finish(double weight, double shrink, double floor) {
  for (std::size_t i = 0; i < dims_; ++i)
    for (std::size_t j = 0; j <= i; ++j) {
      if (freedom_ > 0.0) at(i, j) *= weight / freedom_;
      at(i, j) = i == j ? at(i, j) + floor : at(i, j) * (1.0 - shrink);
    }
  factor();
}

void Scatter::factor() {
  for (std::size_t i = 0; i < dims_; ++i)
    for (std::size_t j = 0; j <= i; ++j) {
      double rest = at(i, j);
      for (std::size_t k = 0; k < j; ++k) rest -= at(i, k) * at(j, k);
      at(i, j) = i == j ? std::sqrt(rest) : rest / at(j, j);
    }
}

double Scatter::halfLogDeterminant() const {
  double sum = 0.0;
  for (std::size_t i = 0; i < dims_; ++i) sum += std::log(at(i, i));
  return sum;
}

std::vector<double> Scatter::whitened(std::span<const double> row) const {
  std::vector<double> turned(row.begin(), row.end());
  for (std::size_t i = 0; i < dims_; ++i) {
    for (std::size_t k = 0; k < i; ++k) turned[i] -= at(i, k) * turned[k];
    turned[i] /= at(i, i);
  }
  return turned;
}

}  // namespace gapsound
