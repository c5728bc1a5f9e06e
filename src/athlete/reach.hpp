#pragma once
#include <array>

#include "base/vec2.hpp"

namespace gapsound {

/// Under the sprint law a = (u - v)/T with |u| <= V, the places a man can be t seconds from now fill exactly
/// a disc: centre p + v g(t), radius V (t - g(t)), g(t) = T (1 - exp(-t/T)). "Can he be there by t" is a
/// distance. Integrate the law for constant u, then take the union over |u| <= V.
[[nodiscard]] double carryOf(double t, double tau);  // g(t), s

struct Disc2 {
  Vec2 centre;
  double radius = 0.0;
};
[[nodiscard]] Disc2 reachAfter(Vec2 pos, Vec2 vel, double top_speed, double tau, double t);

/// Sample times shared by everything that asks "who gets there first", with g tabled for one common T.
struct ReachSamples {
  static constexpr int kCount = 22;
  static constexpr int kNear = 17;      // samples up to 2.2 s; the rest are for long chases
  static constexpr double kTau = 1.17;  // s, mean of fit B over men; locomotion keeps each man's own T
  std::array<double, kCount> t{};       // every 0.1 s to 1.2, 0.2 s to 2.2, then coarser to 4.4 s
  std::array<double, kCount> carry{};   // g(t)
  std::array<double, kCount> reach{};   // t - g(t)
};
[[nodiscard]] const ReachSamples& reachSamples();

/// First sampled time at which he can be within `radius` of a still goal, refined linearly between samples;
/// s. Returns kNever when it takes longer than the last sample.
inline constexpr double kNever = 9.0;
[[nodiscard]] double timeToReach(Vec2 pos, Vec2 vel, double top_speed, Vec2 goal, double radius);

/// Where and when he can first meet a mover that keeps its velocity.
struct Meeting {
  double t = kNever;
  Vec2 point;
};
[[nodiscard]] Meeting firstMeeting(Vec2 pos, Vec2 vel, double top_speed, Vec2 mover, Vec2 mover_vel,
                                   double radius);

}  // namespace gapsound
