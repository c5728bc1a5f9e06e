#include "painters/window/outlines.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace gapsound {
namespace {

void addArc(std::vector<Vec2>& outline, Vec2 centre, double radius, double from, double to) {
  const int steps = std::clamp(static_cast<int>(std::ceil(std::sqrt(radius) * 1.6)), 2, 16);
  for (int i = 0; i <= steps; ++i) {
    const double angle = from + (to - from) * i / steps;
    outline.push_back(centre + radius * Vec2{std::cos(angle), std::sin(angle)});
  }
}

double turnAt(const std::vector<Vec2>& outline, std::size_t i) {
  const std::size_t n = outline.size();
  const Vec2 before = outline[(i + n - 1) % n];
  const Vec2 here = outline[i];
  return cross(here - before, outline[(i + 1) % n] - here);
}

double signedArea(const std::vector<Vec2>& outline) {
  double sum = 0.0;
  for (std::size_t i = 0; i < outline.size(); ++i)
    sum += cross(outline[i], outline[(i + 1) % outline.size()]);
  return 0.5 * sum;
}

bool holds(const std::array<Vec2, 3>& t, Vec2 p) {
  const double a = cross(t[1] - t[0], p - t[0]);
  const double b = cross(t[2] - t[1], p - t[1]);
  const double c = cross(t[0] - t[2], p - t[2]);
  return a >= 0.0 && b >= 0.0 && c >= 0.0;
}

bool isEar(const std::vector<Vec2>& outline, std::size_t i) {
  if (turnAt(outline, i) <= 0.0) return false;
  const std::size_t n = outline.size();
  const std::array<Vec2, 3> ear{outline[(i + n - 1) % n], outline[i], outline[(i + 1) % n]};
  return std::none_of(outline.begin(), outline.end(), [&](Vec2 p) {
    return std::find(ear.begin(), ear.end(), p) == ear.end() && holds(ear, p);
  });
}

}  // namespace

std::vector<Vec2> circleOutline(Vec2 centre, double radius) {
  const int corners = std::clamp(static_cast<int>(std::ceil(7.0 * std::sqrt(std::max(radius, 1.0)))), 10, 72);
  std::vector<Vec2> outline;
  for (int i = 0; i < corners; ++i) {
    const double angle = 2.0 * std::numbers::pi * i / corners;
    outline.push_back(centre + radius * Vec2{std::cos(angle), std::sin(angle)});
  }
  return outline;
}

std::vector<Vec2> boxOutline(const PageRect& box, double radius) {
  const double r = std::min({radius, 0.5 * box.width, 0.5 * box.height});
  if (r <= 0.0) {
    return {{box.x, box.y}, {box.right(), box.y}, {box.right(), box.bottom()}, {box.x, box.bottom()}};
  }
  constexpr double kRight = 0.5 * std::numbers::pi;
  std::vector<Vec2> outline;
  addArc(outline, {box.right() - r, box.y + r}, r, -kRight, 0.0);
  addArc(outline, {box.right() - r, box.bottom() - r}, r, 0.0, kRight);
  addArc(outline, {box.x + r, box.bottom() - r}, r, kRight, 2.0 * kRight);
  addArc(outline, {box.x + r, box.y + r}, r, 2.0 * kRight, 3.0 * kRight);
  return outline;
}

bool isConvex(const std::vector<Vec2>& outline) {
  bool left = false;
  bool right = false;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    left |= turnAt(outline, i) > 1e-9;
    right |= turnAt(outline, i) < -1e-9;
  }
  return !(left && right);
}

std::vector<std::array<Vec2, 3>> triangles(std::vector<Vec2> outline) {
  if (signedArea(outline) < 0.0) std::reverse(outline.begin(), outline.end());
  std::vector<std::array<Vec2, 3>> found;
  while (outline.size() >= 3) {
    std::size_t ear = 0;
    while (ear < outline.size() && !isEar(outline, ear)) ++ear;
    if (ear == outline.size()) ear = 0;  // only slivers are left
    const std::size_t n = outline.size();
    found.push_back({outline[(ear + n - 1) % n], outline[ear], outline[(ear + 1) % n]});
    outline.erase(outline.begin() + static_cast<std::ptrdiff_t>(ear));
  }
  return found;
}

std::vector<std::vector<Vec2>> dashed(const std::vector<Vec2>& points, bool closed,
                                      const std::vector<double>& dash) {
  std::vector<std::vector<Vec2>> runs;
  std::size_t part = 0;
  double left = dash.front();
  bool ink = true;
  if (!points.empty()) runs.push_back({points.front()});
  const std::size_t legs = points.size() - (closed ? 0 : 1);
  for (std::size_t i = 0; i < legs; ++i) {
    const Vec2 to = points[(i + 1) % points.size()];
    Vec2 at = points[i];
    double leg = distance(at, to);
    while (leg > left) {
      at += left * unit(to - at);
      leg -= left;
      if (ink) runs.back().push_back(at);
      ink = !ink;
      if (ink) runs.push_back({at});
      part = (part + 1) % dash.size();
      left = std::max(dash[part], 0.5);
    }
    left -= leg;
    if (ink) runs.back().push_back(to);
  }
  std::erase_if(runs, [](const auto& run) { return run.size() < 2; });
  return runs;
}

}  // namespace gapsound
