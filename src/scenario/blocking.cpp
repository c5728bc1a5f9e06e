#include "scenario/blocking.hpp"

#include <algorithm>
#include <map>

namespace gapsound {
namespace {

constexpr double kHeadUp = 0.25;      // |x| between two noses that counts as head-up, yd
constexpr double kInside = 0.20;      // a man less far inside my nose is not in my inside gap, yd
constexpr double kShade = 0.62;       // on my shoulder, yd
constexpr double kOnMe = 0.80;        // nearest man still mine to block one on one, yd
constexpr double kEndInside = 0.55;   // zone: how far inside an end man may still be covered, yd
constexpr double kNearBacker = 3.5;   // reach of a second climb along the line, yd
constexpr double kPullsFrom = 3.0;    // a back deeper than this runs straight at his man, yd
constexpr double kLastGap = 1.3;      // width of the gap outside the last man, yd

double magnitude(double x) { return x < 0 ? -x : x; }

BlockStep stepTo(BlockRule rule, const char* at) {
  BlockStep step;
  step.rule = rule;
  step.at = at;
  return step;
}

class Blocking {
 public:
  Blocking(const Look& look, const Scheme& scheme)
      : look_(look), scheme_(scheme), shape_(shapeOf(look.offense)), counts_(countsOf(look, shape_, +1)),
        carrier_(carrierOf(look, scheme)) {}

  std::array<BlockJob, kOffense> run() {
    giveParts();
    for (const int man : outsideIn()) decide(man);
    for (int man = 0; man < kOffense; ++man) {
      if (!decided_[index(man)]) decide(man);
    }
    sendClimbers();
    stalkReceivers();
    return jobs_;
  }

 private:
  struct Climber {
    int man = kNobody;
    std::string at;
    bool of_double = false;
  };
  static std::size_t index(int man) { return static_cast<std::size_t>(man); }
  BlockJob& job(int man) { return jobs_[index(man)]; }
  double x(int man) const { return man < kOffense ? attackerOf(look_, man).spot.x : defenderOf(look_, man).spot.x; }

  void giveParts();
  int manFor(const std::string& place) const;
  std::string placeOf(int man) const;
  std::vector<int> outsideIn() const;
  int neighbour(int man, int toward) const;
  BlockSteps stepsFor(int man) const;
  void decide(int man);
  bool apply(int man, const BlockStep& step);

  bool down(int man);
  bool post(int man);
  bool base(int man);
  bool back(int man);
  bool cover(int man);
  bool comboOut(int man);
  bool comboIn(int man);
  bool comboBack(int man);
  bool scoop(int man);
  bool climb(int man, const BlockStep& step);
  bool onMan(int man, BlockKind kind, const BlockStep& step);
  void pair(int stays, int leaves, int target);

  int lineman(double from, double to, double nearest_to, bool free_only) const;
  bool reserved(int defender) const;
  bool blocked(int defender) const;
  int targetNamed(const std::string& at) const;
  int forceSeen() const;
  int alleySeen() const;
  void sendClimbers();
  void spareOutermost();
  void settlePartners();
  void followUp();
  int climbTarget(const Climber& climber) const;
  int nextBacker() const;
  void stalkReceivers();

