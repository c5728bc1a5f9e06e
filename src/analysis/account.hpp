#pragma once
#include <optional>
#include <string>
#include <vector>

#include "analysis/lanes.hpp"
#include "tape/tape.hpp"

namespace gapsound {

/// The numbers of one rep that studies add up. Times in seconds, NaN-free: -1 means it never happened.
struct Summary {
  double yards = 0.0;
  Ending ending = Ending::tackled;
  double t_handoff = -1, t_line = -1, t_first_contact = -1, t_end = 0;
  double speed_handoff = 0, depth_handoff = 0, speed_line = 0, best_speed = 0;
  double speed_1s = 0, speed_1_5s = 0, speed_2s = 0;
  double cross_x = 0;  // ball's x at the line, real frame; valid when t_line >= 0
  bool cutback_open = false, cutback_taken = false, bounced = false;
  bool kept = false;     // a read play on which the quarterback ran
  std::string lane_gap;  // gap he crossed in, "" when never
  Relation lane_relation = Relation::designed;
  double nearest_defender_line = 0;  // yd, at the crossing
  int defenders_within_3 = 0;        // at the crossing
  double yards_after_contact = 0;    // valid when t_first_contact >= 0
  int first_contact_man = kNobody;
  int tackle_tries = 0, tackle_misses = 0;  // tries: tackles, assists and misses, as charting counts them
  double line_forward_1s = 0, line_forward_2s = 0, line_forward_3s = 0;  // offensive line's mean, yd
  double backers_forward_1s = 0, backers_forward_1_5s = 0, backers_forward_2s = 0;
  int blockers = 0, blockers_touched = 0;  // before the crossing (or the end)
  // met: had hands on somebody; through: on a backer or a defensive back first.
  int pullers = 0, pullers_met = 0, pullers_through = 0;
  // After the hand-off a free defender within 8 yd of the ball under 1 yd/s for a whole second.
  bool stood_still = false;
  // Bit k - 11 of defender k: he decided on a fit other than the called one; he hit or wrapped the carrier.
  std::uint32_t fitted_otherwise = 0, had_contact = 0;
  std::uint64_t hash = 0;
};
[[nodiscard]] Summary summarize(const Tape& tape);

/// One defender's line in the account.
struct FitLine {
  int man = kNobody;
  int level = 1;
  std::string called, saw, did, gap, result;
  double t = 0.0;  // when he decided, s
};

/// A rep told in words, in order.
struct Account {
  Summary summary;
  std::vector<FitLine> fits;
  std::vector<std::string> why;       // sentences
  std::vector<std::string> tacklers;  // ids
  std::optional<Lane> lane;           // the lane he crossed in
};
[[nodiscard]] Account accountOf(const Tape& tape);

/// Moments worth a picture: snap, reads, hand-off, decision, crossing, first contact, end (seconds,
/// ascending).
struct Moment {
  double t = 0.0;
  std::string words;
};
[[nodiscard]] std::vector<Moment> momentsOf(const Tape& tape);

}  // namespace gapsound
