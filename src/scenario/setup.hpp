#pragma once
#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "athlete/body.hpp"
#include "base/vec2.hpp"
#include "football/faults.hpp"
#include "football/groups.hpp"
#include "football/states.hpp"
#include "scenario/scenario.hpp"

namespace gapsound {

inline constexpr int kMen = 22;
inline constexpr int kOffense = 11;  // men 0..10 attack, 11..21 defend
inline constexpr int kNobody = -1;

enum class BlockKind : std::uint8_t {
  none,
  base,
  down,
  back,
  reach,
  scoop,
  cutoff,
  post,
  drive,
  combo,
  kick,
  log,
  wrap,
  lead,
  insert,
  hinge,
  climb,
  arc,
  fan,
  stalk,
  crack,
  wall,
  fake
};
enum class PullStyle : std::uint8_t { none, open, skip, flat };

/// One blocker's job against the front actually faced. Indices are men of the same Setup.
struct BlockJob {
  BlockKind kind = BlockKind::none;
  int target = kNobody;    // defender he starts for
  int partner = kNobody;   // mate who shares the target in a double team
  bool leaves = false;     // of the two, he is the one who climbs
  int climb_to = kNobody;  // defender for the climb, or next once the target is gone
  PullStyle pull = PullStyle::none;
  double pull_depth = 0.0;  // yd behind the line he travels, > 0 when pulling
  double delay_s = 0.0;     // on top of the snap reaction
  bool reads_kick = false;  // wrapper who goes to the side the kicker leaves him
  bool may_log = false;     // kicker who hooks an end that came inside
  Show show = Show::none;   // what he shows first
  int spares = kNobody;     // defender he must leave for a mate
  int fake_side = -1;       // +1 toward the run, -1 away: where he carries a fake
};

/// The ball's path: who takes it where and when, and where he means to cross the line.
struct BackJob {
  std::vector<Vec2> steps;  // points run through before the mesh (counter steps); may be empty
  Vec2 mesh;                // where he takes the ball
  double mesh_s = 1.3;      // when, seconds after the snap
  double aim_x = 0.0;       // where he means to cross the line
  bool patient = false;     // stays behind his wrapper
  bool bends = false;       // zone: free to cut back at the heels
  double toss_s = 0.0;      // ball in the air from then to mesh_s; 0: handed
};

/// The defender the quarterback reads; kNobody: the play has no read.
struct ReadJob {
  int who = kNobody;
  bool keeps_if_wide = false;  // keeps when that man widens or comes upfield, else when he closes on the back
  double keep_aim_x = 0.0;     // where he then means to cross the line
};

enum class FitRole : std::uint8_t {
  edge,
  back_edge,
  interior,
  first_backer,
  fill_backer,
  overlap_backer,
  force,
  alley,
  cutback,
  corner,
  out
};
enum class KeyStyle : std::uint8_t { single, triangle };
enum class BackSideBacker : std::uint8_t { overlap, fold, shoot, hang };

/// What a defender knows before the snap: his own side's call, nothing of the offense's.
struct FitJob {
  int level = 1;                    // 1 line, 2 backers, 3 secondary
  std::string gap;                  // as called: "B+", "force+", "deep"
  double gap_x = 0.0;               // centre of the gap at the snap, yd; of the line, before it moves
  double slant_x = 0.0;             // called movement from gap_x along x, yd; 0 none
  FitRole if_right = FitRole::out;  // his role when the run goes to the offense's right
  FitRole if_left = FitRole::out;
  int key = kNobody;  // offensive man he keys
  KeyStyle key_style = KeyStyle::triangle;
  bool off_the_man_in_front = true;              // false: runs to the call whatever happened
  Structure structure_right = Structure::spill;  // when the run goes to the offense's right
  Structure structure_left = Structure::spill;
  BackSideBacker bs_backer = BackSideBacker::overlap;
  bool overlaps_over = false;  // the backer behind the first one goes over the top, the first one inside
  double read_delay_s = 0.7;   // snap to a concluded read, before noise
  double downhill_yps = 7.0;   // level 3: closing speed until he comes to balance
  int man_on = kNobody;        // receiver he has in man coverage
  bool sent_back = false;      // left the fit for a shell that wants two high
  bool fires = false;          // goes for the mesh at the snap
};

[[nodiscard]] inline Structure structureFor(const FitJob& job, int direction) {
  return direction >= 0 ? job.structure_right : job.structure_left;
}

struct Man {
  std::string id;            // as he is called: "SS", "LT", or the coach's own word
  std::string drawn;         // as the library calls him; key of files
  std::uint64_t stream = 0;  // random streams key: the role as if the run went right
  bool attacks = false;
  Group group = Group::backer;
  Body body;
  Vec2 spot;  // at the snap, before the mix
  Vec2 vel;   // in motion at the snap, yd/s
  Vec2 facing{0.0, 1.0};
  double aligned_off_line = 0.0;
  BlockJob block;  // offense
  FitJob fit;      // defense
  std::vector<Fault> faults;
};

/// A picture of film the rep starts from: men in the order of the Setup, yards and yards per second.
struct Opening {
  struct Place {
    Vec2 pos, vel;
    Vec2 face{0.0, 1.0};  // unit
  };
  double since_snap_s = 0.0;
  int ball = kNobody;  // who has it
  std::array<Place, kMen> men;
};

/// A scenario resolved: 22 placed men with jobs. Values only; safe to copy and to share between threads.
/// Men are ordered by their role as if the run went right, so a scenario and its mirror image
/// have their men in the same order.
struct Setup {
  std::string title;
  int direction = +1;  // +1: the run goes to the offense's right
  Level level = Level::pro;
  std::array<Man, kMen> men;
  int passer = kNobody;        // who has the ball after the snap
  int carrier = kNobody;       // who is meant to run with it (the passer himself on a keep)
  double snap_flight_s = 0.0;  // gun snap in the air
  BackJob run;
  ReadJob read;
  CallMix mix;
  FitTable fits;
  double sideline_left = -26.67, sideline_right = 26.67;  // x of the sidelines
  double to_goal = 75.0;
  int down = 1;
  double distance = 10.0;
  std::string scheme, variant, front, formation, shell, structure;
  std::vector<std::string> notes;  // who stands in for whom, in words
  std::optional<Opening> opening;  // absent: the rep starts at the snap
};

[[nodiscard]] inline bool isOffense(int man) { return man < kOffense; }
/// The Setup turned over x; direction flips, ids and order stay.
[[nodiscard]] Setup mirrored(const Setup& setup);

}  // namespace gapsound
