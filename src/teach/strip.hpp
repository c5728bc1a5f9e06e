#pragma once
#include <string>
#include <vector>

#include "picture/display_list.hpp"
#include "tape/tape.hpp"

namespace gapsound {

struct StripFrame {
  double t = 0.0;     // s after the snap
  std::string words;  // short; may be empty
};

/// 6 to 8 frames at the moments that mattered, in order of time; quiet stretches are filled in.
[[nodiscard]] std::vector<StripFrame> momentsForStrip(const Tape& tape);
/// n >= 2 frames from the snap to the end, evenly spaced.
[[nodiscard]] std::vector<StripFrame> evenFrames(const Tape& tape, int n);

struct StripLook {
  double width = 1584.0, height = 1224.0;  // page units; a letter sheet on its side at 144 to the inch
  int rows = 2;
  FieldView view{{-9.4, -8.2}, {9.4, 12.9}};  // yd that must be seen in every frame
  double symbol = 8.8;                        // least radius of a man's sign, page units
};
/// A page for handing out.
[[nodiscard]] StripLook handoutStrip();
/// Wide page of 12 frames of the box, for judging a rep at a glance.
[[nodiscard]] StripLook judgingStrip();

/// All frames on one page, each with its time and words, title above, caution below.
[[nodiscard]] DisplayList stripPage(const Tape& tape, const std::vector<StripFrame>& frames,
                                    const StripLook& look);

}  // namespace gapsound
