#include "study/calibration.hpp"

#include <algorithm>
#include <cmath>

#include "analysis/gaps.hpp"

namespace gapsound {
namespace {

constexpr double kBoxDepth = 8.0;    // yd from the line
constexpr double kBoxOutside = 2.0;  // yd outside the last attached blocker
constexpr int kRounds = 500;         // of raking; far more than it takes

std::size_t placeOf(RunKind kind) { return static_cast<std::size_t>(kind); }
std::size_t placeOf(int box) {
  return static_cast<std::size_t>(std::clamp(box, kLeastBox, kMostBox) - kLeastBox);
}

/// Scales the weights of every class so that they add up to its share.
template <std::size_t N, typename ClassOf>
void scaleTo(const std::array<double, N>& shares, std::span<const LookClass> looks, const ClassOf& class_of,
             std::vector<double>& weights) {
  std::array<double, N> sums{};
  for (std::size_t k = 0; k < looks.size(); ++k) sums[class_of(looks[k])] += weights[k];
  for (std::size_t k = 0; k < looks.size(); ++k) {
    const std::size_t c = class_of(looks[k]);
    weights[k] *= sums[c] > 0.0 ? shares[c] / sums[c] : 0.0;
  }
}

}  // namespace

int menInBox(const Setup& setup) {
  double left = 0.0, right = 0.0;
  for (const Man& man : setup.men) {
    if (!isInLine(man)) continue;
    left = std::min(left, man.spot.x);
    right = std::max(right, man.spot.x);
  }
  return static_cast<int>(std::count_if(setup.men.begin() + kOffense, setup.men.end(), [&](const Man& man) {
    return man.spot.y <= kBoxDepth && man.spot.x >= left - kBoxOutside && man.spot.x <= right + kBoxOutside;
  }));
}

std::vector<double> rakedWeights(const CalibrationSet& set, std::span<const LookClass> looks) {
  std::vector<double> weights(looks.size(), 1.0);
  for (int round = 0; round < kRounds; ++round) {
    scaleTo(
        set.kinds, looks, [](const LookClass& look) { return placeOf(look.kind); }, weights);
    scaleTo(
        set.boxes, looks, [](const LookClass& look) { return placeOf(look.box); }, weights);
  }
  double sum = 0.0;
  for (const double weight : weights) sum += weight;
  for (double& weight : weights) weight /= sum > 0.0 ? sum : 1.0;
  return weights;
}

double distanceFromBands(std::span<const CardLine> card) {
  double sum = 0.0;
  for (const CardLine& line : card) {
    if (!line.band) continue;
    const double middle = 0.5 * (line.band->low + line.band->high);
    const double half = 0.5 * (line.band->high - line.band->low);
    const double off = (line.value - middle) / (half > 0.0 ? half : 1.0);
    sum += off * off;
  }
  return sum;
}

}  // namespace gapsound
