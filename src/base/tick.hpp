#pragma once

namespace gapsound {

/// Time is a count of steps since the snap; seconds are derived, never added up.
inline constexpr int kTicksPerSecond = 60;
inline constexpr double kStep = 1.0 / kTicksPerSecond;  // s

constexpr double seconds(int tick) { return static_cast<double>(tick) / kTicksPerSecond; }
/// Nearest tick to a time in seconds.
constexpr int ticks(double s) { return static_cast<int>(s * kTicksPerSecond + (s < 0 ? -0.5 : 0.5)); }

}  // namespace gapsound
