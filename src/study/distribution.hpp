#pragma once
#include <map>
#include <span>
#include <string>

#include "analysis/account.hpp"
#include "study/statistics.hpp"

namespace gapsound {

/// Down, distance and field position a gain is judged by.
struct Situation {
  int down = 1;
  double distance = 10.0;  // yd
};

/// Medians over the reps in which the thing happened (s, yd/s, yd), and shares in [0, 1].
struct Timing {
  double t_handoff = 0, t_line = 0, t_first_contact = 0, t_end = 0;
  double speed_handoff = 0, depth_handoff = 0, line_speed = 0, best_speed = 0;
  double speed_1s = 0, speed_1_5s = 0, speed_2s = 0;
  double after_contact_mean = 0;     // yd
  double contact_to_end = 0;         // s
  double nearest_defender_line = 0;  // yd
  double defenders_within_3 = 0;
  double never_crossed = 0;  // share of all reps
};

/// How one lane letter was used: share of all reps that crossed there, and their mean gain.
struct LaneUse {
  double share = 0.0, mean = 0.0;
};

/// What N reps of one look came to. Shares, median, p10 and p90 count whole yards; mean and sd are raw.
struct Distribution {
  int n = 0;
  double mean = 0, sd = 0, median = 0, p10 = 0, p90 = 0;
  Interval mean_ci;  // 95 %
  double lost = 0, stuffed = 0, four_plus = 0, ten_plus = 0, twelve_plus = 0, twenty_plus = 0, success = 0;
  double cross_x_mean = 0, cross_x_median = 0;  // of the reps that crossed, real frame
  double cutback_open = 0, cutback_taken = 0, bounced = 0;
  double kept = 0;            // share of reps on which the quarterback kept a read play
  double missed_tackles = 0;  // share of tackle tries
  std::map<std::string, LaneUse> lanes;
  Timing timing;
};
[[nodiscard]] Distribution distributionOf(std::span<const Summary> reps, const Situation& situation = {});

/// One number of every rep, in order.
[[nodiscard]] std::vector<double> yardsOf(std::span<const Summary> reps);
/// 40, 60, 100 % of the distance on first, second, later downs.
[[nodiscard]] double yardsToSucceed(const Situation& situation);
[[nodiscard]] bool succeeds(double yards, const Situation& situation);

}  // namespace gapsound
