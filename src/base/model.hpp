#pragma once
#include <array>
#include <cstddef>
#include <string_view>

namespace gapsound {

// Every constant of the simulation. Values, units, ranges and sources stand in assets/model.json;
// a name here without an entry there (or the reverse) is refused when the file is read.
// clang-format off
#define GAPSOUND_MODEL_CONSTANTS(X)                                                                        \
  X(loco_response_s) X(loco_brake_skill) X(loco_brake_line) X(loco_lateral_skill) X(loco_lateral_dl)       \
  X(loco_lateral_ol) X(loco_curve_loss) X(loco_turn_rate) X(loco_crossover) X(loco_pads) X(see_defense_s)  \
  X(see_offense_s) X(first_step_s) X(first_step_sd) X(snap_react_s) X(snap_react_sd) X(back_start_s)       \
  X(read_spread) X(read_spread_backer) X(read_lapse_share) X(read_lapse_s) X(read_evidence)                \
  X(read_patience_s) X(read_turn_s) X(key_back) X(key_pull) X(key_line) X(key_back_deep) X(key_man_deep)   \
  X(state_upfield_y) X(state_high_y) X(state_washed_yd) X(state_door_wide) X(state_too_wide)               \
  X(state_late_y) X(state_late_depth) X(state_force_deep_y) X(state_force_lost) X(state_penetrated_y)      \
  X(state_moved_back_yd) X(state_crossed_yd) X(force_tight_yd) X(line_get_off) X(get_off_sd)               \
  X(line_flow_share) X(slant_width_yd) X(line_free_s) X(line_chase) X(lever_chase) X(edge_chase)           \
  X(edge_pile_yd) X(edge_spill_inside) X(edge_spill_rush) X(edge_squeeze) X(declare_engaged_yd)            \
  X(declare_free_line_yd) X(backer_step) X(backer_lean) X(backer_fit_speed) X(backer_attack_yd)            \
  X(backer_attack) X(shoot_speed) X(fit_depth) X(fit_depth_slope) X(fit_over_yd) X(fit_inside_yd)          \
  X(fit_inside_lead_yd) X(fit_fill_yd) X(fit_line_yd) X(fit_overlap_yd) X(fit_behind_yd)                   \
  X(fit_trail_from_yd) X(fit_trail_first_yd) X(fit_trail_yd) X(declare_near_yd) X(declare_lead_s)          \
  X(declare_stall_yd) X(declare_stall_yps)                                                                  \
  X(lever_first) X(lever_overlap) X(lever_force) X(lever_corner) X(lever_cutback) X(safety_bail)           \
  X(corner_bail) X(cover_lead_s) X(cover_inside_yd) X(cover_on_top_yd) X(alley_outside_yd)               \
  X(alley_called_yd) X(alley_insert_yd) X(alley_window_yd)                                                 \
  X(alley_depth) X(alley_last_man_yd) X(alley_depth_slope) X(force_edge_yd) X(force_outside_yd)            \
  X(force_blocker_near) X(force_free_arm) X(force_widest_yd) X(force_depth) X(cutback_behind_yd)           \
  X(cutback_depth) X(cutback_speed) X(cutback_release_y) X(flow_past_yd) X(flow_behind_yd) X(flow_speed)   \
  X(mirror_range_yd) X(mirror_square_yd) X(mirror_close_yps) X(mirror_give_yps) X(mirror_rate)             \
  X(lead_speed) X(lead_upfield) X(lead_from_yd) X(traffic_ahead_yd) X(traffic_clear_yd) X(traffic_swerve_yd) X(balance_range_yd) X(balance_miss_yd) X(balance_speed)    \
  X(balance_slope) X(fire_pace) X(fire_forward) X(fire_slant) X(fire_within_yd) X(pass_off_yd) X(pull_pace) X(turn_up_pace) X(lead_pace) X(climb_pace) X(pull_depth)      \
  X(pull_bucket_yd) X(kick_turn_yd) X(wrap_turn_yd) X(wrap_round_yd) X(wrap_near_yd) X(kick_inside_yd)     \
  X(log_sees_yd) X(zone_head_yd) X(climb_head_yd) X(climb_hold_s) X(climb_level_gap) X(climb_level_zone)   \
  X(climb_latest_gap) X(climb_latest_zone) X(mesh_pace) X(back_burst) X(mesh_reach_yd) X(read_before_s)    \
  X(read_lead_s) X(read_commit_yd) X(read_upfield_yd) X(read_width_yd) X(show_set_s) X(show_past_s)        \
  X(door_helmet_yd) X(door_judge_yd) X(door_shut_yd) X(door_round_yd) X(run_cruise) X(run_cut_cost)        \
  X(run_screen_s) X(run_blocked_reach) X(run_blocked_growth) X(run_mate_cost) X(run_aim_bonus)             \
  X(run_press) X(run_press_far) X(run_press_shut) X(run_shut_y) X(run_change_cost) X(run_taste)            \
  X(run_pace_base) X(run_pace_daylight) X(run_pace_least) X(run_pace_most) X(run_open_base)                \
  X(patience_lead_yps) X(patience_early_s) X(patience_least_yps) X(run_open_most) X(push_accel)            \
  X(push_speed) X(push_doubled) X(push_shield) X(push_start) X(push_build_s) X(push_luck_pair)             \
  X(push_luck_man) X(push_most) X(touch_momentum) X(touch_edge) X(touch_fade_s) X(wall_share)              \
  X(hands_reach_yd) X(hands_spacing_yd) X(hands_break_yd) X(hands_stiffness) X(hands_damping)              \
  X(hands_drag) X(hands_grip) X(hands_mates_s) X(clinch_damping) X(whiff_share) X(whiff_out_s)             \
  X(shed_base) X(shed_near) X(shed_near_yd) X(shed_luck) X(shed_covered) X(shed_half) X(shed_past)         \
  X(shed_doubled) X(shed_receiver) X(shed_out_s) X(tackle_base) X(tackle_speed) X(tackle_across)           \
  X(tackle_blocked) X(tackle_again_s) X(tackle_reach_free) X(tackle_reach_dive) X(tackle_stretch)          \
  X(tackle_reach_blocked) X(miss_out_s) X(miss_keep_free) X(miss_keep_blocked) X(wrap_back_wins)           \
  X(wrap_keep_won) X(wrap_keep_lost) X(wrap_decel) X(wrap_second) X(wrap_third) X(wrap_least_s)            \
  X(wrap_longest_s) X(fall_forward_yd) X(ground_drag)
// clang-format on

/// Plain values of all constants, in the units of assets/model.json.
struct Model {
#define X(name) double name = 0.0;
  GAPSOUND_MODEL_CONSTANTS(X)
#undef X
};

struct ModelField {
  std::string_view name;
  double Model::*value;
};

/// All constants by name, in the order of the list above.
inline constexpr auto kModelFields = std::to_array<ModelField>({
#define X(name) {#name, &Model::name},
    GAPSOUND_MODEL_CONSTANTS(X)
#undef X
});

}  // namespace gapsound
