#pragma once
#include <array>
#include <cstdint>
#include <optional>
#include <vector>

#include "analysis/lanes.hpp"
#include "minds/frame.hpp"
#include "picture/display_list.hpp"
#include "scenario/setup.hpp"

namespace gapsound {

enum class Calipers : std::uint8_t { none, open, passable };

/// How much of a frame is shown, and where.
struct FieldLook {
  PageRect box{0.0, 0.0, 1280.0, 720.0};    // page
  Vec2 low{-16.0, -8.0}, high{16.0, 12.0};  // yd that must be seen; more is shown where the box has room
  double symbol = 0.40;                     // radius of a man's sign, yd
  double text = 15.0;                       // size of free labels, page units
  double stroke = 1.0;                      // factor on line widths
  bool names = true;
  bool lanes = true;
  Calipers calipers = Calipers::none;
  std::optional<double> caliper_x;  // the lane at this x, yd, is measured too, however it stands
  bool yard_numbers = true;
  std::array<bool, 4> shown{true, true, true, true};  // offense, levels 1, 2, 3; the rest is greyed
  int selected = kNobody;
};

/// One frame as the coach draws it: ground, lanes, contact, 22 men, ball, names, calipers. `past` are the
/// frames just before it, oldest first; each man gets their path as a trail. Lanes come from lanesAt().
[[nodiscard]] Panel fieldPanel(const Setup& setup, const Frame& frame, const FieldLook& look,
                               const std::vector<Lane>& lanes = {}, const std::vector<Frame>& past = {});
/// The same men as thin outlines, for a held rep under the live one; lay it below the live panel's men.
[[nodiscard]] Panel shadowPanel(const Setup& setup, const Frame& frame, const FieldLook& look);

}  // namespace gapsound
