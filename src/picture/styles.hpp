#pragma once
#include <array>
#include <cstddef>
#include <cstdint>
#include <string_view>

namespace gapsound {

// Everything a theme must say how to draw. One name here is one entry in each file of assets/themes.
// clang-format off
#define GAPSOUND_STYLES(X)                                                                            \
  X(ground) X(yard_line) X(hash_tick) X(sideline) X(scrimmage) X(to_gain) X(yard_number) X(offense)   \
  X(offense_letter) X(carrier) X(carrier_letter) X(defense_1) X(defense_2) X(defense_3)               \
  X(defense_letter) X(defense_3_letter) X(muted) X(muted_letter) X(selected) X(shadow) X(shoulder)    \
  X(contact) X(ball) X(trail_offense) X(trail_defense) X(trail_ball) X(lane_open) X(lane_contested)   \
  X(lane_closed) X(caliper) X(caliper_text) X(cell_open) X(cell_contested) X(cell_closed)             \
  X(cell_text) X(cell_strong) X(ladder_rule) X(ladder_text) X(tick_saw) X(tick_decided) X(tick_did)   \
  X(tick_ball) X(play_head) X(title) X(text) X(strong) X(small) X(caution) X(panel) X(frame)          \
  X(grid) X(axis) X(axis_text) X(curve) X(curve_2) X(point) X(point_2) X(band) X(band_2) X(bar)       \
  X(bar_2) X(mark) X(mark_text) X(block_path) X(run_path) X(fit_path) X(fake_path) X(dot) X(option)   \
  X(option_ring) X(option_letter) X(heat_1) X(heat_2) X(heat_3) X(heat_4) X(heat_5) X(heat_6)         \
  X(heat_7) X(heat_text) X(heat_text_strong) X(heat_frame) X(heat_hatch)
// clang-format on

/// What a shape is; a theme says what that looks like.
enum class StyleId : std::uint8_t {
#define X(name) name,
  GAPSOUND_STYLES(X)
#undef X
};

inline constexpr auto kStyleNames = std::to_array<std::string_view>({
#define X(name) #name,
    GAPSOUND_STYLES(X)
#undef X
});
inline constexpr std::size_t kStyles = kStyleNames.size();

}  // namespace gapsound
