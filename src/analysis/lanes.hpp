#pragma once
#include <string>
#include <vector>

#include "scenario/setup.hpp"
#include "tape/tape.hpp"

namespace gapsound {

enum class LaneState { closed, contested, open };
enum class Relation { designed, inside, bounce, cutback };
enum class Cause { none, there, absent, beaten, missed };

/// A way through between two adjacent bodies, cut at one depth, edge to edge.
struct Lane {
  double left = 0.0, right = 0.0;  // x of the free interval, yd
  double y = 1.0;                  // depth of the cut, yd
  int left_man = kNobody, right_man = kNobody;
  std::string gap;          // "B+": by where its centre lies against the blockers' spots at the snap
  int owner = kNobody;      // defender whose fit it is; kNobody when nobody owns it
  double t_runner = 0.0;    // s until the ball can be at its centre
  double t_defender = 0.0;  // s until the earliest free defender can
  double margin = 0.0;      // t_defender - t_runner, s; positive = open
  LaneState state = LaneState::closed;
  Relation relation = Relation::inside;
  Cause cause = Cause::none;
  [[nodiscard]] double width() const { return right - left; }
  [[nodiscard]] double centre() const { return 0.5 * (left + right); }
};

/// The lanes across the front at one frame, from left to right. Cut at y 0 to 2, or 1 yd ahead of
/// the ball once it is past. Bodies within the cut bound them; passable from 1.2 yd, clean from 2.0.
[[nodiscard]] std::vector<Lane> lanesAt(const Setup& setup, const Frame& frame);
/// The same of a tape's frame, with the man who ran in the end as the carrier.
[[nodiscard]] std::vector<Lane> lanesAt(const Tape& tape, const Frame& frame);
/// The same at one tick of a tape; owners follow what the men have decided by then, so that a lane belongs to
/// the man whom the state of the man in front hands it to.
[[nodiscard]] std::vector<Lane> lanesAt(const Tape& tape, int tick);
/// The lane at x (yd across), or the one nearest to it; nullptr when there is none. Points into `lanes`.
[[nodiscard]] const Lane* nearestLane(const std::vector<Lane>& lanes, double x);

}  // namespace gapsound
