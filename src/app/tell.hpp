#pragma once
#include <map>
#include <string>

#include "app/desk.hpp"

namespace gapsound {

/// How smoothly the window has drawn so far.
struct Smoothness {
  int frames = 0;
  double worst_ms = 0.0;   // longest frame since the first second, ms
  double playing_s = 0.0;  // time spent playing, and frames drawn in it
  int playing_frames = 0;
};

/// What is shown and where it stands, a line each ("playing yes", "place 12 40 30 18 Look"), for scripts that
/// drive the window from outside.
[[nodiscard]] std::string tellingOf(const Desk& desk, const std::map<std::string, PageRect>& places,
                                    const Smoothness& smoothness);

}  // namespace gapsound
