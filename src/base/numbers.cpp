#include "base/numbers.hpp"

#include <bit>
#include <cstdint>

namespace gapsound {
namespace {
constexpr double kPi = 3.14159265358979323846;
constexpr double kLn2 = 0.693147180559945309417;
}  // namespace

double fixedExp(double x) {
  if (x > 700.0) x = 700.0;
  if (x < -700.0) return 0.0;
  const double scaled = x / kLn2;
  const int power = static_cast<int>(scaled + (scaled < 0 ? -0.5 : 0.5));
  const double r = x - power * kLn2;  // |r| <= ln2 / 2
  double sum = 1.0;
  for (int k = 13; k >= 1; --k) sum = 1.0 + sum * r / k;
  const auto exponent = static_cast<std::uint64_t>(1023 + power) << 52;
  return sum * std::bit_cast<double>(exponent);
}

double fixedAngle(Vec2 v) {
  const double ax = v.x < 0 ? -v.x : v.x;
  const double ay = v.y < 0 ? -v.y : v.y;
  if (ax + ay == 0.0) return 0.0;
  const bool steep = ay > ax;
  double t = steep ? ax / ay : ay / ax;
  double shift = 0.0;
  if (t > 0.41421356237309503) {  // tan(pi / 8): halve the range once
    t = (t - 1.0) / (t + 1.0);
    shift = kPi / 4;
  }
  const double s = t * t;
  double a =
      shift +
      t * (1.0 - s * (1.0 / 3 - s * (1.0 / 5 - s * (1.0 / 7 - s * (1.0 / 9 - s * (1.0 / 11 - s / 13))))));
  if (steep) a = kPi / 2 - a;
  if (v.x < 0) a = kPi - a;
  return v.y < 0 ? -a : a;
}

Vec2 fixedDirection(double angle) {
  const double turns = angle / (2 * kPi);
  const auto whole = static_cast<long long>(turns + (turns < 0 ? -0.5 : 0.5));
  const double r = angle - 2 * kPi * static_cast<double>(whole);
  const double s = r * r;
  double c = 1.0;
  double d = 1.0;
  for (int k = 22; k >= 2; k -= 2) {
    c = 1.0 - s * c / ((k - 1) * k);
    d = 1.0 - s * d / (k * (k + 1));
  }
  return {c, r * d};
}

}  // namespace gapsound
