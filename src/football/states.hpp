#pragma once
#include <cstdint>
#include <optional>
#include <string_view>

namespace gapsound {

/// What a blocker shows before he does his job: his own job at once, a pass set, or a step past the man on
/// him.
enum class Show : std::uint8_t { none, pass_set, past };

/// How contact treated the end man on the line, as another man can see it.
enum class EndState : std::uint8_t {
  open,
  spilled,
  kicked,
  boxed_firm,
  boxed_wide,
  washed,
  reached,
  logged,
  upfield,
  crossed_inside,
  pinned
};
/// What became of an interior lineman.
enum class LineState : std::uint8_t {
  held,
  moved_back,
  crossed_in,
  crossed_out,
  penetrated,
  pinned,
  trapped
};
/// What the first backer (b1) is seen to do or suffer.
enum class BackerState : std::uint8_t {
  reading,
  over_top,
  inside_fit,
  spilled_wrapper,
  boxed_wrapper,
  kicked_out,
  too_wide,
  under_pile,
  shot_hit,
  shot_miss,
  late
};
/// The backer behind the play.
enum class OverlapState : std::uint8_t {
  reading,
  overlap_under,
  overlap_over,
  fold,
  hang,
  shot_hit,
  shot_backblocked,
  cut_off
};
enum class ForceState : std::uint8_t { reading, set, deep, inside_lost, cracked, kicked, logged };
enum class SafetyState : std::uint8_t { reading, alley_fit, overrun, late, cutback_held, flowed };

/// What a man decides to do about it: where he fits, in words that geometry can test.
enum class Fit : std::uint8_t {
  called,          // whatever his call says, no correction
  over_top,        // outside the end, downhill
  inside,          // between the end and the next body inside
  new_edge,        // he is the edge now: outside everybody
  outside_half,    // outer half of a wide lane
  inside_half,     // inner half of a wide lane
  hold,            // keep depth and shoulders, go nowhere
  under,           // between the double team and the end, behind b1
  tight_double,    // over the double team
  fold,            // slow, then the open gap inside
  shoot,           // straight through the gap the puller left
  hang,            // stay behind the ball
  alley,           // inside-out between force and box
  insert,          // inside b1
  cutback,         // square behind the flow
  cutback_window,  // come forward into the window behind an over-run
  replace_gap,     // take the gap a shooting mate missed
  force_set,       // outside arm free at the ball's depth
  force_tight,     // force, squeezed in
  deep,            // out of the run fit until the ball crosses
  replace_force,   // the edge where the force was
  over_line,       // over the lineman in front, into the gap he lost
  slow             // slow behind the lineman in front, to the side the back declares
};

[[nodiscard]] std::string_view nameOf(EndState s);
[[nodiscard]] std::string_view nameOf(LineState s);
[[nodiscard]] std::string_view nameOf(BackerState s);
[[nodiscard]] std::string_view nameOf(OverlapState s);
[[nodiscard]] std::string_view nameOf(ForceState s);
[[nodiscard]] std::string_view nameOf(SafetyState s);
[[nodiscard]] std::string_view nameOf(Fit f);
[[nodiscard]] std::optional<EndState> endStateNamed(std::string_view name);
[[nodiscard]] std::optional<BackerState> backerStateNamed(std::string_view name);
[[nodiscard]] std::optional<Fit> fitNamed(std::string_view name);

inline constexpr int kEndStates = 11;
inline constexpr int kBackerStates = 11;
inline constexpr int kForceStates = 7;
inline constexpr int kFits = 23;
inline constexpr int kLineStates = 7;

enum class Structure : std::uint8_t { spill, box };

/// The level-fix tables: state of the man in front -> fit. Read from assets/library/fits.json.
struct FitTable {
  // [structure][EndState]
  Fit first_backer[2][kEndStates] = {};
  Fit fill_backer[2][kEndStates] = {};
  Fit overlap_backer[2][kEndStates] = {};
  // [LineState of the lineman in front], runs without a puller; called: the end decides
  Fit first_by_line[kLineStates] = {};
  Fit fill_by_line[kLineStates] = {};
  Fit overlap_by_line[kLineStates] = {};
  // [BackerState of b1]
  Fit alley[kBackerStates] = {};
  Fit force[kBackerStates] = {};
  Fit cutback[kBackerStates] = {};
  // [ForceState]; called: what he sees of the first backer decides
  Fit alley_by_force[kForceStates] = {};
  Fit corner_by_force[kForceStates] = {};
};

}  // namespace gapsound
