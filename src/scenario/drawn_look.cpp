#include "scenario/drawn_look.hpp"

#include <algorithm>

#include "base/error.hpp"
#include "base/nearest.hpp"
#include "scenario/legality.hpp"
#include "scenario/mirror.hpp"
#include "scenario/motion.hpp"
#include "scenario/settings.hpp"

namespace gapsound {
namespace {

constexpr double kFieldWidth = 53.333;

/// Men named by side keep their places in the order when the look is turned over.
template <class Men>
void putInOrder(Men& men, const Men& drawn) {
  Men ordered = men;
  for (std::size_t i = 0; i < men.size(); ++i) {
    for (const auto& man : men) {
      if (man.id == drawn[i].id) ordered[i] = man;
    }
  }
  men = ordered;
}

int orderedIndex(const Look& from, const Look& to, int attacker) {
  for (int i = 0; i < kOffense; ++i) {
    if (to.offense[static_cast<std::size_t>(i)].id == from.offense[static_cast<std::size_t>(attacker)].id)
      return i;
  }
  return kNobody;
}

/// Movements are named by the field's left and right; a front is drawn set to the right.
const Movement* movementOf(const Scenario& scenario, const Front& front, bool turned) {
  const std::string& name = scenario.defense.movement;
  if (name == "none") return nullptr;
  const Movement* found = findMovement(front, turned ? otherSideWord(name) : name);
  if (found) return found;
  refuseWord(scenario, "/defense/call/movement", name, nameHint(name, movementNames(front)));
}

Ground groundOf(const Scenario& scenario, const Names& names, const LevelKind& level) {
  const Sidelines sidelines = sidelinesOf(scenario, level);
  Ground ground{-sidelines.left, sidelines.right,         scenario.field.to_goal,
                names.splits,    names.backer_depth.from, names.backer_depth.to};
  if (scenario.offense.strength == "left") std::swap(ground.left, ground.right);
  return ground;
}

int widerSide(const Ground& ground) { return ground.left > ground.right + 1e-6 ? -1 : +1; }

int receiversSide(const Offense& offense, const Ground& ground) {
  Look look;
  look.offense = offense;
  const LineShape shape = shapeOf(offense);
  const auto right = splitOut(look, shape, +1).size(), left = splitOut(look, shape, -1).size();
  if (right == left) return widerSide(ground);
  return right > left ? +1 : -1;
}

/// Side the front is set to, +1 the drawn right of the formation: a check's, else the call's word for it.
int frontSide(const Scenario& scenario, const Names& names, const Offense& offense, const Ground& ground) {
  for (const Check* check : names.checks) {
    const int side = check->front_to_it ? sideOf(*check, offense) : 0;
    if (side != 0) return side;
  }
  const std::string& called = scenario.defense.strength;
  const std::string& word = called == "formation" ? names.front->toward : called;
  if (word == "receivers") return receiversSide(offense, ground);
  if (word == "field") return widerSide(ground);
  if (word == "boundary") return ground.left == ground.right ? +1 : -widerSide(ground);
  if (word == "formation") return +1;
  return word == scenario.offense.strength ? +1 : -1;
}

Offense turnedOver(const Offense& offense) {
  Look look;
  look.offense = offense;
  return gapsound::turnedOver(look).offense;
}

/// The front on an offense that stands strong right, whichever side the front is set to.
Look defended(const Scenario& scenario, const Names& names, Ground ground, const Offense& offense) {
  const bool front_left = frontSide(scenario, names, offense, ground) < 0;
  const bool turned = (scenario.offense.strength == "left") != front_left;
  const DefenseCall call{names.front, names.shell, movementOf(scenario, *names.front, turned), names.checks};
  if (!front_left) return alignDefense(offense, call, ground);
  std::swap(ground.left, ground.right);
  return gapsound::turnedOver(alignDefense(turnedOver(offense), call, ground));
}

/// The look as drawn, strong right, before anybody is placed by hand.
Look drawnLook(const Scenario& scenario, const Names& names, const LevelKind& level) {
  const Ground ground = groundOf(scenario, names, level);
  const int run_side = scenario.offense.strength == scenario.offense.direction ? +1 : -1;
  const auto offense = alignOffense(*names.formation, names.scheme, run_side, ground);
  const auto defense = [&](const Offense& men) { return defended(scenario, names, ground, men); };
  return names.motion ? movedLook(offense, *names.motion, scenario, defense) : defense(offense);
}

Look alignedLook(const Scenario& scenario, const Names& names, const LevelKind& level) {
  try {
    return drawnLook(scenario, names, level);
  } catch (const CheckMissing& missing) {
    refuseWord(scenario, "/defense/call/checks", missing.check, missing.needs);
  }
}

}  // namespace

Sidelines sidelinesOf(const Scenario& scenario, const LevelKind& level) {
  if (scenario.start && scenario.start->left_sideline)
    return {*scenario.start->left_sideline, *scenario.start->left_sideline + kFieldWidth};
  const FieldSpot& field = scenario.field;
  const double near = level.hash_to_sideline, far = kFieldWidth - near;
  if (field.spot == "left_hash") return {-near, far};
  if (field.spot == "right_hash") return {-far, near};
  return {-0.5 * kFieldWidth, 0.5 * kFieldWidth};
}

Look turnedOver(const Look& look) {
  const Look over = flipped(look);
  Look ordered = over;
  putInOrder(ordered.offense, look.offense);
  putInOrder(ordered.defense, look.defense);
  for (Defender& man : ordered.defense) {
    if (man.man_on != kNobody) man.man_on = orderedIndex(over, ordered, man.man_on);
  }
  return ordered;
}

Look lookOf(const Scenario& scenario, const Names& names, const LevelKind& level) {
  const Look drawn = alignedLook(scenario, names, level);
  Look look = scenario.offense.strength == "left" ? turnedOver(drawn) : drawn;
  placeByHand(look, scenario);
  const Sidelines sidelines = sidelinesOf(scenario, level);
  requireLegal(look, scenario, sidelines.left, sidelines.right);
  return look;
}

}  // namespace gapsound
