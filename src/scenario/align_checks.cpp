#include <algorithm>

#include "scenario/align.hpp"
#include "scenario/counts.hpp"

namespace gapsound {
namespace {

using Who = CheckStep::Who;
using Place = CheckStep::Place;

constexpr double kEdgeX = 6.0;           // a man on the edge stands at least this far out, yd
constexpr double kNineOutside = 0.4;     // outside shoulder of the last man on the line
constexpr double kOutsideEdgeMan = 2.0;  // next man outside one on the edge, yd
constexpr double kRoom = 0.9;            // between two men, yd
constexpr std::size_t kTripsMen = 3;

bool isNub(const Look& look, const LineShape& shape, int side) {
  return shape.hasEnd(side) && splitOut(look, shape, side).empty();
}

std::size_t receiversOn(const Look& look, const LineShape& shape, int side) {
  return splitOut(look, shape, side).size() + (shape.hasEnd(side) ? 1 : 0);
}

double snapperX(const Look& look) {
  for (const Attacker& man : look.offense) {
    if (man.group == Group::center) return man.spot.x;
  }
  return 0.0;
}

int sideFor(Check::Against against, const Look& look, const LineShape& shape) {
  const double off = shape.middle_x - snapperX(look);
  for (const int side : {+1, -1}) {
    switch (against) {
      case Check::Against::nub:
        if (isNub(look, shape, side)) return side;
        break;
      case Check::Against::trips:
        if (receiversOn(look, shape, side) >= kTripsMen) return side;
        break;
      case Check::Against::unbalanced:
        if (side * off > 0.5) return side;
        break;
    }
  }
  return 0;
}

std::string needsOf(Check::Against against) {
  switch (against) {
    case Check::Against::nub:
      return "a formation with a nub side: a tight end and no receiver outside him";
    case Check::Against::trips:
      return "a formation with three receivers on a side";
    case Check::Against::unbalanced:
      break;
  }
  return "an unbalanced line";
}

class Checker {
 public:
  Checker(Look& look, const Check& check, const Ground& ground)
      : look_(look), check_(check), ground_(ground), shape_(shapeOf(look.offense)) {
    side_ = sideFor(check.against, look, shape_);
    if (side_ == 0) throw CheckMissing{check.name, needsOf(check.against)};
  }

  void run() {
    for (const CheckStep& step : check_.steps) {
      for (Defender* man : menOf(step.who)) move(*man, step);
    }
    requireRoom();
  }

 private:
  std::vector<Defender*> menOf(Who who);
  Defender* outermost(PlaceRule rule, int side);
  Defender& edge();
  void move(Defender& man, const CheckStep& step);
  void requireRoom() const;
  Vec2 spotOf(const Defender& man, const CheckStep& step) const;
  double receiverX(bool inside) const;
  void toNine(Defender& man);
  [[nodiscard]] double outside(double x) const { return side_ * x; }

