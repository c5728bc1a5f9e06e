#pragma once
#include <optional>

namespace gapsound {

/// The sprint law d(t) = V (t - T (1 - exp(-t/T))) of one man; t counts from his first movement
/// (Furusawa, Hill & Parkinson 1927).
struct SprintFit {
  double top_speed = 0.0;  // V, yd/s
  double tau = 0.0;        // T, s
};

/// A hand-started clock runs this much behind the man; used with hand times and combine times.
inline constexpr double kHandStart = 0.25;  // s, measured 0.2-0.3
/// A man whose splits ask for a time constant outside of this does not run by the sprint law.
inline constexpr double kLeastTau = 0.9, kMostTau = 1.5;  // s

/// The one law that runs 10 yd in `ten_s` and 40 yd in `forty_s` on a clock started `offset_s` after him.
/// Nothing when T falls outside [kLeastTau, kMostTau]: the two times contradict each other.
[[nodiscard]] std::optional<SprintFit> fitSplits(double ten_s, double forty_s, double offset_s);
/// Yards covered t >= 0 seconds after first movement.
[[nodiscard]] double distanceAt(const SprintFit& fit, double t);
/// What the clock shows after `yards` >= 0.
[[nodiscard]] double clockTime(const SprintFit& fit, double yards, double offset_s);

/// Over 40 yd a hand shows 0.22 +- 0.07 s less than a pad-started electronic clock (Mann et al. 2015).
inline constexpr double kHandIsFaster = 0.22;  // s
[[nodiscard]] constexpr double handFromElectronic(double forty_s) { return forty_s - kHandIsFaster; }
/// How far a pad-started electronic clock runs behind the man's first movement, by the two figures above.
inline constexpr double kElectronicStart = kHandStart - kHandIsFaster;  // s
[[nodiscard]] constexpr double electronicFromHand(double forty_s) { return forty_s + kHandIsFaster; }

}  // namespace gapsound
