#pragma once
#include <cstdint>
#include <vector>

#include "minds/frame.hpp"

namespace gapsound {

enum class Happening : std::uint8_t {
  snap,
  handoff,
  crosses_line,
  saw_key,
  decides,
  engages,
  whiffs,
  sheds,
  climbs,
  first_contact,
  tries_tackle,
  misses_tackle,
  wraps,
  down,
  shoots,
  slants,
  end_state,
  backer_state,
  out_of_bounds,
  score,
  keeps,
  tosses,
  errs,
  line_state
};

/// Something a coach would remark on. `code` is an EndState, LineState, BackerState, Fit, FaultKind or a
/// direction, by kind.
struct Event {
  int tick = 0;
  Happening what = Happening::snap;
  int man = kNobody;    // who
  int other = kNobody;  // whom
  int code = 0;
};

enum class Ending : std::uint8_t { tackled, forward_progress, out, score, time };

/// What a rep leaves behind, in the frame of the Setup it was played from.
struct Record {
  std::vector<Frame> frames;  // one a tick, frames[0] is the snap (before a start from film: reckoned back)
  std::vector<Event> events;  // in order of tick, then man
  Ending ending = Ending::tackled;
  double yards = 0.0;  // forward-most progress of the ball past the line
  int end_tick = 0;
  bool kept = false;      // a read play on which the quarterback pulled the ball and ran
  int handoff_tick = -1;  // also of a toss, when it is caught; from film past it: the start; -1: never
  int line_tick = -1;     // ball crosses the line of scrimmage; -1: never
  int first_contact_tick = -1;
  std::uint64_t hash = 0;  // of every body's exact state at every tick
};

}  // namespace gapsound
