#pragma once
#include "base/vec2.hpp"

namespace gapsound {

/// exp(x) from + - * / alone, so that it is the same bits on every processor.
/// Relative error below 1e-12 for |x| <= 700; saturates outside.
[[nodiscard]] double fixedExp(double x);
/// Angle of (x, y) in (-pi, pi], absolute error below 1e-6; from + - * / alone. 0 for the zero vector.
[[nodiscard]] double fixedAngle(Vec2 v);
/// Sine and cosine as a unit vector {cos, sin} of an angle in radians, |angle| <= 1e4, error below 1e-9.
[[nodiscard]] Vec2 fixedDirection(double angle);

/// 1 / (1 + exp(-x)).
[[nodiscard]] inline double logistic(double x) { return 1.0 / (1.0 + fixedExp(-x)); }
/// 0 below `from`, 1 above `to`, straight between; from != to, either order.
[[nodiscard]] constexpr double ramp(double x, double from, double to) {
  const double t = (x - from) / (to - from);
  return t < 0.0 ? 0.0 : t > 1.0 ? 1.0 : t;
}
[[nodiscard]] constexpr double clamped(double x, double low, double high) {
  return x < low ? low : x > high ? high : x;
}
[[nodiscard]] constexpr int signOf(double x) { return x > 0.0 ? 1 : x < 0.0 ? -1 : 0; }

}  // namespace gapsound
