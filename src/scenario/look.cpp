#include "scenario/look.hpp"

#include <algorithm>
#include "base/numbers.hpp"

namespace gapsound {
namespace {

constexpr double kOutsideEdge = 0.9;  // centre of the last gap beyond the last blocker, yd
constexpr double kForceEdge = 1.9;    // where force and alley are called from, likewise
constexpr double kWingReach = 1.6;    // a wing stands at most this far outside the last man on the line

bool isLineman(Group group) {
  return group == Group::off_tackle || group == Group::guard || group == Group::center;
}

std::vector<int> linemenByX(const std::array<Attacker, kOffense>& offense) {
  std::vector<int> men;
  for (int i = 0; i < kOffense; ++i) {
    if (isLineman(offense[static_cast<std::size_t>(i)].group)) men.push_back(i);
  }
  std::stable_sort(men.begin(), men.end(), [&](int a, int b) {
    return offense[static_cast<std::size_t>(a)].spot.x < offense[static_cast<std::size_t>(b)].spot.x;
  });
  return men;
}

/// Men of one side that are part of the line, inside out: the next one never further than `reach` away.
void gather(const std::array<Attacker, kOffense>& offense, int side, LineShape& shape) {
  constexpr double kNextMan = 2.3;
  auto& men = side > 0 ? shape.right : shape.left;
  auto& xs = side > 0 ? shape.right_x : shape.left_x;
  for (double from = side * shape.middle_x;;) {
    int next = kNobody;
    double next_x = 99.0;
    for (int i = 0; i < kOffense; ++i) {
      const Attacker& man = offense[static_cast<std::size_t>(i)];
      const double x = side * man.spot.x;
      if (man.on_line && x > from + 1e-9 && x < next_x && x - from <= kNextMan) next = i, next_x = x;
    }
    if (next == kNobody) break;
    men.push_back(next);
    xs.push_back(side * next_x);
    from = next_x;
  }
  (side > 0 ? shape.right_end : shape.left_end) = men.size() > 2;
}

void addWing(const std::array<Attacker, kOffense>& offense, int side, LineShape& shape) {
  auto& men = side > 0 ? shape.right : shape.left;
  auto& xs = side > 0 ? shape.right_x : shape.left_x;
  const double last = side * xs.back();
  for (int i = 0; i < kOffense; ++i) {
    const Attacker& man = offense[static_cast<std::size_t>(i)];
    const double out = side * man.spot.x - last;
    if (man.group == Group::tight_end && !man.on_line && out > 0.5 && out <= kWingReach &&
        man.spot.y > -3.0) {
      men.push_back(i);
      xs.push_back(man.spot.x);
      return;
    }
  }
}

double between(double a, double b) { return 0.5 * (a + b); }

/// Centre of a letter's gap on a side; letters beyond the last blocker all mean the edge.
double letterCentre(const LineShape& shape, char letter, int side) {
  const auto& xs = shape.xs(side);
  const auto index = static_cast<std::size_t>(letter - 'A');
  if (index >= xs.size()) return xs.back() + side * kOutsideEdge;
  return between(index == 0 ? shape.middle_x : xs[index - 1], xs[index]);
}

bool startsWith(const std::string& text, const char* head) { return text.rfind(head, 0) == 0; }

}  // namespace

std::string otherSide(const std::string& id) {
  if (id == "CR") return "CL";
  if (id == "CL") return "CR";
  if (id.size() == 2 && (id[1] == 'T' || id[1] == 'G')) {
    if (id[0] == 'L') return std::string("R") + id[1];
    if (id[0] == 'R') return std::string("L") + id[1];
  }
  return id;
}

std::string otherSideGap(const std::string& gap) {
  std::string out = gap;
  for (char& c : out) c = c == '+' ? '-' : c == '-' ? '+' : c;
  return out;
}

Look flipped(const Look& look) {
  Look out = look;
  for (Attacker& man : out.offense) {
    man.spot = mirrored(man.spot);
    man.vel = mirrored(man.vel);
    man.id = otherSide(man.id);
  }
  for (Defender& man : out.defense) {
    man.spot = mirrored(man.spot);
    man.id = otherSide(man.id);
    man.gap = otherSideGap(man.gap);
    man.moved_gap = otherSideGap(man.moved_gap);
    man.guard = -man.guard;
  }
  return out;
}

LineShape shapeOf(const std::array<Attacker, kOffense>& offense) {
  LineShape shape;
  shape.middle = linemenByX(offense)[2];
  shape.middle_x = offense[static_cast<std::size_t>(shape.middle)].spot.x;
  for (const int side : {+1, -1}) {
    gather(offense, side, shape);
    addWing(offense, side, shape);
  }
  return shape;
}

bool isAttached(const LineShape& shape, int attacker) {
  const auto holds = [&](const std::vector<int>& men) {
    return std::find(men.begin(), men.end(), attacker) != men.end();
  };
  return attacker == shape.middle || holds(shape.right) || holds(shape.left);
}

double gapCentre(const LineShape& shape, const std::string& gap, Vec2 spot) {
  const std::string first = gap.substr(0, gap.find('/'));
  const char last = first.empty() ? '\0' : first.back();
  const int side = last == '+' ? +1 : last == '-' ? -1 : signOf(spot.x) >= 0 ? +1 : -1;
  if (first.size() == 2 && first[0] >= 'A' && first[0] <= 'E') return letterCentre(shape, first[0], side);
  if (startsWith(first, "force") || startsWith(first, "alley")) return shape.lastX(side) + side * kForceEdge;
  if (startsWith(first, "edge")) return shape.lastX(side) + side * kOutsideEdge;
  if (startsWith(first, "cutback")) return letterCentre(shape, 'B', side);
  if (startsWith(first, "post")) return shape.middle_x;
  return spot.x;
}

std::vector<int> splitOut(const Look& look, const LineShape& shape, int side) {
  std::vector<int> men;
  for (int i = 0; i < kOffense; ++i) {
    const Attacker& man = look.offense[static_cast<std::size_t>(i)];
    const bool wide = man.group == Group::receiver || man.group == Group::tight_end;
    if (wide && !isAttached(shape, i) && side * (man.spot.x - shape.lastX(side)) > 0.5) men.push_back(i);
  }
  std::stable_sort(men.begin(), men.end(), [&](int a, int b) {
    return side * look.offense[static_cast<std::size_t>(a)].spot.x >
           side * look.offense[static_cast<std::size_t>(b)].spot.x;
  });
  return men;
}

SnapKind snapSeen(const Look& look) {
  constexpr double kGun = 4.6, kPistol = 3.0;  // yd behind the ball at least
  for (const Attacker& man : look.offense) {
    if (man.group != Group::quarterback) continue;
    return man.spot.y < -kGun      ? SnapKind::gun
           : man.spot.y < -kPistol ? SnapKind::pistol
                                   : SnapKind::under_center;
  }
  return SnapKind::gun;
}

}  // namespace gapsound
