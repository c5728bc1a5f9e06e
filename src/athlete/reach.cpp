#include "athlete/reach.hpp"

#include "base/numbers.hpp"

namespace gapsound {

double carryOf(double t, double tau) { return tau * (1.0 - fixedExp(-t / tau)); }

Disc2 reachAfter(Vec2 pos, Vec2 vel, double top_speed, double tau, double t) {
  const double g = carryOf(t, tau);
  return {pos + g * vel, top_speed * (t - g)};
}

const ReachSamples& reachSamples() {
  static const ReachSamples samples = [] {
    ReachSamples s;
    for (int k = 0; k < ReachSamples::kCount; ++k) {
      const auto i = static_cast<std::size_t>(k);
      s.t[i] = k < 12                    ? 0.1 * (k + 1)
               : k < ReachSamples::kNear ? 1.2 + 0.2 * (k - 11)
                                         : 2.2 + 0.44 * (k - 16);
      s.carry[i] = carryOf(s.t[i], ReachSamples::kTau);
      s.reach[i] = s.t[i] - s.carry[i];
    }
    return s;
  }();
  return samples;
}

double timeToReach(Vec2 pos, Vec2 vel, double top_speed, Vec2 goal, double radius) {
  return firstMeeting(pos, vel, top_speed, goal, {}, radius).t;
}

Meeting firstMeeting(Vec2 pos, Vec2 vel, double top_speed, Vec2 mover, Vec2 mover_vel, double radius) {
  const ReachSamples& s = reachSamples();
  double short_before = length(mover - pos) - radius;
  if (short_before <= 0.0) return {0.0, mover};
  double t_before = 0.0;
  for (std::size_t k = 0; k < ReachSamples::kCount; ++k) {
    const Vec2 there = mover + s.t[k] * mover_vel;
    const double missing = length(there - pos - s.carry[k] * vel) - radius - top_speed * s.reach[k];
    if (missing <= 0.0) {
      const double part = short_before / (short_before - missing);
      const double t = t_before + part * (s.t[k] - t_before);
      return {t, mover + t * mover_vel};
    }
    short_before = missing;
    t_before = s.t[k];
  }
  return {kNever, mover + s.t.back() * mover_vel};
}

}  // namespace gapsound
