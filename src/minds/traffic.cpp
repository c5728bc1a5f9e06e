#include "minds/traffic.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace gapsound {
namespace {

struct Traffic {
  std::array<Vec2, kMen> at;  // ahead, to the left; yd
  std::size_t n = 0;
  double nearest = 9.0;  // yd ahead
};

// Who stands in his way there, or would once he has swerved.
Traffic trafficAhead(const Glimpse& g, const Model& m, Vec2 path, double speed) {
  Traffic traffic;
  for (int i = 0; i < kMen; ++i) {
    const Pose& man = g.man(i);
    const bool in_the_way = i >= kOffense || man.engaged != kNobody;
    if (i == g.selfIndex() || i == g.carrier() || !in_the_way || dot(man.vel, path) > 0.7 * speed) continue;
    const Vec2 rel = g.place(i) - g.self().pos;
    const double ahead = dot(rel, path);
    if (ahead < 0.2 || ahead > m.traffic_ahead_yd) continue;
    const double left = cross(path, rel);
    traffic.at[traffic.n++] = {ahead, left};
    if (std::abs(left) < m.traffic_clear_yd) traffic.nearest = std::min(traffic.nearest, ahead);
  }
  return traffic;
}

// How far he has to swerve to that side (+1 left) to get by all of them.
double swerve(const Traffic& traffic, double clear, double side) {
  double off = 0.0;
  for (std::size_t pass = 0; pass < traffic.n; ++pass)
    for (std::size_t i = 0; i < traffic.n; ++i)
      if (std::abs(side * traffic.at[i].y - off) < clear) off = side * traffic.at[i].y + clear;
  return off;
}

}  // namespace

Vec2 roundTraffic(const Glimpse& g, const Model& m, Vec2 want) {
  const double speed = length(want);
  if (speed < 1.0) return want;
  const Vec2 path = unit(want);
  const Traffic traffic = trafficAhead(g, m, path, speed);
  if (traffic.nearest > m.traffic_ahead_yd) return want;
  const double left = swerve(traffic, m.traffic_clear_yd, +1.0);
  const double right = swerve(traffic, m.traffic_clear_yd, -1.0);
  const double off = left < right ? left : -right;
  if (std::abs(off) > m.traffic_swerve_yd) return want;
  return speed * unit(std::max(traffic.nearest, 0.6) * path + off * leftOf(path));
}

}  // namespace gapsound
