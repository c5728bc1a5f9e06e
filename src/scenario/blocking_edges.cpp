#include <algorithm>

#include "scenario/blocking_work.hpp"

namespace gapsound {
namespace {

constexpr double kFanReach = 1.6;    // yd outside me
constexpr double kOnCenter = 0.90;   // a nose or a shade, yd
constexpr double kCrackDepth = 9.0;  // deepest man a receiver cracks, yd
constexpr double kCrackReach = 9.0;  // and how far away, yd

}  // namespace

/// The first man of the line past the play-side guard.
int Blocking::trappedMan() const {
  const double guard = x(shape_.right.front());
  int best = kNobody;
  for (int i = kOffense; i < kMen; ++i) {
    if (!isOnLine(defenderOf(look_, i)) || x(i) < guard - kHeadUp) continue;
    if (best == kNobody || x(i) < x(best)) best = i;
  }
  return best;
}

/// The nose or shade; without one the first man past the play-side guard.
int Blocking::whammedMan() const {
  int best = kNobody;
  for (int i = kOffense; i < kMen; ++i) {
    const double off = magnitude(x(i) - shape_.middle_x);
    if (!isOnLine(defenderOf(look_, i)) || off > kOnCenter) continue;
    if (best == kNobody || off < magnitude(x(best) - shape_.middle_x)) best = i;
  }
  return best == kNobody ? trappedMan() : best;
}

bool Blocking::fan(int man, const BlockStep& step) {
  const int side = x(man) < x(shape_.middle) ? -1 : +1;
  const double a = x(man) + side * step.from, b = x(man) + side * kFanReach;
  const int target = lineman(std::min(a, b), std::max(a, b), x(man), true);
  if (target == kNobody) return false;
  job(man).kind = BlockKind::fan;
  job(man).target = target;
  return true;
}

bool Blocking::wall(int man, const BlockStep& step) {
  int target =
      step.at.empty() ? lineman(x(man) - kOnMe, x(man) + kFanReach, x(man), true) : targetNamed(step.at);
  if (target == kNobody) return false;
  job(man).kind = BlockKind::wall;
  job(man).target = target;
  return true;
}

/// Around the edge, unless a man nobody else has is on me. First puller to the force, the next to b1, b2.
bool Blocking::pullAround(int man, const BlockStep& step) {
  if (lineman(x(man) - kHeadUp, x(man) + kOnMe, x(man), true) != kNobody) return false;
  const bool first = around_ == 0;
  const std::string turns[] = {"force", "b1", "b2"};
  BlockStep pull = step;
  if (pull.at.empty()) pull.at = turns[std::min(around_, 2)];
  pull.may_log = first;
  ++around_;
  return onMan(man, first ? BlockKind::kick : BlockKind::wrap, pull);
}

/// The man left for the trap or wham is on me: I step away from him and climb.
bool Blocking::influence(int man, const BlockStep& step) {
  const bool on_me = std::any_of(reserved_.begin(), reserved_.end(), [&](int left) {
    return left != kNobody && magnitude(x(left) - x(man)) < 2.0 * kOnMe;
  });
  return on_me && climb(man, step);
}

bool Blocking::squeeze(int man) {
  const int side = x(man) > x(shape_.middle) ? +1 : -1;
  const int inner = neighbour(man, -side);
  if (inner == kNobody) return false;
  const double a = x(inner) - side * kHeadUp, b = x(man) - side * kInside;
  const int target = lineman(std::min(a, b), std::max(a, b), x(man), false);
  if (target == kNobody) return false;
  job(man).kind = BlockKind::down;
  job(man).target = target;
  return true;
}

/// Two or three on the centre's man.
bool Blocking::wedge(int man) {
  const int target =
      lineman(shape_.middle_x - kOnCenter, shape_.middle_x + kOnCenter, shape_.middle_x, false);
  if (target == kNobody) return false;
  job(man).kind = BlockKind::base;
  job(man).target = target;
  return true;
}

/// A receiver's inside block on the nearest man nobody else has.
bool Blocking::crack(int man, const BlockStep& step) {
  int best = step.at.empty() ? kNobody : targetNamed(step.at);
  const int side = x(man) > x(shape_.middle) ? +1 : -1;
  for (int i = kOffense; i < kMen && step.at.empty(); ++i) {
    const Defender& over = defenderOf(look_, i);
    const double in = side * (x(man) - x(i));
    const bool may = over.spot.y <= kCrackDepth && in > 0.5 && in < kCrackReach && !blocked(i) &&
                     (over.rule != PlaceRule::corner || over.nub);
    if (may && (best == kNobody || x(i) * side > x(best) * side)) best = i;
  }
  if (best == kNobody) return false;
  job(man).kind = BlockKind::crack;
  job(man).target = best;
  return true;
}

bool Blocking::fake(int man) {
  job(man).kind = BlockKind::fake;
  job(man).fake_side = attackerOf(look_, man).vel.x > 0.0 ? +1 : -1;
  return true;
}

}  // namespace gapsound
