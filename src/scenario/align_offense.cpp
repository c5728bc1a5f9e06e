#include <algorithm>

#include "base/numbers.hpp"
#include "scenario/align.hpp"

namespace gapsound {
namespace {

constexpr double kSidelineRoom = 3.0;  // yd a receiver keeps
constexpr double kAttached = 5.6;      // |x| of the widest man drawn as part of the line or a wing
constexpr double kSlotRoom = 1.9;      // least distance of a split receiver from the drawn end's place
constexpr double kBeside = 1.35;       // |x| of a fullback who makes room for the quarterback, yd
constexpr double kReceiverRoom = 1.2;  // yd between two split receivers
constexpr const char* kOrder[] = {"LT", "LG", "C", "RG", "RT", "Y", "U", "V",
                                  "H",  "A",  "B", "X",  "Z",  "Q", "F", "T"};

/// Drawn with school splits -> x with the level's.
double stretched(double x, const Splits& splits) {
  const double side = x < 0 ? -1.0 : 1.0, drawn = side * x;
  const double knots[] = {0.0, 1.35, 2.75, 4.40}, real[] = {0.0, splits.guard, splits.tackle, splits.end};
  for (int i = 0; i < 3; ++i) {
    if (drawn <= knots[i + 1]) {
      return side * (real[i] + (drawn - knots[i]) / (knots[i + 1] - knots[i]) * (real[i + 1] - real[i]));
    }
  }
  return side * (drawn + splits.end - 4.40);
}

/// Split receivers share the room there is: less to the boundary, more to the field.
double spread(double x, const Ground& ground) {
  const double room = x < 0 ? ground.left : ground.right;
  const double half = 0.5 * (ground.left + ground.right);
  const double side = x < 0 ? -1.0 : 1.0, drawn = side * x;
  const double least = std::min(drawn, ground.splits.end + kSlotRoom);
  return side * std::min(std::max(drawn * room / half, least), room - kSidelineRoom);
}

bool isSniffer(const FormationMan& man) { return man.id == "H" && !man.on_line; }

bool goesBack(const Scheme& scheme, const Formation& formation) {
  return std::any_of(scheme.sniffer_back.begin(), scheme.sniffer_back.end(),
                     [&](const std::string& id) { return id == "*" || id == formation.id; });
}

Vec2 spotOf(const FormationMan& man, const Ground& ground) {
  const double width = man.spot.x < 0 ? -man.spot.x : man.spot.x;
  const bool wide = width > kAttached && (man.group == Group::receiver || man.group == Group::tight_end);
  if (wide) return {spread(man.spot.x, ground), man.spot.y};
  const bool in_line = man.on_line || man.group == Group::tight_end;
  if (!in_line)
    return {man.spot.x, man.spot.y - (man.group == Group::back ? ground.splits.back_deeper : 0.0)};
  return {stretched(man.spot.x, ground.splits), man.spot.y - (man.on_line ? ground.splits.line_back : 0.0)};
}

/// Where a scheme that needs another snap puts the quarterback, yd.
double depthFor(SnapKind snap) {
  return snap == SnapKind::under_center ? -1.3 : snap == SnapKind::pistol ? -4.0 : -5.0;
}

/// The quarterback at the depth of the other snap; a fullback he would stand on steps to the play side.
void makeRoom(Attacker& man, SnapKind snap, int run_side) {
  if (man.group == Group::quarterback) man.spot.y = depthFor(snap);
  const bool in_the_way = man.group == Group::fullback && snap != SnapKind::under_center &&
                          man.spot.x < kBeside && man.spot.x > -kBeside;
  if (in_the_way) man.spot.x = run_side * kBeside;
}

bool isSplit(const Attacker& man, int side, const Ground& ground) {
  const bool wide = man.group == Group::receiver || man.group == Group::tight_end;
  return wide && side * man.spot.x > ground.splits.end + kSlotRoom - 0.1;
}

/// Receivers of a side who have little room stand at least an arm's length from each other, from the inside
/// out.
void keepApart(std::array<Attacker, kOffense>& offense, int side, const Ground& ground) {
  std::vector<Attacker*> men;
  for (Attacker& man : offense) {
    if (isSplit(man, side, ground)) men.push_back(&man);
  }
  std::stable_sort(men.begin(), men.end(),
                   [&](const Attacker* a, const Attacker* b) { return side * a->spot.x < side * b->spot.x; });
  for (std::size_t i = 1; i < men.size(); ++i) {
    men[i]->spot.x = side * std::max(side * men[i]->spot.x, side * men[i - 1]->spot.x + kReceiverRoom);
  }
}

}  // namespace

std::array<Attacker, kOffense> alignOffense(const Formation& formation, const Scheme& scheme, int run_side,
                                            const Ground& ground) {
  std::array<Attacker, kOffense> offense;
  std::size_t next = 0;
  for (const char* id : kOrder) {
    for (const FormationMan& man : formation.men) {
      if (man.id != id || next == offense.size()) continue;
      Attacker& placed = offense[next++];
      placed = {man.id, man.group, spotOf(man, ground), man.on_line, {}, false};
      const bool moves = isSniffer(man) && goesBack(scheme, formation) && placed.spot.x * run_side > 0;
      if (moves) placed.spot.x = -placed.spot.x;
      const auto other_snap = scheme.snaps.find(formation.snap);
      if (other_snap != scheme.snaps.end()) makeRoom(placed, other_snap->second, run_side);
    }
  }
  for (const int side : {+1, -1}) keepApart(offense, side, ground);
  return offense;
}

}  // namespace gapsound
