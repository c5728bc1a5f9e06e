#include "study/place_density.hpp"

#include <cmath>
#include <numbers>

namespace gapsound {
namespace {

constexpr double kTail = 0.1;

/// A bell over the field.
struct Bell {
  double xx = 0.0, xy = 0.0, yy = 0.0;  // yd2
  [[nodiscard]] Bell scaled(double by, double plus) const {
    return {by * xx + plus, by * xy, by * yy + plus};
  }
  [[nodiscard]] double at(Vec2 off) const {
    const double area = xx * yy - xy * xy;
    const double square = (yy * off.x * off.x - 2.0 * xy * off.x * off.y + xx * off.y * off.y) / area;
    return std::exp(-0.5 * square) / (2.0 * std::numbers::pi * std::sqrt(area));
  }
};

Vec2 meanOf(const std::vector<Vec2>& places) {
  Vec2 sum;
  for (const Vec2 p : places) sum = sum + p;
  return (1.0 / static_cast<double>(places.size())) * sum;
}

Bell bellOf(const std::vector<Vec2>& places, Vec2 mean) {
  Bell bell;
  for (const Vec2 p : places) {
    const Vec2 off = p - mean;
    bell.xx += off.x * off.x, bell.xy += off.x * off.y, bell.yy += off.y * off.y;
  }
  return bell.scaled(1.0 / static_cast<double>(places.size() - 1), 0.0);
}

}  // namespace

double shapeGain(const std::vector<Vec2>& places, Vec2 at, double read) {
  if (places.size() < 2) return 0.0;
  const Vec2 mean = meanOf(places);
  const Bell own = bellOf(places, mean);
  const auto n = static_cast<double>(places.size());
  const Bell kernel = own.scaled(std::pow(n, -1.0 / 3.0), 0.5 * read);
  double heaps = 0.0;
  for (const Vec2 p : places) heaps += kernel.at(at - p) / n;
  const double wide = own.scaled(2.0, 2.0 * read).at(at - mean), one = own.scaled(1.0, read).at(at - mean);
  return std::log((1.0 - kTail) * heaps + kTail * wide) - std::log((1.0 - kTail) * one + kTail * wide);
}

}  // namespace gapsound
