#include <algorithm>
#include <cmath>

#include "base/numbers.hpp"
#include "scenario/align.hpp"

namespace gapsound {
namespace {

constexpr double kDrawnLineY = 0.8;     // y of a lineman of the defense as drawn
constexpr double kSlotWidth = 12.0;     // a receiver wider than this, yd, is no slot
constexpr double kOutsideEnd = 1.25;    // overhang with a tight end and no slot, yd outside him
constexpr double kOutsideTackle = 2.5;  // and with neither
constexpr double kHighSafety = 1.6;     // high safety without a slot, likewise
constexpr double kInsideSlot = 2.0;     // high safety inside the slot, yd
constexpr double kTightReceiver = 8.0;  // widest receiver inside this: his corner is an edge man
constexpr double kOutsideRolled = 2.0;  // deep corner outside a safety rolled down on a nub side, yd
constexpr double kNearest = 0.6;        // y of a lineman no nearer than this, or he is in the neutral zone
constexpr double kLinemanRoom = 0.85;   // least distance between two linemen of the front, yd
constexpr Vec2 kNubCorner{6.5, 5.0};

double magnitude(double x) { return x < 0 ? -x : x; }
int sideAt(double x) { return x < 0 ? -1 : +1; }

class Aligner {
 public:
  Aligner(Look look, const DefenseCall& call, const Ground& ground)
      : look_(std::move(look)),
        shape_(shapeOf(look_.offense)),
        call_(call),
        front_(*call.front),
        shell_(*call.shell),
        ground_(ground) {}

  Look run() {
    for (std::size_t i = 0; i < front_.men.size(); ++i) placeBox(front_.men[i], look_.defense[i]);
    for (const int side : {+1, -1}) keepLineApart(side);
    bringSecondSafety();
    placeSafeties();
    placeCorners();
    for (const Check* check : call_.checks) applyCheck(look_, *check, ground_);
    if (shell_.strong_corner.man) giveMen();
    if (call_.movement) move(*call_.movement);
    return look_;
  }

 private:
  double onLine(double x) const;
  double overhangX(const Placement& placement, int side) const;
  std::optional<double> slotX(int side) const;
  double deepY(double y, bool deep) const;
  void placeBox(const FrontMan& drawn, Defender& man);
  void keepLineApart(int side);
  void placeOverhang(const Placement& placement, Defender& man);
  void bringSecondSafety();
  void placeSafeties();
  void placeSafety(Defender& man, const SafetySpot& spot, int side);
  double safetyX(const SafetySpot& spot, int side) const;
  int rolledSide() const;
  void placeCorners();
  void placeCorner(Defender& man, const CornerSpot& spot, int side);
  bool safetyRolled(int side) const;
  double rolledX(int side) const;
  void giveMen();
  void giveAcross(Defender& man);
  void give(Defender& man, const std::vector<int>& receivers);
  [[nodiscard]] std::vector<int> insideOut(int side) const;
  void move(const Movement& movement);
  Defender* named(const std::string& id);
  std::vector<Defender*> safeties();
  bool taken(int receiver) const;

