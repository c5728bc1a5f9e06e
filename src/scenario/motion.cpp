#include "scenario/motion.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>

#include "base/error.hpp"
#include "base/numbers.hpp"

namespace gapsound {
namespace {

constexpr double kOffLine = -2.0, kOnLine = -0.7;  // y of a receiver off and on the line, yd

int manCalled(const Offense& offense, const Scenario& scenario) {
  std::vector<std::string> ids;
  for (int i = 0; i < kOffense; ++i) {
    const Attacker& man = offense[static_cast<std::size_t>(i)];
    if (man.id == scenario.offense.motion->player) return i;
    ids.push_back(man.id);
  }
  throw InputError(scenario.source, "/offense/motion/player", "\"" + scenario.offense.motion->player + "\"",
                   fmt::format("a man of the formation: {}", fmt::join(ids, ", ")));
}

void requireMayMove(const Attacker& man, const Motion& motion, const Scenario& scenario) {
  const bool kind = std::find(motion.who.begin(), motion.who.end(), man.group) != motion.who.end();
  const bool on_line = man.on_line && motion.moves != MotionPath::trade;
  if (kind && !on_line) return;
  throw InputError(
      scenario.source, "/offense/motion/player", "\"" + man.id + "\"",
      fmt::format("for {}: {}", motion.name, on_line ? "a man off the line" : "a man of another position"));
}

double deepestBack(const Offense& offense) {
  double y = 0.0;
  for (const Attacker& man : offense) y = std::min(y, man.spot.y);
  return y;
}

/// The end man left behind must be eligible and the new side must have no man outside him on the line.
void swapReceivers(Offense& offense, int from_side) {
  Attacker* steps_on = nullptr;
  for (Attacker& man : offense) {
    const double out = from_side * man.spot.x;
    if (man.group != Group::receiver) continue;
    if (out < 0.0 && man.on_line) {
      man.on_line = false;
      man.spot.y = kOffLine;
    } else if (out > 0.0 && !man.on_line && (!steps_on || out > from_side * steps_on->spot.x)) {
      steps_on = &man;
    }
  }
  if (!steps_on) return;
  steps_on->on_line = true;
  steps_on->spot.y = kOnLine;
}

void trade(Offense& offense, Attacker& man, const Scenario& scenario) {
  const int side = signOf(man.spot.x);
  const LineShape shape = shapeOf(offense);
  if (!man.on_line || shape.hasEnd(-side) || !shape.hasEnd(side)) {
    throw InputError(scenario.source, "/offense/motion", "\"trade\"",
                     "a formation with one tight end on the line and no man on the other end");
  }
  man.spot.x = -man.spot.x;
  swapReceivers(offense, side);
}

void place(Offense& offense, Attacker& man, const Motion& motion, const Scenario& scenario) {
  const int side = man.spot.x < 0.0 ? -1 : +1;
  man.vel = {-side * motion.speed_yps, 0.0};
  man.fakes = motion.moves == MotionPath::across_front || motion.moves == MotionPath::behind_back;
  switch (motion.moves) {
    case MotionPath::across_front:
      man.spot = {side * motion.spot.x, motion.spot.y};
      break;
    case MotionPath::behind_back:
      man.spot = {side * motion.spot.x, deepestBack(offense) + motion.spot.y};
      break;
    case MotionPath::other_side:
      man.spot.x = -man.spot.x;
      break;
    case MotionPath::trade:
      trade(offense, man, scenario);
      break;
  }
}

/// The front stays where it was called, the backers go part of a gap over.
void bumpBackers(Look& look, int toward, double yd) {
  for (Defender& man : look.defense) {
    if (man.level == 2 && man.rule == PlaceRule::line) man.spot.x += toward * yd;
  }
}

}  // namespace

Look movedLook(const Offense& offense, const Motion& motion, const Scenario& scenario,
               const std::function<Look(const Offense&)>& defended) {
  Offense moved = offense;
  Attacker& man = moved[static_cast<std::size_t>(manCalled(offense, scenario))];
  requireMayMove(man, motion, scenario);
  place(moved, man, motion, scenario);
  Look look = defended(man.fakes ? offense : moved);
  look.offense = moved;
  bumpBackers(look, signOf(man.spot.x), motion.backers_follow_yd);
  return look;
}

}  // namespace gapsound
