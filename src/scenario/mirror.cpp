#include "scenario/mirror.hpp"

#include "scenario/look.hpp"

namespace gapsound {
namespace {

constexpr double kFieldWidth = 53.333;

void turn(Start& start) {
  Start out = start;
  out.ball = otherSide(start.ball);
  out.men.clear();
  for (auto [id, man] : start.men) {
    man.pos = mirrored(man.pos);
    man.vel = mirrored(man.vel);
    if (man.facing_deg) man.facing_deg = -*man.facing_deg;
    man.on = otherSide(man.on);
    out.men[otherSide(id)] = man;
  }
  if (start.left_sideline) out.left_sideline = -(*start.left_sideline + kFieldWidth);
  start = out;
}

void turn(Opening& opening) {
  for (Opening::Place& man : opening.men) man = {mirrored(man.pos), mirrored(man.vel), mirrored(man.face)};
}

void turn(Man& man) {
  man.spot = mirrored(man.spot);
  man.vel = mirrored(man.vel);
  man.facing = mirrored(man.facing);
  man.fit.gap = otherSideGap(man.fit.gap);
  man.fit.gap_x = -man.fit.gap_x;
  man.fit.slant_x = -man.fit.slant_x;
  std::swap(man.fit.if_right, man.fit.if_left);
  std::swap(man.fit.structure_right, man.fit.structure_left);
}

}  // namespace

std::string otherSideWord(const std::string& words) {
  const auto replaced = [&](const std::string& from, const std::string& to) {
    std::string out = words;
    const auto at = out.find(from);
    return at == std::string::npos ? out : out.replace(at, from.size(), to);
  };
  const std::string left = replaced("right", "left");
  return left != words ? left : replaced("left", "right");
}

Scenario mirrored(const Scenario& scenario) {
  Scenario out = scenario;
  out.offense.direction = otherSideWord(scenario.offense.direction);
  out.offense.strength = otherSideWord(scenario.offense.strength);
  out.field.spot = otherSideWord(scenario.field.spot);
  out.defense.movement = otherSideWord(scenario.defense.movement);
  out.defense.strength = otherSideWord(scenario.defense.strength);
  std::swap(out.defense.structure_left, out.defense.structure_right);
  std::swap(out.defense.force_left, out.defense.force_right);
  out.players.clear();
  for (const auto& [id, settings] : scenario.players) {
    ManSettings turned = settings;
    if (turned.x) turned.x = -*turned.x;
    std::swap(turned.job_left, turned.job_right);
    if (turned.on) turned.on = otherSide(*turned.on);
    out.players[otherSide(id)] = turned;
  }
  for (PlacedFault& fault : out.faults) fault.player = otherSide(fault.player);
  if (out.start) turn(*out.start);
  return out;
}

Setup mirrored(const Setup& setup) {
  Setup out = setup;
  out.direction = -setup.direction;
  for (Man& man : out.men) turn(man);
  for (Vec2& step : out.run.steps) step = mirrored(step);
  out.run.mesh = mirrored(setup.run.mesh);
  out.run.aim_x = -setup.run.aim_x;
  out.read.keep_aim_x = -setup.read.keep_aim_x;
  out.sideline_left = -setup.sideline_right;
  out.sideline_right = -setup.sideline_left;
  if (out.opening) turn(*out.opening);
  return out;
}

}  // namespace gapsound
