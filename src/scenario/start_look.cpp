#include <algorithm>
#include <cmath>

#include "base/numbers.hpp"
#include "scenario/start.hpp"

namespace gapsound {
namespace {

constexpr double kLinemanY = -1.0, kWingY = -2.1;
constexpr double kOnLineAttack = -1.7;  // deepest an end or receiver counted on the line was, yd
constexpr double kOnLineDefend = 1.7;   // and a backer
constexpr double kNextMan = 2.6;        // farthest an end stood outside the tackle, yd
constexpr double kBoxEdge = 2.2;        // outside the last lineman, still in the box, yd
constexpr double kDeep = 6.5;           // a man of the secondary nearer than this is down, yd
constexpr double kSlotWidth = 12.0;
constexpr const char* kOrder[] = {"LT", "LG", "C", "RG", "RT"};

double magnitude(double x) { return x < 0 ? -x : x; }
int sideOf(double x) { return x < 0 ? -1 : +1; }

/// Where he was at the snap if he has sped up evenly since.
Vec2 before(const StartMan& man, double since) { return man.pos - (0.5 * since) * man.vel; }

bool isLineman(Group g) { return g == Group::guard || g == Group::center || g == Group::off_tackle; }

struct Filmed {
  std::string id;
  Group group;
  Vec2 spot;
};

std::vector<Filmed> menOf(const Start& start, bool attack) {
  std::vector<Filmed> men;
  for (const auto& [id, man] : start.men) {
    const Group g = *groupNamed(man.group);
    const bool defends = g == Group::corner || g == Group::safety || g == Group::backer || g == Group::edge ||
                         g == Group::tackle;
    if (defends != attack) men.push_back({id, g, before(man, start.since_snap_s)});
  }
  return men;
}

/// The five by id, else from the left; they stood at the level's splits with the ball over the middle one.
void placeLine(std::vector<Filmed>& men, const Splits& splits) {
  std::vector<Filmed*> line;
  for (Filmed& man : men)
    if (isLineman(man.group)) line.push_back(&man);
  std::stable_sort(line.begin(), line.end(), [](auto* a, auto* b) { return a->spot.x < b->spot.x; });
  const auto rank = [&](const Filmed* man) {
    return std::find(std::begin(kOrder), std::end(kOrder), man->id) - std::begin(kOrder);
  };
  const bool by_id = std::all_of(line.begin(), line.end(), [&](auto* man) { return rank(man) < 5; });
  if (by_id) std::stable_sort(line.begin(), line.end(), [&](auto* a, auto* b) { return rank(a) < rank(b); });
  const double xs[] = {-splits.tackle, -splits.guard, 0.0, splits.guard, splits.tackle};
  for (std::size_t k = 0; k < line.size() && k < 5; ++k)
    line[k]->spot = {xs[k], kLinemanY - (k == 2 ? 0.0 : splits.line_back)};
}

/// Ends and wings stood beside the tackle, receivers outside, backs behind.
Attacker attackerFrom(const Filmed& man, const Splits& splits) {
  Attacker out{man.id, man.group, man.spot, isLineman(man.group), {}};
  if (out.on_line) return out;
  const double off = magnitude(man.spot.x) - splits.tackle;
  const bool end = man.group == Group::tight_end && off > 0.3 && man.spot.y > -3.0;
  if (end && off < kNextMan) {
    out.on_line = man.spot.y > kOnLineAttack;
    out.spot = {sideOf(man.spot.x) * (splits.end + (out.on_line ? 0.0 : 0.9)),
                out.on_line ? kLinemanY : kWingY};
    return out;
  }
  const double front = isLineman(man.group) ? -0.5 : -0.7;
  out.spot.y = std::min(man.spot.y, front);
  return out;
}

void fillOffense(Look& look, const Start& start, const Splits& splits) {
  std::vector<Filmed> men = menOf(start, true);
  placeLine(men, splits);
  std::stable_sort(men.begin(), men.end(), [](const Filmed& a, const Filmed& b) {
    return isLineman(a.group) != isLineman(b.group) ? isLineman(a.group)
                                                    : a.spot.x < b.spot.x && isLineman(a.group);
  });
  for (std::size_t i = 0; i < look.offense.size(); ++i) look.offense[i] = attackerFrom(men[i], splits);
}

/// A letter for where a man stands on the line, sides by + and -.
std::string gapAt(const LineShape& shape, double x) {
  std::string best = "A+";
  double least = 99.0;
  for (const char side : {'+', '-'}) {
    for (char letter = 'A'; letter <= 'D'; ++letter) {
      const std::string gap{letter, side};
      const double off = magnitude(gapCentre(shape, gap, {}) - x);
      if (off < least - 1e-9) least = off, best = gap;
    }
  }
  return best;
}

class Reader {
 public:
  Reader(Look& look, const Front* front, const Splits& splits)
      : look_(look), front_(front), splits_(splits), shape_(shapeOf(look.offense)) {}

