#pragma once
#include <array>
#include <string_view>

/// Means of public combine tables by position group: men with both a ten and a forty, all men for the
/// shuttle.
namespace gapsound::combine {

struct Group {
  std::string_view name;
  double ten_s, forty_s;  // on the combine clock
  double top_speed, tau;  // sprint law behind a clock that starts 0.25 s late
  double shuttle_s;       // 5-10-5
  bool line;              // brakes and cuts like a lineman
};

inline constexpr std::array<Group, 13> kGroups{{
    {"WR", 1.57, 4.50, 11.00, 1.14, 4.27, false},
    {"CB", 1.56, 4.49, 11.05, 1.14, 4.23, false},
    {"S", 1.58, 4.55, 10.85, 1.13, 4.28, false},
    {"RB", 1.58, 4.55, 10.91, 1.15, 4.31, false},
    {"FB", 1.66, 4.77, 10.34, 1.17, 4.41, false},
    {"TE", 1.64, 4.74, 10.37, 1.15, 4.42, false},
    {"QB", 1.67, 4.82, 10.16, 1.15, 4.37, false},
    {"LB", 1.63, 4.69, 10.52, 1.15, 4.36, false},
    {"DE", 1.68, 4.80, 10.36, 1.21, 4.47, false},
    {"DT", 1.77, 5.10, 9.66, 1.22, 4.70, true},
    {"OT", 1.82, 5.21, 9.45, 1.25, 4.78, true},
    {"OG", 1.83, 5.27, 9.32, 1.24, 4.80, true},
    {"C", 1.82, 5.22, 9.42, 1.24, 4.69, true},
}};

constexpr const Group& group(std::string_view name) {
  for (const Group& g : kGroups)
    if (g.name == name) return g;
  throw name;  // a mistyped name ends the test program
}

}  // namespace gapsound::combine