  Look look_;
  LineShape shape_;
  const DefenseCall& call_;
  const Front& front_;
  const Shell& shell_;
  const Ground& ground_;
};

/// A spot drawn against school splits, carried over to the blockers that are there.
double Aligner::onLine(double x) const {
  const int side = sideAt(x);
  const double drawn = side * x;
  const auto& xs = shape_.xs(side);
  const Splits& splits = ground_.splits;
  const double end = shape_.hasEnd(side) ? xs[2] : xs[1] + side * (splits.end - splits.tackle);
  const double knots[] = {0.0, 1.35, 2.75, 4.40}, real[] = {shape_.middle_x, xs[0], xs[1], end};
  for (int i = 0; i < 3; ++i) {
    if (drawn <= knots[i + 1]) {
      return real[i] + (drawn - knots[i]) / (knots[i + 1] - knots[i]) * (real[i + 1] - real[i]);
    }
  }
  return end + side * (drawn - 4.40);
}

std::optional<double> Aligner::slotX(int side) const {
  const auto receivers = splitOut(look_, shape_, side);
  if (receivers.empty()) return std::nullopt;
  const double x = side * look_.offense[static_cast<std::size_t>(receivers.back())].spot.x;
  const bool slot = x <= kSlotWidth && (receivers.size() > 1 || x < kTightReceiver || !shape_.hasEnd(side));
  return slot ? std::optional(side * x) : std::nullopt;
}

double Aligner::overhangX(const Placement& placement, int side) const {
  const double last = shape_.lastX(side);
  if (const auto slot = slotX(side)) return last + placement.share * (*slot - last);
  return last + side * (shape_.hasEnd(side) ? kOutsideEnd : kOutsideTackle);
}

double Aligner::deepY(double y, bool deep) const {
  const double wanted = y + (deep ? ground_.splits.shell_deeper : 0.0);
  return std::min(wanted, std::max(4.5, ground_.to_goal + 4.0));
}

void Aligner::placeOverhang(const Placement& placement, Defender& man) {
  int side = sideAt(placement.spot.x);
  if (placement.rule == PlaceRule::slot && !slotX(side) && slotX(-side)) {
    side = -side;
    man.gap = otherSideGap(man.gap);
  }
  man.spot = {overhangX(placement, side), placement.spot.y};
}

void Aligner::placeBox(const FrontMan& drawn, Defender& man) {
  const bool end = shape_.hasEnd(sideAt(drawn.drawn.spot.x));
  const auto& instead = end ? drawn.with_te : drawn.without_te;
  const Placement& placement = instead ? *instead : drawn.drawn;
  man.id = drawn.id;
  man.group = drawn.group;
  man.rule = placement.rule;
  man.gap = placement.gap;
  man.spot = placement.spot;
  const bool overhang = placement.rule == PlaceRule::overhang || placement.rule == PlaceRule::slot;
  man.level = overhang ? 2 : drawn.level;
  if (overhang) placeOverhang(placement, man);
  if (placement.rule != PlaceRule::line) return;
  man.spot.x = onLine(placement.spot.x);
  if (man.level == 1) {
    man.spot.y = std::max(man.spot.y + ground_.splits.front_y - kDrawnLineY, kNearest);
  } else {
    man.spot.y = clamped(man.spot.y, ground_.backers_from, ground_.backers_to);
  }
}

/// Tight splits leave the front no room: the outer of two linemen steps out.
void Aligner::keepLineApart(int side) {
  std::vector<Defender*> men;
  for (Defender& man : look_.defense) {
    if (man.level == 1 && man.rule == PlaceRule::line && side * (man.spot.x - shape_.middle_x) > 0)
      men.push_back(&man);
  }
  std::stable_sort(men.begin(), men.end(),
                   [&](auto* a, auto* b) { return side * a->spot.x < side * b->spot.x; });
  for (std::size_t i = 1; i < men.size(); ++i) {
    men[i]->spot.x = side * std::max(side * men[i]->spot.x, side * men[i - 1]->spot.x + kLinemanRoom);
  }
}

std::vector<Defender*> Aligner::safeties() {
  std::vector<Defender*> men;
  for (Defender& man : look_.defense) {
    if (man.rule == PlaceRule::safety) men.push_back(&man);
  }
  return men;
}

Defender* Aligner::named(const std::string& id) {
  for (Defender& man : look_.defense) {
    if (man.id == id) return &man;
  }
  return nullptr;
}

/// A shell with two high safeties on a front that has one takes one more man back.
void Aligner::bringSecondSafety() {
  const bool wants_two = shell_.weak_safety.over != SafetySpot::Over::middle;
  Defender* man = named(front_.second_safety);
  if (!wants_two || !man || safeties().size() >= 2) return;
  man->rule = PlaceRule::safety;
  man->sent_back = true;
  man->level = 3;
  man->gap = man->spot.x < 0 ? "cutback" : "alley+";
}

int Aligner::rolledSide() const {
  bool strong = false, weak = false;
  for (const Defender& man : look_.defense) {
    const bool overhang = man.rule == PlaceRule::overhang || man.rule == PlaceRule::slot;
    (man.spot.x > 0 ? strong : weak) |= overhang;
  }
  return strong && !weak ? -1 : +1;
}

double Aligner::safetyX(const SafetySpot& spot, int side) const {
  using Over = SafetySpot::Over;
  const double last = side * shape_.lastX(side);
  const auto slot = slotX(side);
  switch (spot.over) {
    case Over::middle:
      return shape_.middle_x;
    case Over::inside:
      return onLine(side * spot.x);
    case Over::edge:
      return side * std::max(spot.x, last + kEdgeSafety);
    case Over::man:
      if (shape_.hasEnd(side)) return shape_.xs(side)[2] + side * 0.6;
      return slot && splitOut(look_, shape_, side).size() > 1 ? *slot - side * 0.5 : side * spot.x;
    case Over::two:
      break;
  }
  if (slot) return side * std::max(spot.x, side * *slot - kInsideSlot);
  return side * std::max(spot.x, last + kHighSafety);
}

void Aligner::placeSafety(Defender& man, const SafetySpot& spot, int side) {
  man.spot = {safetyX(spot, side), deepY(spot.y, spot.deep)};
  man.rolled = spot.rolled;
  man.middle = spot.over == SafetySpot::Over::middle;
}

void Aligner::placeSafeties() {
  auto men = safeties();
  if (men.empty()) return;
  const bool middle = shell_.weak_safety.over == SafetySpot::Over::middle;
  if (men.size() == 1) return placeSafety(*men[0], shell_.weak_safety, -1);
  std::stable_sort(men.begin(), men.end(), [](auto* a, auto* b) { return a->spot.x > b->spot.x; });
  const int side = shell_.strong_safety.rolled && middle ? rolledSide() : +1;
  placeSafety(*men[0], shell_.strong_safety, side);
  placeSafety(*men[1], shell_.weak_safety, -1);
}

void Aligner::placeCorners() {
  for (Defender& man : look_.defense) {
    if (man.rule != PlaceRule::corner) continue;
    const int side = sideAt(man.spot.x);
    placeCorner(man, side > 0 ? shell_.strong_corner : shell_.weak_corner, side);
  }
}

void Aligner::placeCorner(Defender& man, const CornerSpot& spot, int side) {
  const double room = (side > 0 ? ground_.right : ground_.left) - 1.0;
  const auto receivers = splitOut(look_, shape_, side);
  const double last = side * shape_.lastX(side);
  if (receivers.empty()) {
    man.nub = true;
    if (safetyRolled(side)) {
      man.spot = {side * (last + kEdgeSafety + kOutsideRolled), deepY(spot.y, spot.deep)};
      return;
    }
    const bool drawn_tight = magnitude(man.spot.x) < kTightReceiver;
    man.spot = {side * std::max(kNubCorner.x, last + kEdgeSafety), drawn_tight ? man.spot.y : kNubCorner.y};
    return;
  }
  const double widest = side * look_.offense[static_cast<std::size_t>(receivers.front())].spot.x;
  man.nub = widest < kTightReceiver;
  if (man.nub) {
    man.spot = {side * std::max(widest + 1.5, rolledX(side) + kOutsideRolled), kNubCorner.y};
    return;
  }
  man.spot = {side * std::min(spot.x ? std::min(*spot.x, widest) : widest + spot.leverage, room),
              deepY(spot.y, spot.deep)};
}

/// How far out a safety rolled down on this side stands; 0 without one.
double Aligner::rolledX(int side) const {
  double x = 0.0;
  for (const Defender& man : look_.defense) {
    if (man.rolled) x = std::max(x, side * man.spot.x);
  }
  return x;
}

bool Aligner::safetyRolled(int side) const {
  return std::any_of(look_.defense.begin(), look_.defense.end(),
                     [&](const Defender& man) { return man.rolled && side * man.spot.x > 0; });
}

bool Aligner::taken(int receiver) const {
  return std::any_of(look_.defense.begin(), look_.defense.end(),
                     [&](const Defender& man) { return man.man_on == receiver; });
}

void Aligner::give(Defender& man, const std::vector<int>& receivers) {
  for (const int receiver : receivers) {
    if (man.man_on != kNobody || taken(receiver)) continue;
    man.man_on = receiver;
  }
}

/// Split receivers of a side from the inside out, then the tight end.
std::vector<int> Aligner::insideOut(int side) const {
  auto men = splitOut(look_, shape_, side);
  std::reverse(men.begin(), men.end());
  if (shape_.hasEnd(side)) men.push_back(shape_.men(side)[2]);
  return men;
}

/// Man coverage: corners take the widest, overhangs the slots, safeties who are down the tight end or the
/// next receiver.
void Aligner::giveMen() {
  for (Defender& man : look_.defense) {
    if (man.rule == PlaceRule::corner && !man.nub) give(man, splitOut(look_, shape_, sideAt(man.spot.x)));
  }
  for (Defender& man : look_.defense) {
    if (man.rule == PlaceRule::overhang || man.rule == PlaceRule::slot) {
      give(man, insideOut(sideAt(man.spot.x)));
    }
  }
  for (Defender& man : look_.defense) {
    const int side = sideAt(man.spot.x);
    if (man.rule != PlaceRule::safety || !man.rolled) continue;
    if (shape_.hasEnd(side)) give(man, {shape_.men(side)[2]});
    give(man, insideOut(side));
  }
  for (Defender& man : look_.defense) {
    if (man.rule == PlaceRule::corner && man.man_on == kNobody) giveAcross(man);
  }
}

/// A corner left over goes across to a receiver nobody has, else he takes the wing of his side.
void Aligner::giveAcross(Defender& man) {
  const int side = sideAt(man.spot.x);
  give(man, splitOut(look_, shape_, -side));
  if (man.man_on != kNobody) {
    man.nub = false;
    man.spot = {look_.offense[static_cast<std::size_t>(man.man_on)].spot.x, deepY(6.0, false)};
    return;
  }
  const auto& men = shape_.men(side);
  if (men.size() > 2) give(man, {men.begin() + 2, men.end()});
}

void Aligner::move(const Movement& movement) {
  for (Defender& man : look_.defense) {
    const auto found = movement.gaps.find(man.id);
    if (found != movement.gaps.end() && found->second != man.gap) man.moved_gap = found->second;
    const auto guard = movement.guards.find(man.id);
    if (guard != movement.guards.end()) man.guard = guard->second;
  }
}

}  // namespace

Look alignDefense(const std::array<Attacker, kOffense>& offense, const DefenseCall& call,
                  const Ground& ground) {
  Look look;
  look.offense = offense;
  return Aligner(look, call, ground).run();
}

}  // namespace gapsound