  const Look& look_;
  const Scheme& scheme_;
  LineShape shape_;
  Counts counts_;
  int carrier_;
  std::array<BlockJob, kOffense> jobs_{};
  std::array<bool, kOffense> decided_{};
  std::map<int, std::string> part_of_;
  std::vector<Climber> climbers_;
  std::vector<int> climbed_to_;
};

/// Men for the scheme's parts: the first who is there and has no part yet.
void Blocking::giveParts() {
  for (const auto& [part, who] : scheme_.parts) {
    for (const std::string& place : who) {
      const int man = manFor(place);
      if (man == kNobody || man == carrier_ || part_of_.contains(man)) continue;
      part_of_[man] = part;
      break;
    }
  }
}

int Blocking::manFor(const std::string& place) const {
  for (int man = 0; man < kOffense; ++man) {
    if (attackerOf(look_, man).id == place || placeOf(man) == place) return man;
  }
  return kNobody;
}

/// Place on the line as the run sees it: PST, BSG, PSTE ...; a wing is PSW or BSW.
std::string Blocking::placeOf(int man) const {
  if (man == shape_.middle) return "C";
  for (const int side : {+1, -1}) {
    const auto& men = shape_.men(side);
    const auto found = std::find(men.begin(), men.end(), man);
    if (found == men.end()) continue;
    const auto at = static_cast<std::size_t>(found - men.begin());
    const char* const names[] = {"G", "T", "TE"};
    const bool wing = at > 2 || (at == 2 && !shape_.hasEnd(side));
    return std::string(side > 0 ? "PS" : "BS") + (wing ? "W" : names[at]);
  }
  return "";
}

std::vector<int> Blocking::outsideIn() const {
  std::vector<int> men(shape_.right.rbegin(), shape_.right.rend());
  men.push_back(shape_.middle);
  men.insert(men.end(), shape_.left.begin(), shape_.left.end());
  return men;
}

/// Next man of the line to the right (+1) or left (-1).
int Blocking::neighbour(int man, int toward) const {
  const auto men = outsideIn();
  const auto at = std::find(men.begin(), men.end(), man);
  if (toward > 0) return at == men.begin() || at == men.end() ? kNobody : *(at - 1);
  return at == men.end() || at + 1 == men.end() ? kNobody : *(at + 1);
}

BlockSteps Blocking::stepsFor(int man) const {
  const auto part = part_of_.find(man);
  const std::string keys[] = {part == part_of_.end() ? "" : part->second, placeOf(man), attackerOf(look_, man).id};
  for (const std::string& key : keys) {
    const auto found = scheme_.jobs.find(key);
    if (!key.empty() && found != scheme_.jobs.end()) return found->second;
  }
  if (placeOf(man) == "PSW") return {stepTo(BlockRule::climb, "force")};
  if (placeOf(man) == "BSW") return {stepTo(BlockRule::cutoff, "")};
  const bool lead = attackerOf(look_, man).id == "F" || attackerOf(look_, man).id == "H";
  if (lead && man != carrier_) return {stepTo(BlockRule::lead, "b2")};
  return {};
}

void Blocking::decide(int man) {
  decided_[index(man)] = true;
  for (const BlockStep& step : stepsFor(man)) {
    if (apply(man, step)) return;
  }
}

bool Blocking::apply(int man, const BlockStep& step) {
  switch (step.rule) {
    case BlockRule::down: return down(man);
    case BlockRule::post: return post(man);
    case BlockRule::base: return base(man);
    case BlockRule::back: return back(man);
    case BlockRule::cover: return cover(man);
    case BlockRule::combo_out: return comboOut(man);
    case BlockRule::combo_in: return comboIn(man);
    case BlockRule::combo_back: return comboBack(man);
    case BlockRule::scoop: return scoop(man);
    case BlockRule::climb: return climb(man, step);
    case BlockRule::kick: return onMan(man, BlockKind::kick, step);
    case BlockRule::log: return onMan(man, BlockKind::log, step);
    case BlockRule::wrap: return onMan(man, BlockKind::wrap, step);
    case BlockRule::lead: return onMan(man, BlockKind::lead, step);
    case BlockRule::insert: return onMan(man, BlockKind::insert, step);
    case BlockRule::hinge: return onMan(man, BlockKind::hinge, step);
    case BlockRule::cutoff: return onMan(man, BlockKind::cutoff, step);
    case BlockRule::lock: return onMan(man, BlockKind::base, step);
    case BlockRule::arc: return onMan(man, BlockKind::arc, step);
    case BlockRule::fan: return onMan(man, BlockKind::fan, step);
    case BlockRule::wall: return onMan(man, BlockKind::wall, step);
    case BlockRule::crack: return onMan(man, BlockKind::crack, step);
    case BlockRule::stalk: return onMan(man, BlockKind::stalk, step);
  }
  return false;
}

bool Blocking::reserved(int defender) const {
  return (scheme_.reserves_edge && defender == counts_.edge) ||
         (scheme_.reserves_back_edge && defender == counts_.back_edge);
}

bool Blocking::blocked(int defender) const {
  return std::any_of(jobs_.begin(), jobs_.end(), [&](const BlockJob& j) { return j.target == defender; });
}

/// The lineman of the defense with x in [from, to] who is nearest to `nearest_to`.
int Blocking::lineman(double from, double to, double nearest_to, bool free_only) const {
  int best = kNobody;
  for (int i = kOffense; i < kMen; ++i) {
    const Defender& man = defenderOf(look_, i);
    if (!isOnLine(man) || reserved(i) || man.spot.x < from || man.spot.x > to) continue;
    if (free_only && blocked(i)) continue;
    if (best == kNobody || magnitude(x(i) - nearest_to) < magnitude(x(best) - nearest_to)) best = i;
  }
  return best;
}

bool Blocking::down(int man) {
  const int side = x(man) > x(shape_.middle) ? +1 : -1;
  const int inner = neighbour(man, -side);
  if (inner == kNobody) return false;
  const double a = x(inner) - side * kHeadUp, b = x(man) - side * kInside;
  const int target = lineman(std::min(a, b), std::max(a, b), x(man), true);
  if (target == kNobody) return false;
  job(man).kind = BlockKind::down;
  job(man).target = target;
  return true;
}

/// Two on one: `stays` is the inside man. Who climbs is settled when the climbs are.
void Blocking::pair(int stays, int leaves, int target) {
  job(stays).partner = leaves;
  job(leaves).partner = stays;
  job(stays).target = job(leaves).target = target;
}

bool Blocking::post(int man) {
  const int outer = neighbour(man, +1);
  if (outer == kNobody || job(outer).kind != BlockKind::down || job(outer).partner != kNobody) return false;
  const int target = job(outer).target;
  const double off = x(target) - x(man);
  if (off < -kHeadUp || off > kShade) return false;
  pair(man, outer, target);
  job(man).kind = BlockKind::post;
  job(outer).kind = BlockKind::drive;
  climbers_.push_back({man, "", true});
  return true;
}

bool Blocking::base(int man) {
  const int target = lineman(x(man) - kOnMe, x(man) + kOnMe, x(man), true);
  if (target == kNobody) return false;
  job(man).kind = BlockKind::base;
  job(man).target = target;
  return true;
}

bool Blocking::back(int man) {
  const int neighbour_there = neighbour(man, -1);
  if (neighbour_there == kNobody) return false;
  const int target = lineman(x(neighbour_there) - kHeadUp, x(man) - kInside, x(man), true);
  if (target == kNobody) return false;
  job(man).kind = BlockKind::back;
  job(man).target = target;
  return true;
}

/// Zone: the man from my nose to my play-side gap is mine.
bool Blocking::cover(int man) {
  const int outer = neighbour(man, +1);
  const double to = outer == kNobody ? x(man) + kLastGap : x(outer) - kInside;
  const double from = x(man) - (outer == kNobody ? kEndInside : kHeadUp);
  const int helper = outer != kNobody && job(outer).kind == BlockKind::combo && job(outer).partner == man ? outer : kNobody;
  const int target = helper == kNobody ? lineman(from, to, x(man), true) : job(helper).target;
  if (target == kNobody) return false;
  job(man).target = target;
  job(man).kind = helper != kNobody ? BlockKind::combo
                  : x(target) > x(man) + kHeadUp ? BlockKind::reach
                                                 : BlockKind::base;
  if (helper == kNobody) return true;
  pair(man, helper, target);
  return true;
}

bool Blocking::comboOut(int man) {
  const int outer = neighbour(man, +1);
  if (outer == kNobody || job(outer).target < kOffense || job(outer).partner != kNobody) return false;
  const int target = job(outer).target;
  if (!isOnLine(defenderOf(look_, target)) || x(target) < x(man)) return false;
  pair(outer, man, target);
  job(man).kind = job(outer).kind = BlockKind::combo;
  job(man).leaves = true;
  climbers_.push_back({man, "", true});
  return true;
}

bool Blocking::comboIn(int man) {
  const int inner = neighbour(man, -1);
  if (inner == kNobody) return false;
  const int target = lineman(x(inner) - kHeadUp, x(man) - kInside, x(man), true);
  if (target == kNobody) return false;
  job(man) = {BlockKind::combo, target, inner, true};
  climbers_.push_back({man, "", true});
  return true;
}

bool Blocking::comboBack(int man) {
  const int behind = neighbour(man, -1);
  if (behind == kNobody) return false;
  const int target = lineman(x(man) - kShade, x(man) + kHeadUp, x(man), true);
  if (target == kNobody) return false;
  job(man) = {BlockKind::combo, target, behind, true};
  climbers_.push_back({man, "", true});
  return true;
}

bool Blocking::scoop(int man) {
  const int outer = neighbour(man, +1);
  if (outer == kNobody) return false;
  const int target = lineman(x(man), x(outer) + kHeadUp, x(man), true);
  if (target == kNobody) return false;
  job(man).kind = BlockKind::scoop;
  job(man).target = target;
  return true;
}

bool Blocking::climb(int man, const BlockStep& step) {
  job(man).kind = BlockKind::climb;
  climbers_.push_back({man, step.at, false});
  return true;
}

bool Blocking::onMan(int man, BlockKind kind, const BlockStep& step) {
  const bool behind = kind == BlockKind::hinge || kind == BlockKind::cutoff || step.rule == BlockRule::lock;
  const std::string at = !step.at.empty() ? step.at : behind ? "back_edge" : "next";
  BlockJob& j = job(man);
  j.kind = kind;
  j.target = targetNamed(at);
  const bool behind_line = attackerOf(look_, man).spot.y < -kPullsFrom;
  j.pull = behind_line             ? PullStyle::none
           : step.pull == "open" ? PullStyle::open
           : step.pull == "skip" ? PullStyle::skip
           : step.pull == "flat" ? PullStyle::flat
                                 : PullStyle::none;
  j.pull_depth = j.pull == PullStyle::none ? 0.0 : step.depth;
  j.delay_s = step.delay_s;
  j.reads_kick = step.reads_kick;
  j.may_log = step.may_log;
  return true;
}

int Blocking::targetNamed(const std::string& at) const {
  const auto backer = [&](std::size_t n) {
    if (n < counts_.backers.size()) return counts_.backers[n];
    return counts_.backers.empty() ? alleySeen() : counts_.backers.back();
  };
  if (at == "edge") return counts_.edge;
  if (at == "back_edge") return counts_.back_edge;
  if (at == "b1") return backer(0);
  if (at == "b2") return backer(1);
  if (at == "b3") return backer(2);
  if (at == "force") return forceSeen();
  if (at == "alley") return alleySeen();
  return nextBacker();
}

/// Who looks like force to the offense: the nearest man outside the end, off the line and not deep.
int Blocking::forceSeen() const {
  constexpr double kForceDeepest = 8.0;
  int best = kNobody;
  for (int i = kOffense; i < kMen; ++i) {
    const Defender& man = defenderOf(look_, i);
    const bool candidate = man.level > 1 && man.spot.y <= kForceDeepest && x(i) > x(counts_.edge) &&
                           man.rule != PlaceRule::line && (man.rule != PlaceRule::corner || man.nub);
    if (candidate && (best == kNobody || x(i) < x(best))) best = i;
  }
  return best == kNobody ? alleySeen() : best;
}

int Blocking::alleySeen() const {
  int best = kNobody;
  for (int i = kOffense; i < kMen; ++i) {
    if (defenderOf(look_, i).rule == PlaceRule::safety && (best == kNobody || x(i) > x(best))) best = i;
  }
  return best;
}

/// First backer from the play side nobody goes to; b1 is left to a wrapper or lead.
int Blocking::nextBacker() const {
  for (std::size_t n = scheme_.reserves_b1 ? 1 : 0; n < counts_.backers.size(); ++n) {
    const int backer = counts_.backers[n];
    if (std::find(climbed_to_.begin(), climbed_to_.end(), backer) == climbed_to_.end()) return backer;
  }
  return kNobody;
}

int Blocking::climbTarget(const Climber& climber) const {
  const bool by_count = climber.at.empty() || climber.at == "next" || climber.at[0] == 'b';
  if (!by_count) return targetNamed(climber.at);
  if (const int next = nextBacker(); next != kNobody) return next;
  return climber.of_double && !counts_.backers.empty() ? counts_.backers.back() : alleySeen();
}

/// With more men to climb than backers to climb to, the outermost of several free ones goes to the force.
void Blocking::spareOutermost() {
  const auto by_count = [](const Climber& c) { return c.at.empty() || c.at == "next" || c.at[0] == 'b'; };
  const auto free_men = std::count_if(climbers_.begin(), climbers_.end(),
                                      [&](const Climber& c) { return !c.of_double && by_count(c); });
  const auto backers = std::ssize(counts_.backers) - (scheme_.reserves_b1 ? 1 : 0);
  if (free_men < 2 || std::ssize(climbers_) <= backers) return;
  climbers_.front().at = "force";
}

/// Free climbers count first, then the double teams; of two men the one nearer to the backer leaves.
void Blocking::sendClimbers() {
  std::stable_partition(climbers_.begin(), climbers_.end(), [](const Climber& c) { return !c.of_double; });
  spareOutermost();
  for (const Climber& climber : climbers_) {
    const int target = climbTarget(climber);
    climbed_to_.push_back(target);
    BlockJob& own = job(climber.man);
    if (!climber.of_double) {
      own.target = own.climb_to = target;
      continue;
    }
    own.climb_to = target;
    if (own.partner == kNobody || own.leaves) continue;
    BlockJob& other = job(own.partner);
    const bool other_nearer = target != kNobody && magnitude(x(own.partner) - x(target)) < magnitude(x(climber.man) - x(target));
    other.climb_to = target;
    (other_nearer ? other : own).leaves = true;
  }
  settlePartners();
  followUp();
}

/// The man who stays on a double team: should he come free, a near backer nobody climbs to, else his mate's.
void Blocking::followUp() {
  for (int man = 0; man < kOffense; ++man) {
    BlockJob& j = job(man);
    if (j.partner == kNobody || j.leaves || j.climb_to != kNobody) continue;
    const int next = nextBacker();
    const bool near = next != kNobody && magnitude(x(next) - x(man)) < kNearBacker;
    j.climb_to = near ? next : job(j.partner).climb_to;
  }
}

/// A double team whose second man has another job is no double team.
void Blocking::settlePartners() {
  for (int man = 0; man < kOffense; ++man) {
    BlockJob& j = job(man);
    if (j.partner == kNobody || job(j.partner).partner == man) continue;
    j.partner = kNobody;
    j.leaves = false;
    j.kind = x(j.target) < x(man) ? BlockKind::scoop : BlockKind::base;
  }
}

/// Receivers stalk the nearest man of the secondary or overhang that nobody else has.
void Blocking::stalkReceivers() {
  for (const int side : {+1, -1}) {
    for (const int man : splitOut(look_, shape_, side)) {
      if (job(man).kind != BlockKind::none) continue;
      int best = kNobody;
      for (int i = kOffense; i < kMen; ++i) {
        const Defender& over = defenderOf(look_, i);
        if ((over.level < 3 && !isOverhang(over)) || over.spot.x * side < 0 || blocked(i)) continue;
        if (best == kNobody || magnitude(x(i) - x(man)) < magnitude(x(best) - x(man))) best = i;
      }
      job(man).kind = BlockKind::stalk;
      job(man).target = best;
    }
  }
}

}  // namespace

Scheme varied(const Scheme& scheme, const std::string& variant) {
  Scheme out = scheme;
  const auto found = scheme.variants.find(variant);
  if (found == scheme.variants.end()) return out;
  const SchemeChange& change = found->second;
  for (const auto& [place, steps] : change.jobs) out.jobs[place] = steps;
  out.aim_x = change.aim_x.value_or(out.aim_x);
  out.patient = change.patient.value_or(out.patient);
  out.bends = change.bends.value_or(out.bends);
  return out;
}

int carrierOf(const Look& look, const Scheme& scheme) {
  for (const std::string& id : scheme.carriers) {
    for (int man = 0; man < kOffense; ++man) {
      if (attackerOf(look, man).id == id) return man;
    }
  }
  return kNobody;
}

std::array<BlockJob, kOffense> blockingOf(const Look& look, const Scheme& scheme) {
  return Blocking(look, scheme).run();
}

}  // namespace gapsound