  void run(const std::vector<Filmed>& men) {
    for (std::size_t i = 0; i < look_.defense.size(); ++i) look_.defense[i] = defenderFrom(men[i]);
    requireLine();
    markMiddle();
  }

 private:
  Defender defenderFrom(const Filmed& man) const;
  void putOnLine(Defender& man) const;
  void putBehind(Defender& man) const;
  void putDeep(Defender& man) const;
  bool overSlot(const Filmed& man) const;
  void requireLine();
  void markMiddle();
  const FrontMan* drawn(const std::string& id) const;

  Look& look_;
  const Front* front_;
  Splits splits_;
  LineShape shape_;
};

const FrontMan* Reader::drawn(const std::string& id) const {
  if (!front_) return nullptr;
  for (const FrontMan& man : front_->men)
    if (man.id == id) return &man;
  return nullptr;
}

void Reader::putOnLine(Defender& man) const {
  man.level = 1;
  man.rule = PlaceRule::line;
  man.spot.y = splits_.front_y;
  man.gap = gapAt(shape_, man.spot.x);
}

void Reader::putBehind(Defender& man) const {
  const double last = magnitude(shape_.lastX(sideOf(man.spot.x)));
  const bool wide = magnitude(man.spot.x) > last + 1.0;
  man.level = 2;
  man.rule = wide ? PlaceRule::overhang : PlaceRule::line;
  man.spot.y = std::clamp(man.spot.y, 2.0, wide ? 8.0 : 6.4);
  man.gap = wide ? (man.spot.x > 0 ? "force+" : "force-") : gapAt(shape_, man.spot.x);
}

/// A nickel, or a corner well inside the widest receiver of his side.
bool Reader::overSlot(const Filmed& man) const {
  if (man.id == "NK") return true;
  const auto receivers = splitOut(look_, shape_, sideOf(man.spot.x));
  if (man.group != Group::corner || receivers.empty()) return false;
  const double wide = magnitude(look_.offense[static_cast<std::size_t>(receivers.front())].spot.x);
  return man.spot.y < kDeep + 1.0 && magnitude(man.spot.x) < std::min(kSlotWidth, wide - 3.0);
}

void Reader::putDeep(Defender& man) const {
  const bool corner = man.group == Group::corner;
  man.level = 3;
  man.rule = corner ? PlaceRule::corner : PlaceRule::safety;
  man.spot.y = std::max(man.spot.y, 2.0);
  man.gap = corner ? "deep" : man.spot.x > 0 ? "alley+" : "cutback";
  man.rolled = !corner && man.spot.y < kDeep;
  man.nub = corner && splitOut(look_, shape_, sideOf(man.spot.x)).empty();
}

/// Linemen are on the line; backers there or behind it; a corner or safety over a slot is an overhang.
Defender Reader::defenderFrom(const Filmed& man) const {
  Defender out;
  out.id = man.id;
  out.group = man.group;
  out.spot = man.spot;
  const double last = magnitude(shape_.lastX(sideOf(man.spot.x)));
  const bool on_line = man.spot.y < kOnLineDefend && magnitude(man.spot.x) < last + kBoxEdge;
  const bool lineman = man.group == Group::tackle || man.group == Group::edge;
  const FrontMan* known = drawn(man.id);
  if (known ? known->level == 1 : lineman || (man.group == Group::backer && on_line)) {
    putOnLine(out);
  } else if (known ? known->level == 2 : man.group == Group::backer || overSlot(man)) {
    putBehind(out);
  } else {
    putDeep(out);
  }
  return out;
}

/// Somebody stood on the line on either side of the ball, whatever the labels say.
void Reader::requireLine() {
  for (const int side : {+1, -1}) {
    const auto there = [&](const Defender& man) { return man.level == 1 && side * man.spot.x > 0.0; };
    if (std::any_of(look_.defense.begin(), look_.defense.end(), there)) continue;
    const auto nearest = std::min_element(look_.defense.begin(), look_.defense.end(),
                                          [&](const Defender& a, const Defender& b) {
                                            const auto far = [&](const Defender& man) {
                                              return man.spot.y + magnitude(man.spot.x) +
                                                     (side * man.spot.x > 0.0 && man.level > 1 ? 0.0 : 99.0);
                                            };
                                            return far(a) < far(b);
                                          });
    if (side * nearest->spot.x > 0.0 && nearest->level > 1) putOnLine(*nearest);
  }
}

/// One deep safety near the middle, nobody else as deep.
void Reader::markMiddle() {
  Defender* deep = nullptr;
  int count = 0;
  for (Defender& man : look_.defense) {
    if (man.rule != PlaceRule::safety || man.rolled) continue;
    ++count;
    deep = &man;
  }
  if (count == 1 && magnitude(deep->spot.x) < 5.0) deep->middle = true;
}

}  // namespace

Look filmedLook(const Scenario& right, const Front* front, const Splits& splits) {
  Look look;
  fillOffense(look, *right.start, splits);
  Reader(look, front, splits).run(menOf(*right.start, false));
  return look;
}

}  // namespace gapsound
