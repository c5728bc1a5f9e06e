#pragma once
#include <cmath>

namespace gapsound {

/// A point or arrow on the field, in yards (or yards per second). x across, y downfield.
struct Vec2 {
  double x = 0.0;
  double y = 0.0;
  bool operator==(const Vec2&) const = default;
};

constexpr Vec2 operator+(Vec2 a, Vec2 b) { return {a.x + b.x, a.y + b.y}; }
constexpr Vec2 operator-(Vec2 a, Vec2 b) { return {a.x - b.x, a.y - b.y}; }
constexpr Vec2 operator-(Vec2 a) { return {-a.x, -a.y}; }
constexpr Vec2 operator*(double s, Vec2 a) { return {s * a.x, s * a.y}; }
constexpr Vec2 operator*(Vec2 a, double s) { return s * a; }
constexpr Vec2& operator+=(Vec2& a, Vec2 b) { return a = a + b; }
constexpr Vec2& operator-=(Vec2& a, Vec2 b) { return a = a - b; }

constexpr double dot(Vec2 a, Vec2 b) { return a.x * b.x + a.y * b.y; }
/// z of the cross product: positive when b points to the left of a.
constexpr double cross(Vec2 a, Vec2 b) { return a.x * b.y - a.y * b.x; }
/// a turned a quarter to the left.
constexpr Vec2 leftOf(Vec2 a) { return {-a.y, a.x}; }
/// sqrt is exact in IEEE arithmetic, so lengths are the same bits everywhere.
inline double length(Vec2 a) { return std::sqrt(dot(a, a)); }
inline double distance(Vec2 a, Vec2 b) { return length(b - a); }
/// Unit vector along a; `otherwise` when a is shorter than 1e-9.
inline Vec2 unit(Vec2 a, Vec2 otherwise = {0.0, 1.0}) {
  const double n = length(a);
  return n > 1e-9 ? (1.0 / n) * a : otherwise;
}
/// a shortened to at most `most` (>= 0).
inline Vec2 shortened(Vec2 a, double most) {
  const double n = length(a);
  return n > most ? (most / n) * a : a;
}
/// x turned over: the mirror of the field.
constexpr Vec2 mirrored(Vec2 a) { return {-a.x, a.y}; }

}  // namespace gapsound
