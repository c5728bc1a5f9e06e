#pragma once
#include <array>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "base/vec2.hpp"
#include "football/faults.hpp"

namespace gapsound {

enum class Level { high_school, college, pro };
enum class FitOff { man_in_front, call };

/// Snap-to-snap variety of a real opponent and a real defense; part of the call, not of the noise.
struct CallMix {
  double line_spread_yd = 0.0;    // sd of a lineman's alignment across
  double backer_spread_yd = 0.0;  // sd for backers, both ways
  double back_spread_yd = 0.0;    // sd for the secondary, both ways
  double slant_share = 0.0;       // share of snaps in which the line slants a gap
  double shoot_share = 0.0;       // share of snaps in which one backer shoots his gap
  bool operator==(const CallMix&) const = default;
};

struct FieldSpot {
  std::string spot = "middle";  // left_hash, middle, right_hash
  double to_goal = 75.0;        // yd, [1, 99]
  int down = 1;                 // [1, 4]
  double distance = 10.0;       // yd, [1, 99]
  bool operator==(const FieldSpot&) const = default;
};

/// A man in motion at the snap, or traded before it.
struct MotionCall {
  std::string player, kind;  // id of a man of the formation; id or name of a motion
  bool operator==(const MotionCall&) const = default;
};

struct OffensePlan {
  std::string formation;  // id or name
  std::string scheme;     // id or name
  std::string variant = "base";
  std::string direction = "right";  // left, right
  std::string strength = "right";   // left, right
  std::optional<MotionCall> motion;
  std::string splits = "standard";  // a spacing of bodies.json: standard, tight, wide
  bool operator==(const OffensePlan&) const = default;
};

struct DefensePlan {
  std::string front;
  std::string shell = "quarters";
  std::string structure = "spill";                             // spill, box
  std::optional<std::string> structure_left, structure_right;  // runs to that side, where they differ
  std::string strength =
      "formation";  // what the front is set to: formation, receivers, field, boundary, left, right
  std::vector<std::string> checks;  // answers to a lopsided formation, by name
  std::string movement = "none";
  std::string bs_backer = "overlap";  // overlap, fold, shoot, hang
  std::string overlap = "under";      // under, over: where a back-side backer overlaps
  std::string force = "shell";        // shell (as the coverage has it), safety, backer, corner
  std::optional<std::string> force_left, force_right;  // runs to that side, where they differ
  std::string key = "triangle";                        // single, triangle
  std::array<FitOff, 3> fit_off{};                     // by level 1, 2, 3
  std::optional<CallMix> mix;  // absent: the library's defaults (calls.json); {"none"}: all zero
  bool operator==(const DefensePlan&) const = default;
};

/// A defense kept in a file of its own that a scenario names.
struct KeptDefense {
  std::string file;  // as it can be opened
  DefensePlan plan;  // what it says
  bool operator==(const KeptDefense&) const = default;
};

/// What a file may change about one man. Given times are the man's own: no level scale is laid on them.
struct ManSettings {
  std::optional<double> x, y, depth_yd;
  std::optional<double> mass_kg, ten_yd_s, forty_yd_s;
  std::optional<double> read_delay_s, downhill_yps, push, tackling;
  std::optional<FitOff> fit_off;
  std::optional<std::string> key;                  // single, triangle
  std::optional<std::string> job_left, job_right;  // defender: his part in runs to that side
  std::optional<std::string> job, on;              // blocker: his block and the defender it is for
  bool operator==(const ManSettings&) const = default;
};

struct PlacedFault {
  std::string player;
  Fault fault;
  bool operator==(const PlacedFault&) const = default;
};

/// One man in a picture of film. What is left empty is inferred when the scenario is resolved.
struct StartMan {
  Vec2 pos, vel;                     // yd, yd/s
  std::optional<double> facing_deg;  // chest, clockwise from downfield; absent: from how he moves
  std::string group;                 // kind of man, a Group's name; empty: what the library calls his id
  std::string block, on;             // blocker: his job and the defender it is for
  std::string role;                  // defender: his part when the run goes the way it goes
  bool operator==(const StartMan&) const = default;
};

/// A picture of film the rep starts from, in place of the snap.
struct Start {
  double since_snap_s = 0.0;            // [0, 8]
  std::string ball;                     // id of the man who has it
  std::optional<double> left_sideline;  // x of it, yd; absent: from the field's spot
  std::map<std::string, StartMan> men;  // all 22
  bool operator==(const Start&) const = default;
};

/// One file of the scenarios folder as plain data; names are not yet looked up.
struct Scenario {
  int format = 1;
  std::string source = "scenario";  // file it came from, for messages
  std::string title;
  std::vector<std::string> tags;
  Level level = Level::high_school;
  std::string clock = "hand";  // how given times were taken: hand, electronic
  FieldSpot field;
  OffensePlan offense;
  DefensePlan defense;              // all of it, whether kept in a file or not
  std::optional<KeptDefense> kept;  // the file it is kept in
  std::map<std::string, ManSettings> players;
  std::vector<PlacedFault> faults;
  std::optional<Start> start;  // with it formation, scheme, front and direction may be empty
  bool operator==(const Scenario&) const = default;
};

}  // namespace gapsound
