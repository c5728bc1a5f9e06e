#pragma once
#include <string>
#include <vector>

#include "picture/display_list.hpp"
#include "tape/tape.hpp"

namespace gapsound {

enum class LadderKind : std::uint8_t { saw, decided, did, ball };

/// One tick of the ladder: row 0 is the ball, 1 to 3 the levels of the defense.
struct LadderTick {
  double t = 0.0;  // s
  int row = 0;
  int man = kNobody;
  LadderKind kind = LadderKind::saw;
  std::string words;  // "M decides: over the top"
};
/// Everything a level saw, decided and did, in order of time.
[[nodiscard]] std::vector<LadderTick> ladderTicks(const Tape& tape);

struct LadderLook {
  PageRect box;            // page
  double text = 14.0;      // page units
  int selected = kNobody;  // his ticks are ringed
};
/// Timeline with a row per level and the play head at `t`.
[[nodiscard]] Panel ladderPanel(const Tape& tape, double t, const LadderLook& look);
/// Where a tick stands, and back: the time under a page x, held to the tape.
[[nodiscard]] Vec2 ladderPoint(const Tape& tape, const LadderLook& look, const LadderTick& tick);
[[nodiscard]] double ladderTime(const Tape& tape, const LadderLook& look, double page_x);

}  // namespace gapsound
