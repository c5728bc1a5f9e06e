#pragma once
#include <array>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "base/vec2.hpp"
#include "football/groups.hpp"
#include "football/phrases.hpp"
#include "football/states.hpp"
#include "football/vocabulary.hpp"

namespace gapsound {

// The run game as data, as assets/library holds it. Everything is drawn strong right, run to the right,
// with the school's line splits; yards and seconds.

enum class SnapKind : std::uint8_t { under_center, pistol, gun };

struct FormationMan {
  std::string id;
  Group group = Group::receiver;
  Vec2 spot;
  bool on_line = false;
};
/// Eleven men, the five of the line first.
struct Formation {
  std::string id, name;
  std::vector<std::string> aliases;
  SnapKind snap = SnapKind::under_center;
  std::vector<FormationMan> men;
};

/// How a defender finds his spot on a formation other than the one his front is drawn against.
enum class PlaceRule : std::uint8_t {
  line,      // x follows the blockers
  overhang,  // between the last blocker and the slot of his own side
  slot,      // the same, on the side that has a slot
  safety,    // the shell places him
  corner     // the shell places him on the widest receiver
};
struct Placement {
  PlaceRule rule = PlaceRule::line;
  Vec2 spot;
  double share = 0.6;  // overhang: part of the way from the last blocker to the slot
  std::string gap;     // as called, "B+", "force+/D+"; + is the strong side
};
struct FrontMan {
  std::string id;
  Group group = Group::backer;
  int level = 1;
  Placement drawn;
  std::optional<Placement> with_te, without_te;  // in place of `drawn`, by what stands on his side
};
/// A called movement: the gaps men land in instead of their own, and the guard a backer then reads.
struct Movement {
  std::string name;
  std::map<std::string, std::string> gaps;
  std::map<std::string, int> guards;  // +1 the strong side's, -1 the other
};
struct Front {
  std::string id, name, drawn_against;
  std::vector<std::string> aliases;
  std::vector<FrontMan> men;
  std::vector<Movement> movements;
  std::string second_safety;         // who goes back when the shell wants two and the front has one
  std::string toward = "formation";  // formation, receivers: what its strong side is set to unless called
};

/// One man, or one kind of man, of an alignment check and where he goes; `side` is the side the check is made
/// to.
struct CheckStep {
  enum class Who : std::uint8_t {
    near_safety,
    far_safety,
    near_corner,
    far_corner,
    near_edge,
    overhang,
    backers,
    box
  };
  enum class Place : std::uint8_t {
    stay,     // where he is, `by_yd` toward the side
    edge,     // outside the last blocker of the side
    outside,  // outside a man on the edge
    middle,   // deep, over the middle man
    slot,     // over the inside receiver of the other side
    split,    // over the second receiver of the other side
    nine,     // outside shoulder of the last man on the line
    center    // counted from the snapper instead of the middle man of the line
  };
  Who who = Who::backers;
  Place place = Place::stay;
  double y = 0.0;  // 0: as deep as he was
  double by_yd = 0.0;
  bool rolled = false, middle = false, force = false, fires = false;
};
/// A called answer to a lopsided formation.
struct Check {
  enum class Against : std::uint8_t { nub, trips, unbalanced };
  std::string name;
  std::vector<std::string> aliases;
  Against against = Against::nub;
  bool front_to_it = false;  // the front is set to that side
  std::vector<CheckStep> steps;
  std::string cost;  // what it gives up, in words
};

struct CornerSpot {
  double y = 7.0;
  double leverage = 0.0;  // yd outside the receiver he is over
  bool deep = true;       // stands two yards deeper above school level
  bool man = false;
  std::optional<double> x;  // on his own side, instead of over a receiver
};
/// A safety's spot on his side of the ball.
struct SafetySpot {
  enum class Over : std::uint8_t { two, edge, inside, middle, man };
  Over over = Over::two;
  double x = 6.0, y = 9.0;
  bool deep = true;
  bool rolled = false;  // down in the box or on its edge
};
enum class ForceWho : std::uint8_t { overhang, rolled, corner, nub_corner };
struct Shell {
  std::string id, name;
  std::vector<std::string> aliases;
  CornerSpot strong_corner, weak_corner;
  SafetySpot strong_safety, weak_safety;
  std::vector<ForceWho> force;  // first of these who is there on the play side
  bool owns_twins = false;      // a safety over two receivers with a nub behind him stays with them
};

/// One thing a blocker may do; the first of his list that applies is his job.
enum class BlockRule : std::uint8_t {
  down,        // man on the line in my inside gap
  post,        // man on me or on my outside shade, mate outside comes down on him
  base,        // man on me
  back,        // man in the next gap on the back side
  back_shade,  // the same, but only one who is nearer to me than to the next man's nose
  back_far,    // a gap further: the two behind me pull
  cover,       // zone: man from my nose to my play-side gap
  combo_out,   // help the play-side neighbour with his man, then climb
  combo_in,    // help the back-side neighbour with his man on my side, then climb
  combo_back,  // man on my back-side shade together with the neighbour there, then climb
  climb,       // straight to a man of the second or third level
  kick,
  log,
  wrap,
  lead,
  insert,
  hinge,
  cutoff,
  scoop,
  lock,
  lock_end,  // last man of the line on the back side: the end there is his
  lock_gun,  // last man of the line on the back side of a gun: nothing fakes the end there, so he is locked
  arc,
  fan,
  stalk,
  crack,      // receiver: the nearest free man inside him
  wall,       // man on me or outside me, kept out of the run
  pull,       // nobody free on me: around the edge, first to the force, then to what shows inside him
  influence,  // the trapped or whammed man is on me: past him to a backer
  squeeze,    // inside gap or the inside neighbour's man, whether he has help or not
  wedge,      // the centre's man, together
  fake        // carries out a fake away from the ball
};
struct BlockStep {
  BlockRule rule = BlockRule::base;
  std::string at;      // "b1", "force", "edge", ... (targetWords); empty: the rule's own
  std::string pull;    // "", "open", "skip", "flat"
  double depth = 0.0;  // yd behind the line when pulling
  double delay_s = 0.0;
  double from = 0.2;  // fan: yd the man stands outside me at least
  bool reads_kick = false;
  bool may_log = false;
  Show show = Show::none;
};
using BlockSteps = std::vector<BlockStep>;

/// Back's path from one kind of snap.
struct BallPath {
  std::vector<Vec2> steps;
  Vec2 mesh;
  double mesh_s = 1.3;
  double toss_s = 0.0;  // when the ball leaves the quarterback's hand; 0: handed
};
/// The man left unblocked whom the quarterback watches, and what he does about him.
struct ReadPlay {
  std::string who;             // "edge", "back_edge", "b1", ...
  bool keeps_if_wide = false;  // keeps when that man widens or comes upfield; else when he closes on the back
  double keep_aim_x = -4.0;    // where the quarterback then means to cross the line
};
/// A man the line leaves for somebody; only while `part` has a man (empty: always).
struct Reserve {
  std::string who, part;
};
/// What a variant lays over the base: only what it names.
struct SchemeChange {
  std::map<std::string, BlockSteps> jobs;
  std::map<std::string, std::vector<std::string>> parts;
  std::optional<std::vector<std::string>> carriers;
  std::optional<std::vector<Reserve>> reserves;
  std::map<SnapKind, BallPath> paths;
  std::map<SnapKind, SnapKind> snaps;
  std::optional<ReadPlay> read;
  std::optional<double> aim_x;
  std::optional<bool> patient, bends;
};
struct Scheme {
  std::string id, name;
  std::vector<std::string> aliases;
  std::vector<std::string> carriers;                      // first who is there
  std::map<std::string, std::vector<std::string>> parts;  // "kicker" -> who may play it, first who is there
  std::map<std::string, BlockSteps> jobs;                 // by place ("PST", "BSG", "Y", "kicker")
  std::vector<std::string> sniffer_back;  // formations whose H starts on the back side; "*" all
  std::vector<Reserve> reserves;          // men the line leaves for the kicker, wrapper, trapper or the read
  std::map<SnapKind, BallPath> paths;
  std::map<SnapKind, SnapKind> snaps;  // formation's snap -> the one this scheme needs instead
  std::optional<ReadPlay> read;
  double aim_x = 2.4;
  bool patient = false, bends = false;
  std::map<std::string, SchemeChange> variants;
};

/// How a man moves before the snap.
enum class MotionPath : std::uint8_t {
  across_front,  // sideways past the quarterback at the snap
  behind_back,   // the same behind the deepest back
  other_side,    // to his spot on the other side of the ball
  trade          // the tight end to the other end of the line, before the snap
};
struct Motion {
  std::string id, name;
  std::vector<std::string> aliases;
  std::vector<Group> who;
  MotionPath moves = MotionPath::across_front;
  Vec2 spot;               // at the snap, on the side he comes from; y from the deepest back for behind_back
  double speed_yps = 0.0;  // at the snap, toward the other side
  double backers_follow_yd = 0.0;  // how far the defense's backers go with it
};

struct Splits {
  double guard = 1.35, tackle = 2.75, end = 4.40;  // x of the body centres
  double line_back = 0.0;                          // yd deeper than drawn, guards and tackles
  double back_deeper = 0.0;                        // yd deeper than drawn, the running back
  double front_y = 0.8;                            // y of a lineman of the defense drawn at 0.8
  double shell_deeper = 0.0;                       // yd
};
struct BodyKind {
  std::array<double, 3> mass_kg{};      // by level
  double top_speed = 10.0, tau = 1.15;  // pro, without pads
  bool heavy = false;                   // takes the linemen's level scale and braking
  double backpedal = 0.5;
  double read_delay_s = 0.7, downhill_yps = 6.0;
};
/// Spacing of the line as a formation may call it; school yards, other levels in proportion.
struct SplitCall {
  std::string name;
  double guard = 1.35, tackle = 2.75, end = 4.40;
};
struct LevelKind {
  std::string name;
  double skill_speed = 1.0, line_speed = 1.0, brake = 1.0, read = 1.0, mesh_later_s = 0.0;
  double hash_to_sideline = 23.58;
  Splits splits;
};
/// Half breadth or depth of a man: (at_85_kg + slope (kg - 85.5) + pads) / 2.
struct Girth {
  double at_85_kg = 51.0, slope = 0.201, pads = 8.0;  // cm
};
struct Bodies {
  std::array<LevelKind, 3> levels;
  std::array<BodyKind, kGroups> kinds;
  std::vector<SplitCall> split_calls;  // "standard" is the first
  Girth shoulder, chest;
};

/// Snap-to-snap variety and other habits of a call that are no constant of nature.
struct CallHabits {
  double line_spread_yd = 0.22, backer_spread_yd = 0.45, back_spread_yd = 0.8;
  double slant_share = 0.25, shoot_share = 0.25;
  double gun_flight_s = 0.35, pistol_flight_s = 0.28;
  double short_distance = 2.0, short_to_goal = 3.0, short_backer_y = 3.25;  // yd: short yardage
  double gun_backer_y = 5.0;  // yd, against a gun without a tight end
};

/// What changes off an end in this state when the back-side backer is called over the top.
struct OverlapOver {
  Structure structure = Structure::spill;
  EndState end = EndState::spilled;
  Fit first = Fit::inside, overlap = Fit::over_top;
};
struct FitBook {
  FitTable table;
  std::vector<OverlapOver> overlap_over;
  Fit overlap_behind_fill[2][kEndStates] = {};  // the last of three backers
};

struct Library {
  std::vector<Formation> formations;
  std::vector<Front> fronts;
  std::map<std::string, double> techniques;  // "3": x on the strong side, school splits
  std::vector<Shell> shells;
  std::vector<Scheme> schemes;
  std::vector<Motion> motions;
  Bodies bodies;
  CallHabits habits;
  std::vector<Check> checks;
  FitBook fits;
  Phrases phrases;
  Vocabulary vocabulary;
};

/// Lookups by id or name, whatever the case; null when there is none.
[[nodiscard]] const Formation* findFormation(const Library& library, const std::string& name);
[[nodiscard]] const Front* findFront(const Library& library, const std::string& name);
[[nodiscard]] const Shell* findShell(const Library& library, const std::string& name);
[[nodiscard]] const Scheme* findScheme(const Library& library, const std::string& name);
[[nodiscard]] const Motion* findMotion(const Library& library, const std::string& name);
[[nodiscard]] const Check* findCheck(const Library& library, const std::string& name);
[[nodiscard]] const SplitCall* findSplits(const Bodies& bodies, const std::string& name);
[[nodiscard]] const Movement* findMovement(const Front& front, const std::string& name);

/// Ids and names in the order of the files, for lists and hints: "F01", "21 I strong", ...
[[nodiscard]] std::vector<std::string> formationNames(const Library& library);
[[nodiscard]] std::vector<std::string> frontNames(const Library& library);
[[nodiscard]] std::vector<std::string> shellNames(const Library& library);
[[nodiscard]] std::vector<std::string> schemeNames(const Library& library);
[[nodiscard]] std::vector<std::string> motionNames(const Library& library);
[[nodiscard]] std::vector<std::string> checkNames(const Library& library);
[[nodiscard]] std::vector<std::string> splitNames(const Bodies& bodies);
/// "base" first.
[[nodiscard]] std::vector<std::string> variantNames(const Scheme& scheme);
/// "none" first.
[[nodiscard]] std::vector<std::string> movementNames(const Front& front);

}  // namespace gapsound