  Look& look_;
  const Check& check_;
  const Ground& ground_;
  LineShape shape_;
  int side_ = +1;
};

/// The man of a rule who stands farthest to a side; the only safety is the near one and nobody's far one.
Defender* Checker::outermost(PlaceRule rule, int side) {
  Defender *best = nullptr, *other = nullptr;
  for (Defender& man : look_.defense) {
    if (man.rule != rule) continue;
    (best ? other : best) = &man;
    if (other && side * other->spot.x > side * best->spot.x) std::swap(best, other);
  }
  return side != side_ && !other ? nullptr : best;
}

Defender& Checker::edge() {
  Defender* best = nullptr;
  for (Defender& man : look_.defense) {
    if (isOnLine(man) && (!best || outside(man.spot.x) > outside(best->spot.x))) best = &man;
  }
  return *best;
}

std::vector<Defender*> Checker::menOf(Who who) {
  std::vector<Defender*> men;
  const auto one = [&](Defender* man, const char* name) {
    if (!man) throw CheckMissing{check_.name, std::string("a front with ") + name};
    men.push_back(man);
  };
  const auto every = [&](auto wanted) {
    for (Defender& man : look_.defense) {
      if (wanted(man)) men.push_back(&man);
    }
  };
  switch (who) {
    case Who::near_safety:
      one(outermost(PlaceRule::safety, side_), "a safety");
      break;
    case Who::far_safety:
      one(outermost(PlaceRule::safety, -side_), "two safeties");
      break;
    case Who::near_corner:
      one(outermost(PlaceRule::corner, side_), "a corner");
      break;
    case Who::far_corner:
      one(outermost(PlaceRule::corner, -side_), "two corners");
      break;
    case Who::near_edge:
      one(&edge(), "an end");
      break;
    case Who::overhang:
      every([](const Defender& man) { return isOverhang(man) && man.level == 2; });
      break;
    case Who::backers:
      every([](const Defender& man) { return man.level == 2 && !isOverhang(man); });
      break;
    case Who::box:
      every([](const Defender& man) { return man.level < 3 && !isOverhang(man); });
      break;
  }
  return men;
}

/// Receivers of the side away from the check: the inside one, or the second from the sideline.
double Checker::receiverX(bool inside) const {
  const auto men = splitOut(look_, shape_, -side_);
  if (men.empty()) throw CheckMissing{check_.name, "a receiver on the other side"};
  const int man = inside ? men.back() : men[std::min<std::size_t>(1, men.size() - 1)];
  return look_.offense[static_cast<std::size_t>(man)].spot.x;
}

Vec2 Checker::spotOf(const Defender& man, const CheckStep& step) const {
  const double y = step.y > 0.0 ? std::min(step.y, std::max(4.5, ground_.to_goal + 4.0)) : man.spot.y;
  switch (step.place) {
    case Place::edge:
      return {side_ * std::max(kEdgeX, outside(shape_.lastX(side_)) + kEdgeSafety), y};
    case Place::outside:
      return {side_ * (std::max(kEdgeX, outside(shape_.lastX(side_)) + kEdgeSafety) + kOutsideEdgeMan), y};
    case Place::middle:
      return {shape_.middle_x, y};
    case Place::slot:
      return {receiverX(true), y};
    case Place::split:
      return {receiverX(false), y};
    case Place::center:
      return {man.spot.x + snapperX(look_) - shape_.middle_x, y};
    case Place::nine:
    case Place::stay:
      break;
  }
  return {man.spot.x + side_ * step.by_yd, y};
}

/// The end goes outside the tight end; whoever had that gap off the ball has the one inside now.
void Checker::toNine(Defender& man) {
  const char sign = side_ > 0 ? '+' : '-';
  const std::string outer{'D', sign}, inner{'C', sign};
  man.spot.x = shape_.xs(side_)[2] + side_ * kNineOutside;
  if (man.gap != inner) return;
  for (Defender& mate : look_.defense) {
    const auto at = mate.gap.find(outer);
    if (mate.level > 1 && at != std::string::npos) mate.gap.replace(at, 2, inner);
  }
  man.gap = outer;
}

void Checker::move(Defender& man, const CheckStep& step) {
  if (step.place == Place::nine) {
    if (shape_.hasEnd(side_)) toNine(man);
  } else {
    man.spot = spotOf(man, step);
  }
  man.rolled |= step.rolled;
  man.middle |= step.middle;
  man.force |= step.force;
  man.fires |= step.fires;
  if (step.middle) man.rolled = false;
  if (step.force) man.gap = side_ > 0 ? "force+" : "force-";
  if (man.rule == PlaceRule::corner && step.place == Place::slot) man.nub = false;
}

void Checker::requireRoom() const {
  for (const Defender& a : look_.defense) {
    for (const Defender& b : look_.defense) {
      if (&a == &b || distance(a.spot, b.spot) >= kRoom) continue;
      throw CheckMissing{check_.name,
                         "a shell that leaves room: it puts " + a.id + " where " + b.id + " stands"};
    }
  }
}

}  // namespace

int sideOf(const Check& check, const std::array<Attacker, kOffense>& offense) {
  Look look;
  look.offense = offense;
  return sideFor(check.against, look, shapeOf(offense));
}

void applyCheck(Look& look, const Check& check, const Ground& ground) { Checker(look, check, ground).run(); }

}  // namespace gapsound
