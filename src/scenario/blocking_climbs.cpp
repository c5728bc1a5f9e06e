#include <algorithm>

#include "scenario/blocking_work.hpp"

namespace gapsound {
namespace {

constexpr double kNearBacker = 3.5;  // reach of a second climb along the line, yd

/// "b1", "b2", "next": the next backer in the count is meant, not a certain man.
bool isByCount(const std::string& at) {
  return at.empty() || at == "next" || at == "b1" || at == "b2" || at == "b3";
}

}  // namespace

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
  if (at == "last") return counts_.backers.empty() ? backSafety() : counts_.backers.back();
  if (at == "force") return forceSeen();
  if (at == "back_force") return backForceSeen();
  if (at == "alley") return alleySeen();
  if (at == "back_safety") return backSafety();
  if (at == "trap") return trappedMan();
  if (at == "wham") return whammedMan();
  return nextBacker();
}

/// Who looks like force to the offense: the nearest man outside the end, off the line and not deep.
int Blocking::forceSeen() const {
  constexpr double kForceDeepest = 8.0;
  int best = kNobody;
  for (int i = kOffense; i < kMen && counts_.edge != kNobody; ++i) {
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

/// The man outside the end away from the run, likewise.
int Blocking::backForceSeen() const {
  int best = kNobody;
  for (int i = kOffense; i < kMen; ++i) {
    const Defender& man = defenderOf(look_, i);
    const bool candidate = man.level > 1 && x(i) < x(counts_.back_edge) && man.rule != PlaceRule::line &&
                           (man.rule != PlaceRule::corner || man.nub);
    if (candidate && (best == kNobody || x(i) > x(best))) best = i;
  }
  return best == kNobody ? backSafety() : best;
}

int Blocking::backSafety() const {
  int best = kNobody;
  for (int i = kOffense; i < kMen; ++i) {
    if (defenderOf(look_, i).rule == PlaceRule::safety && (best == kNobody || x(i) < x(best))) best = i;
  }
  return best;
}

/// With no backer left a man goes to the safety on his own side of the ball.
int Blocking::cutoffSafety(int man) const { return x(man) < x(shape_.middle) ? backSafety() : alleySeen(); }

/// First backer from the play side nobody goes to; b1 is left to a wrapper or lead.
int Blocking::nextBacker() const {
  for (std::size_t n = reserves_b1_ ? 1 : 0; n < counts_.backers.size(); ++n) {
    const int backer = counts_.backers[n];
    if (std::find(climbed_to_.begin(), climbed_to_.end(), backer) == climbed_to_.end()) return backer;
  }
  return kNobody;
}

int Blocking::climbTarget(const Climber& climber) const {
  const bool by_count = isByCount(climber.at);
  if (!by_count) return targetNamed(climber.at);
  if (const int next = nextBacker(); next != kNobody) return next;
  const bool last_is_free = counts_.backers.size() > (reserves_b1_ ? 1U : 0U);
  return climber.of_double && last_is_free ? counts_.backers.back() : cutoffSafety(climber.man);
}

/// With more men to climb than backers to climb to, the outermost of several free ones goes to the force.
void Blocking::spareOutermost() {
  const auto by_count = [](const Climber& c) { return isByCount(c.at); };
  const auto free_men = std::count_if(climbers_.begin(), climbers_.end(),
                                      [&](const Climber& c) { return !c.of_double && by_count(c); });
  const auto backers = std::ssize(counts_.backers) - (reserves_b1_ ? 1 : 0);
  if (free_men < 2 || std::ssize(climbers_) <= backers || climbers_.front().of_double) return;
  climbers_.front().at = "force";
}

/// Free men on the play side count first, then the double teams, then free men behind the play; of two men
/// the one nearer to the backer leaves.
void Blocking::sendClimbers() {
  const auto turn = [&](const Climber& c) { return c.of_double ? 1 : x(c.man) > x(shape_.middle) ? 0 : 2; };
  std::stable_sort(climbers_.begin(), climbers_.end(),
                   [&](const Climber& a, const Climber& b) { return turn(a) < turn(b); });
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
    const bool other_nearer =
        target != kNobody && magnitude(x(own.partner) - x(target)) < magnitude(x(climber.man) - x(target));
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

/// The nearest man of the secondary or overhang; `free_only`: on his own side and nobody else's.
int Blocking::stalked(int man, int side, bool free_only) const {
  int best = kNobody;
  for (int i = kOffense; i < kMen; ++i) {
    const Defender& over = defenderOf(look_, i);
    if (over.level < 3 && !isOverhang(over)) continue;
    if (free_only && (over.spot.x * side < 0 || blocked(i))) continue;
    if (best == kNobody || magnitude(x(i) - x(man)) < magnitude(x(best) - x(man))) best = i;
  }
  return best;
}

/// Receivers stalk the nearest free man on their side; with none left they help a mate.
void Blocking::stalkReceivers() {
  for (const int side : {+1, -1}) {
    for (const int man : splitOut(look_, shape_, side)) {
      if (job(man).kind != BlockKind::none) continue;
      const int own = stalked(man, side, true);
      job(man).kind = BlockKind::stalk;
      job(man).target = own != kNobody ? own : stalked(man, side, false);
    }
  }
}

}  // namespace gapsound
