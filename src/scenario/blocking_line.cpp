#include <algorithm>

#include "scenario/blocking_work.hpp"

namespace gapsound {
namespace {

constexpr double kShade = 0.62;      // on my shoulder, yd
constexpr double kEndInside = 0.55;  // zone: how far inside an end man may still be covered, yd

}  // namespace

bool Blocking::reserved(int defender) const {
  return std::find(reserved_.begin(), reserved_.end(), defender) != reserved_.end();
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

/// `from_nose`: how far inside of the next man's nose the defender has to be, yd.
bool Blocking::back(int man, int neighbour_there, double from_nose) {
  if (neighbour_there == kNobody) return false;
  const int target = lineman(x(neighbour_there) + from_nose, x(man) - kInside, x(man), true);
  if (target == kNobody) return false;
  job(man).kind = BlockKind::back;
  job(man).target = target;
  return true;
}

/// The man outside who has named me for his double team.
int Blocking::helper(int man) const {
  const int outer = neighbour(man, +1);
  if (outer == kNobody) return kNobody;
  const BlockJob& his = jobs_[index(outer)];
  return his.kind == BlockKind::combo && his.partner == man ? outer : kNobody;
}

/// Zone: the man from my nose to my play-side gap is mine.
bool Blocking::cover(int man) {
  const int outer = neighbour(man, +1);
  const double to = outer == kNobody ? x(man) + kLastGap : x(outer) - kInside;
  const int mate = helper(man);
  int target = mate == kNobody ? lineman(x(man) - kHeadUp, to, x(man), true) : job(mate).target;
  const bool last = outer == kNobody;  // he also has a man a little inside him when nobody is outside
  if (target == kNobody && last) target = lineman(x(man) - kEndInside, x(man), x(man), true);
  if (target == kNobody) return false;
  job(man).target = target;
  job(man).kind = mate != kNobody                ? BlockKind::combo
                  : x(target) > x(man) + kHeadUp ? BlockKind::reach
                                                 : BlockKind::base;
  if (mate == kNobody) return true;
  pair(man, mate, target);
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
  if (helper(man) != kNobody) {
    job(man).kind = BlockKind::combo;
    pair(man, outer, job(outer).target);
    return true;
  }
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

}  // namespace gapsound
