#include "scenario/resolve.hpp"

#include <fmt/format.h>

#include "base/stream.hpp"
#include "scenario/blocking.hpp"
#include "scenario/bodies.hpp"
#include "scenario/drawn_look.hpp"
#include "scenario/fitting.hpp"
#include "scenario/force_call.hpp"
#include "scenario/legality.hpp"
#include "scenario/mirror.hpp"
#include "scenario/names.hpp"
#include "scenario/own_words.hpp"
#include "scenario/settings.hpp"
#include "scenario/start.hpp"

namespace gapsound {
namespace {

double offLine(Vec2 spot) { return spot.y < 0 ? -spot.y : spot.y; }

/// How the ball gets to the quarterback: as the formation is drawn, or as this scheme needs it.
SnapKind snapOf(SnapKind drawn, const Scheme& scheme) {
  const auto other = scheme.snaps.find(drawn);
  return other == scheme.snaps.end() ? drawn : other->second;
}

BackJob backJobOf(const Look& look, SnapKind snap, const Names& names, int carrier, const LevelKind& level) {
  const Scheme& scheme = names.scheme;
  const BallPath& path = scheme.paths.at(snap);
  const Vec2 spot = look.offense[static_cast<std::size_t>(carrier)].spot;
  const bool beside = snap == SnapKind::gun && spot.x > 0.5;
  BackJob run;
  for (const Vec2 step : path.steps) run.steps.push_back(spot + step);
  run.mesh = beside ? Vec2{0.3, path.mesh.y + 0.4} : path.mesh;
  run.mesh_s = path.mesh_s + level.mesh_later_s;
  run.aim_x = scheme.aim_x * names.splits.tackle / 2.75;
  run.patient = scheme.patient;
  run.bends = scheme.bends;
  run.toss_s = path.toss_s > 0.0 ? path.toss_s + level.mesh_later_s : 0.0;
  return run;
}

CallMix mixOf(const Scenario& scenario, const CallHabits& habits) {
  if (scenario.defense.mix) return *scenario.defense.mix;
  return {habits.line_spread_yd, habits.backer_spread_yd, habits.back_spread_yd, habits.slant_share,
          habits.shoot_share};
}

FitTable fitsOf(const FitBook& book, const Setup& setup) {
  FitTable table = book.table;
  bool three = false, next_goes_over = false;
  for (const Man& man : setup.men) {
    const FitRole role = man.fit.if_right;
    three |= role == FitRole::fill_backer || man.fit.if_left == FitRole::fill_backer;
    next_goes_over |=
        man.fit.overlaps_over && (role == FitRole::fill_backer || role == FitRole::overlap_backer);
  }
  for (int s = 0; three && s < 2; ++s) {
    for (int e = 0; e < kEndStates; ++e) table.overlap_backer[s][e] = book.overlap_behind_fill[s][e];
  }
  for (const OverlapOver& row : book.overlap_over) {
    if (!next_goes_over) break;
    const auto s = static_cast<std::size_t>(row.structure), e = static_cast<std::size_t>(row.end);
    table.first_backer[s][e] = row.first;
    (three ? table.fill_backer : table.overlap_backer)[s][e] = row.overlap;
  }
  return table;
}

BackSideBacker backSideOf(const std::string& word) {
  if (word == "fold") return BackSideBacker::fold;
  if (word == "shoot") return BackSideBacker::shoot;
  return word == "hang" ? BackSideBacker::hang : BackSideBacker::overlap;
}

Structure structureOf(const std::string& word) { return word == "box" ? Structure::box : Structure::spill; }

void callOf(FitJob& fit, const DefensePlan& plan, const BodyKind& kind, const LevelKind& level) {
  fit.structure_right = structureOf(plan.structure_right.value_or(plan.structure));
  fit.structure_left = structureOf(plan.structure_left.value_or(plan.structure));
  fit.bs_backer = backSideOf(plan.bs_backer);
  fit.overlaps_over = plan.overlap == "over" && fit.bs_backer == BackSideBacker::overlap;
  fit.key_style = plan.key == "single" ? KeyStyle::single : KeyStyle::triangle;
  fit.off_the_man_in_front = plan.fit_off[static_cast<std::size_t>(fit.level - 1)] == FitOff::man_in_front;
  fit.read_delay_s = kind.read_delay_s * level.read;
  fit.downhill_yps = kind.downhill_yps * level.skill_speed;
}

Man manOf(const std::string& id, Group group, Vec2 spot, const Library& library, Level level,
          const Model& model) {
  Man man;
  man.id = id;
  man.stream = keyOf(id);
  man.group = group;
  man.body = bodyOf(library.bodies, group, level, model);
  man.spot = spot;
  man.aligned_off_line = offLine(spot);
  return man;
}

void fillMen(Setup& setup, const Look& look, const Names& names, const Scenario& scenario,
             const Library& library, const Model& model) {
  const LevelKind& level = library.bodies.levels[static_cast<std::size_t>(scenario.level)];
  const Assignments assignments = blockingOf(look, names.scheme);
  setup.read = assignments.read;
  setup.notes.insert(setup.notes.end(), assignments.notes.begin(), assignments.notes.end());
  for (std::size_t i = 0; i < look.offense.size(); ++i) {
    const Attacker& man = look.offense[i];
    setup.men[i] = manOf(man.id, man.group, man.spot, library, scenario.level, model);
    setup.men[i].attacks = true;
    setup.men[i].vel = man.vel;
    setup.men[i].block = assignments.jobs[i];
  }
  const auto fits = fittingOf(look, *names.shell);
  for (std::size_t i = 0; i < look.defense.size(); ++i) {
    const Defender& man = look.defense[i];
    Man& placed = setup.men[kOffense + i];
    placed = manOf(man.id, man.group, man.spot, library, scenario.level, model);
    placed.facing = {0.0, -1.0};
    placed.fit = fits[i];
    callOf(placed.fit, scenario.defense, library.bodies.kinds[static_cast<std::size_t>(man.group)], level);
  }
}

/// What the play side is told.
std::string structureWords(const Scenario& scenario) {
  const auto& side = scenario.offense.direction == "right" ? scenario.defense.structure_right
                                                           : scenario.defense.structure_left;
  return side.value_or(scenario.defense.structure);
}

void nameSetup(Setup& setup, const Scenario& scenario, const Names& names) {
  setup.title = scenario.title;
  setup.level = scenario.level;
  setup.formation = names.formation->name;
  setup.scheme = names.scheme.name;
  setup.variant = scenario.offense.variant;
  setup.front = names.front->name;
  setup.shell = names.shell->id;
  setup.structure = structureWords(scenario);
  setup.to_goal = scenario.field.to_goal;
  setup.down = scenario.field.down;
  setup.distance = scenario.field.distance;
}

int quarterback(const Look& look) {
  for (int i = 0; i < kOffense; ++i) {
    if (look.offense[static_cast<std::size_t>(i)].group == Group::quarterback) return i;
  }
  return kNobody;
}

double flightOf(SnapKind snap, const CallHabits& habits) {
  return snap == SnapKind::gun      ? habits.gun_flight_s
         : snap == SnapKind::pistol ? habits.pistol_flight_s
                                    : 0.0;
}

const char* wordFor(SnapKind snap) {
  return snap == SnapKind::under_center ? "under centre"
         : snap == SnapKind::pistol     ? "in pistol"
                                        : "in the gun";
}

void noteCarrier(Setup& setup, SnapKind drawn, const Scheme& scheme) {
  const SnapKind snap = snapOf(drawn, scheme);
  if (snap != drawn)
    setup.notes.push_back(fmt::format("the quarterback is {} for this scheme", wordFor(snap)));
  if (setup.carrier == kNobody) return;
  const std::string& id = setup.men[static_cast<std::size_t>(setup.carrier)].id;
  if (id != scheme.carriers.front())
    setup.notes.push_back(fmt::format("no {}: {} carries", scheme.carriers.front(), id));
}

/// The look of a run to the right: the library's turned that way, or the one that fits the film.
Look rightLook(const Scenario& scenario, const Scenario& right, const Names& names, const LevelKind& level,
               std::vector<std::string>& notes) {
  if (isFilmed(scenario))
    return filmedLook(right, names.front->men.empty() ? nullptr : names.front, names.splits);
  const Look drawn = lookOf(scenario, names, level);
  const bool turned = scenario.offense.direction != "right";
  Look look = turned ? turnedOver(drawn) : drawn;
  notes = callForce(look, right, turned);
  return look;
}

/// Jobs and bodies for a run to the right.
Setup assembled(const Look& look, const Scenario& scenario, const Names& names, const Library& library,
                const Model& model) {
  const LevelKind& level = library.bodies.levels[static_cast<std::size_t>(scenario.level)];
  const Sidelines sidelines = sidelinesOf(scenario, level);
  Setup setup;
  nameSetup(setup, scenario, names);
  setup.sideline_left = sidelines.left;
  setup.sideline_right = sidelines.right;
  fillMen(setup, look, names, scenario, library, model);
  setup.passer = quarterback(look);
  setup.carrier = carrierOf(look, names.scheme);
  const SnapKind drawn = isFilmed(scenario) ? snapSeen(look) : names.formation->snap;
  noteCarrier(setup, drawn, names.scheme);
  setup.read.keep_aim_x *= names.splits.tackle / 2.75;
  const SnapKind snap = snapOf(drawn, names.scheme);
  setup.snap_flight_s = flightOf(snap, library.habits);
  if (setup.carrier != kNobody) setup.run = backJobOf(look, snap, names, setup.carrier, level);
  setup.mix = mixOf(scenario, library.habits);
  setup.fits = fitsOf(library.fits, setup);
  if (scenario.start) openFromFilm(setup, scenario);
  return setup;
}

}  // namespace

Setup resolve(const Scenario& told, const Library& library, const Model& model) {
  const Scenario given = inLibraryWords(told, library.vocabulary);
  const Scenario scenario = given.start ? readyToStart(given, library) : given;
  requireWords(scenario);
  const Names names = namesOf(scenario, library);
  const LevelKind& level = library.bodies.levels[static_cast<std::size_t>(scenario.level)];
  const bool to_right = scenario.offense.direction == "right";
  const Scenario right = to_right ? scenario : mirrored(scenario);
  std::vector<std::string> notes;
  Setup setup = assembled(rightLook(scenario, right, names, level, notes), right, names, library, model);
  setup.notes.insert(setup.notes.end(), notes.begin(), notes.end());
  if (!to_right) {
    setup = mirrored(setup);
    for (Man& man : setup.men) man.id = otherSide(man.id);
  }
  applySettings(setup, scenario, library, model);
  if (!scenario.start) requireRoom(setup, scenario);
  for (Man& man : setup.men) man.drawn = man.id;
  tellInOwnWords(setup, library.vocabulary);
  return setup;
}

}  // namespace gapsound
