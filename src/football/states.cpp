#include "football/states.hpp"

#include <array>

namespace gapsound {
namespace {

template <std::size_t N, class E>
std::string_view pick(const std::array<std::string_view, N>& names, E value) {
  return names[static_cast<std::size_t>(value)];
}

constexpr std::array<std::string_view, kEndStates> kEnd = {
    "open",    "spilled", "kicked",  "boxed_firm",     "boxed_wide", "washed",
    "reached", "logged",  "upfield", "crossed_inside", "pinned"};
constexpr std::array<std::string_view, 7> kLine = {"held",       "moved_back", "crossed_in", "crossed_out",
                                                   "penetrated", "pinned",     "trapped"};
constexpr std::array<std::string_view, kBackerStates> kBacker = {
    "reading",  "over_top",   "inside_fit", "spilled_wrapper", "boxed_wrapper", "kicked_out",
    "too_wide", "under_pile", "shot_hit",   "shot_miss",       "late"};
constexpr std::array<std::string_view, 8> kOverlap = {
    "reading", "overlap_under", "overlap_over", "fold", "hang", "shot_hit", "shot_backblocked", "cut_off"};
constexpr std::array<std::string_view, 7> kForce = {"reading", "set",    "deep",  "inside_lost",
                                                    "cracked", "kicked", "logged"};
constexpr std::array<std::string_view, 6> kSafety = {"reading", "alley_fit",    "overrun",
                                                     "late",    "cutback_held", "flowed"};
constexpr std::array<std::string_view, kFits> kFit = {
    "called",      "over_top", "inside",        "new_edge",       "outside_half", "inside_half",
    "hold",        "under",    "tight_double",  "fold",           "shoot",        "hang",
    "alley",       "insert",   "cutback",       "cutback_window", "replace_gap",  "force_set",
    "force_tight", "deep",     "replace_force", "over_line",      "slow"};

}  // namespace

std::string_view nameOf(EndState s) { return pick(kEnd, s); }
std::string_view nameOf(LineState s) { return pick(kLine, s); }
std::string_view nameOf(BackerState s) { return pick(kBacker, s); }
std::string_view nameOf(OverlapState s) { return pick(kOverlap, s); }
std::string_view nameOf(ForceState s) { return pick(kForce, s); }
std::string_view nameOf(SafetyState s) { return pick(kSafety, s); }
std::string_view nameOf(Fit f) { return pick(kFit, f); }

std::optional<EndState> endStateNamed(std::string_view name) {
  for (int i = 0; i < kEndStates; ++i) {
    if (nameOf(static_cast<EndState>(i)) == name) return static_cast<EndState>(i);
  }
  return std::nullopt;
}

std::optional<BackerState> backerStateNamed(std::string_view name) {
  for (int i = 0; i < kBackerStates; ++i) {
    if (nameOf(static_cast<BackerState>(i)) == name) return static_cast<BackerState>(i);
  }
  return std::nullopt;
}

std::optional<Fit> fitNamed(std::string_view name) {
  for (int i = 0; i < kFits; ++i) {
    if (nameOf(static_cast<Fit>(i)) == name) return static_cast<Fit>(i);
  }
  return std::nullopt;
}

}  // namespace gapsound
