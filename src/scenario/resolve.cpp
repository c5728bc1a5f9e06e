#include "scenario/resolve.hpp"

#include <fmt/format.h>

#include "base/error.hpp"
#include "base/nearest.hpp"
#include "base/stream.hpp"
#include "scenario/align.hpp"
#include "scenario/blocking.hpp"
#include "scenario/bodies.hpp"
#include "scenario/fitting.hpp"
#include "scenario/legality.hpp"
#include "scenario/mirror.hpp"
#include "scenario/motion.hpp"
#include "scenario/settings.hpp"
#include "scenario/start.hpp"

namespace gapsound {
namespace {

constexpr double kFieldWidth = 53.333;

/// The scenario's names looked up.
struct Names {
  const Formation* formation = nullptr;
  Scheme scheme;
  const Front* front = nullptr;
  const Shell* shell = nullptr;
  const Motion* motion = nullptr;
  const Movement* movement = nullptr;  // in the frame of the front as drawn
};

[[noreturn]] void refuse(const Scenario& scenario, const char* path, const std::string& value,
                         const std::string& allowed) {
  throw InputError(scenario.source, path, "\"" + value + "\"", allowed);
}

void requireWord(const Scenario& scenario, const char* path, const std::string& value,
                 const std::vector<std::string>& words) {
  for (const std::string& word : words) {
    if (value == word) return;
  }
  refuse(scenario, path, value, nameHint(value, words));
}

void requireWords(const Scenario& scenario) {
  requireWord(scenario, "/offense/direction", scenario.offense.direction, {"left", "right"});
  requireWord(scenario, "/offense/strength", scenario.offense.strength, {"left", "right"});
  requireWord(scenario, "/field/spot", scenario.field.spot, {"left_hash", "middle", "right_hash"});
  requireWord(scenario, "/defense/call/structure", scenario.defense.structure, {"spill", "box"});
  requireWord(scenario, "/defense/call/bs_backer", scenario.defense.bs_backer,
              {"overlap", "fold", "shoot", "hang"});
  requireWord(scenario, "/defense/call/key", scenario.defense.key, {"single", "triangle"});
}

template <class T>
const T& found(const T* entry, const Scenario& scenario, const char* path, const std::string& name,
               const std::vector<std::string>& known) {
  if (!entry) refuse(scenario, path, name, nameHint(name, known));
  return *entry;
}

/// Movements are named by the field's left and right; the front is drawn strong right.
const Movement* movementOf(const Scenario& scenario, const Front& front) {
  const bool turned = scenario.offense.strength == "left";
  const std::string& name = scenario.defense.movement;
  if (name == "none") return nullptr;
  const std::string drawn = turned ? otherSideWord(name) : name;
  return &found(findMovement(front, drawn), scenario, "/defense/call/movement", name, movementNames(front));
}

/// A picture of film may leave names out; what stands for them has no men and no jobs.
Names filmedNames(const Scenario& scenario, const Library& library) {
  static const Formation no_formation{};
  static const Front no_front{};
  Names names;
  names.formation = &no_formation;
  names.front = &no_front;
  names.shell = &found(findShell(library, scenario.defense.shell), scenario, "/defense/shell",
                       scenario.defense.shell, shellNames(library));
  if (!scenario.defense.front.empty())
    names.front = &found(findFront(library, scenario.defense.front), scenario, "/defense/front",
                         scenario.defense.front, frontNames(library));
  if (!scenario.offense.formation.empty())
    names.formation = &found(findFormation(library, scenario.offense.formation), scenario, "/offense/formation",
                             scenario.offense.formation, formationNames(library));
  if (scenario.offense.scheme.empty()) return names;
  const Scheme& scheme = found(findScheme(library, scenario.offense.scheme), scenario, "/offense/scheme",
                               scenario.offense.scheme, schemeNames(library));
  requireWord(scenario, "/offense/variant", scenario.offense.variant, variantNames(scheme));
  names.scheme = varied(scheme, scenario.offense.variant);
  return names;
}

bool isFilmed(const Scenario& scenario) { return scenario.start && !namesLook(scenario); }

Names namesOf(const Scenario& scenario, const Library& library) {
  if (isFilmed(scenario)) return filmedNames(scenario, library);
  const OffensePlan& offense = scenario.offense;
  const DefensePlan& defense = scenario.defense;
  Names names;
  names.formation = &found(findFormation(library, offense.formation), scenario, "/offense/formation",
                           offense.formation, formationNames(library));
  const Scheme& scheme = found(findScheme(library, offense.scheme), scenario, "/offense/scheme",
                               offense.scheme, schemeNames(library));
  requireWord(scenario, "/offense/variant", offense.variant, variantNames(scheme));
  names.scheme = varied(scheme, offense.variant);
  names.front = &found(findFront(library, defense.front), scenario, "/defense/front", defense.front,
                       frontNames(library));
  names.shell = &found(findShell(library, defense.shell), scenario, "/defense/shell", defense.shell,
                       shellNames(library));
  if (const auto& call = offense.motion) {
    names.motion =
        &found(findMotion(library, call->kind), scenario, "/offense/motion/kind", call->kind, motionNames(library));
  }
  names.movement = movementOf(scenario, *names.front);
  return names;
}

struct Sidelines {
  double left = 0.0, right = 0.0;
};
Sidelines sidelinesOf(const Scenario& scenario, const LevelKind& level) {
  if (scenario.start && scenario.start->left_sideline)
    return {*scenario.start->left_sideline, *scenario.start->left_sideline + kFieldWidth};
  const FieldSpot& field = scenario.field;
  const double near = level.hash_to_sideline, far = kFieldWidth - near;
  if (field.spot == "left_hash") return {-near, far};
  if (field.spot == "right_hash") return {-far, near};
  return {-0.5 * kFieldWidth, 0.5 * kFieldWidth};
}

/// The look as drawn, strong right, before anybody is placed by hand.
Look drawnLook(const Scenario& scenario, const Names& names, const LevelKind& level) {
  const bool turned = scenario.offense.strength == "left";
  const Sidelines sidelines = sidelinesOf(scenario, level);
  Ground ground{-sidelines.left, sidelines.right, scenario.field.to_goal, level.splits};
  if (turned) std::swap(ground.left, ground.right);
  const int run_side = scenario.offense.strength == scenario.offense.direction ? +1 : -1;
  const auto offense = alignOffense(*names.formation, names.scheme, run_side, ground);
  const auto defended = [&](const auto& men) {
    return alignDefense(men, *names.front, *names.shell, names.movement, ground);
  };
  return names.motion ? movedLook(offense, *names.motion, scenario, defended) : defended(offense);
}

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

double offLine(Vec2 spot) { return spot.y < 0 ? -spot.y : spot.y; }

/// How the ball gets to the quarterback: as the formation is drawn, or as this scheme needs it.
SnapKind snapOf(SnapKind drawn, const Scheme& scheme) {
  const auto other = scheme.snaps.find(drawn);
  return other == scheme.snaps.end() ? drawn : other->second;
}

BackJob backJobOf(const Look& look, SnapKind snap, const Scheme& scheme, int carrier, const LevelKind& level) {
  const BallPath& path = scheme.paths.at(snap);
  const Vec2 spot = look.offense[static_cast<std::size_t>(carrier)].spot;
  const bool beside = snap == SnapKind::gun && spot.x > 0.5;
  BackJob run;
  for (const Vec2 step : path.steps) run.steps.push_back(spot + step);
  run.mesh = beside ? Vec2{0.3, path.mesh.y + 0.4} : path.mesh;
  run.mesh_s = path.mesh_s + level.mesh_later_s;
  run.aim_x = scheme.aim_x * level.splits.tackle / 2.75;
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
  bool three = false;
  for (const Man& man : setup.men) {
    three |= man.fit.if_right == FitRole::fill_backer || man.fit.if_left == FitRole::fill_backer;
  }
  for (int s = 0; three && s < 2; ++s) {
    for (int e = 0; e < kEndStates; ++e) table.overlap_backer[s][e] = book.overlap_behind_fill[s][e];
  }
  return table;
}

BackSideBacker backSideOf(const std::string& word) {
  if (word == "fold") return BackSideBacker::fold;
  if (word == "shoot") return BackSideBacker::shoot;
  return word == "hang" ? BackSideBacker::hang : BackSideBacker::overlap;
}

void callOf(FitJob& fit, const DefensePlan& plan, const BodyKind& kind, const LevelKind& level) {
  fit.structure = plan.structure == "box" ? Structure::box : Structure::spill;
  fit.bs_backer = backSideOf(plan.bs_backer);
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

void nameSetup(Setup& setup, const Scenario& scenario, const Names& names) {
  setup.title = scenario.title;
  setup.level = scenario.level;
  setup.formation = names.formation->id;
  setup.scheme = names.scheme.id;
  setup.variant = scenario.offense.variant;
  setup.front = names.front->id;
  setup.shell = names.shell->id;
  setup.structure = scenario.defense.structure;
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
  return snap == SnapKind::under_center ? "under centre" : snap == SnapKind::pistol ? "in pistol" : "in the gun";
}

void noteCarrier(Setup& setup, SnapKind drawn, const Scheme& scheme) {
  const SnapKind snap = snapOf(drawn, scheme);
  if (snap != drawn) setup.notes.push_back(fmt::format("the quarterback is {} for this scheme", wordFor(snap)));
  if (setup.carrier == kNobody) return;
  const std::string& id = setup.men[static_cast<std::size_t>(setup.carrier)].id;
  if (id != scheme.carriers.front()) setup.notes.push_back(fmt::format("no {}: {} carries", scheme.carriers.front(), id));
}

/// The look in the frame of the scenario, men placed by hand and checked.
Look lookOf(const Scenario& scenario, const Names& names, const LevelKind& level) {
  const Look drawn = drawnLook(scenario, names, level);
  Look look = scenario.offense.strength == "left" ? turnedOver(drawn) : drawn;
  placeByHand(look, scenario);
  const Sidelines sidelines = sidelinesOf(scenario, level);
  requireLegal(look, scenario, sidelines.left, sidelines.right);
  return look;
}

/// The look of a run to the right: the library's turned that way, or the one that fits the film.
Look rightLook(const Scenario& scenario, const Scenario& right, const Names& names, const LevelKind& level) {
  if (isFilmed(scenario)) return filmedLook(right, names.front->men.empty() ? nullptr : names.front, level.splits);
  const Look look = lookOf(scenario, names, level);
  return scenario.offense.direction == "right" ? look : turnedOver(look);
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
  const SnapKind drawn = isFilmed(scenario) ? filmedSnap(look) : names.formation->snap;
  noteCarrier(setup, drawn, names.scheme);
  setup.read.keep_aim_x *= level.splits.tackle / 2.75;
  const SnapKind snap = snapOf(drawn, names.scheme);
  setup.snap_flight_s = flightOf(snap, library.habits);
  if (setup.carrier != kNobody) setup.run = backJobOf(look, snap, names.scheme, setup.carrier, level);
  setup.mix = mixOf(scenario, library.habits);
  setup.fits = fitsOf(library.fits, setup);
  if (scenario.start) openFromFilm(setup, scenario);
  return setup;
}

}  // namespace

Setup resolve(const Scenario& given, const Library& library, const Model& model) {
  const Scenario scenario = given.start ? readyToStart(given, library) : given;
  requireWords(scenario);
  const Names names = namesOf(scenario, library);
  const LevelKind& level = library.bodies.levels[static_cast<std::size_t>(scenario.level)];
  const bool to_right = scenario.offense.direction == "right";
  const Scenario right = to_right ? scenario : mirrored(scenario);
  Setup setup = assembled(rightLook(scenario, right, names, level), right, names, library, model);
  if (!to_right) {
    setup = mirrored(setup);
    for (Man& man : setup.men) man.id = otherSide(man.id);
  }
  applySettings(setup, scenario, library, model);
  return setup;
}

}  // namespace gapsound
