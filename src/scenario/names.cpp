#include "scenario/names.hpp"

#include <algorithm>

#include "base/error.hpp"
#include "base/nearest.hpp"
#include "scenario/blocking.hpp"
#include "scenario/start.hpp"

namespace gapsound {
namespace {

bool startsWith(const std::string& text, const char* head) { return text.rfind(head, 0) == 0; }

/// The word at this path is the one the file of the kept defense has.
bool isKept(const Scenario& scenario, const std::string& path) {
  if (!scenario.kept) return false;
  const DefensePlan &now = scenario.defense, &kept = scenario.kept->plan;
  if (path == "/defense/front") return now.front == kept.front;
  if (path == "/defense/shell") return now.shell == kept.shell;
  if (path == "/defense/call/movement") return now.movement == kept.movement;
  if (startsWith(path, "/defense/call/force"))
    return now.force == kept.force && now.force_left == kept.force_left &&
           now.force_right == kept.force_right;
  return startsWith(path, "/defense/call/checks") && now.checks == kept.checks;
}

[[noreturn]] void refuse(const Scenario& scenario, const char* path, const std::string& value,
                         const std::string& allowed) {
  refuseWord(scenario, path, value, allowed);
}

void requireWord(const Scenario& scenario, const char* path, const std::string& value,
                 const std::vector<std::string>& words) {
  for (const std::string& word : words) {
    if (value == word) return;
  }
  refuse(scenario, path, value, nameHint(value, words));
}

template <class T>
const T& found(const T* entry, const Scenario& scenario, const char* path, const std::string& name,
               const std::vector<std::string>& known) {
  if (!entry) refuse(scenario, path, name, nameHint(name, known));
  return *entry;
}

/// Spacing of the line: the level's, called tight or wide in the proportions of the school's.
Splits splitsOf(const Scenario& scenario, const Bodies& bodies) {
  Splits splits = bodies.levels[static_cast<std::size_t>(scenario.level)].splits;
  const std::string& name = scenario.offense.splits;
  const SplitCall& call =
      found(findSplits(bodies, name), scenario, "/offense/splits", name, splitNames(bodies));
  const SplitCall& usual = bodies.split_calls.front();
  if (&call == &usual) return splits;
  splits.guard *= call.guard / usual.guard;
  splits.tackle *= call.tackle / usual.tackle;
  splits.end *= call.end / usual.end;
  return splits;
}

bool isOpenGun(const Formation& formation) {
  const bool end = std::any_of(formation.men.begin(), formation.men.end(), [](const FormationMan& man) {
    return man.group == Group::tight_end && man.on_line;
  });
  return formation.snap == SnapKind::gun && !end;
}

BackerDepth backerDepthOf(const Scenario& scenario, const Library& library, const Names& names) {
  const CallHabits& habits = library.habits;
  const FieldSpot& field = scenario.field;
  BackerDepth depth;
  const Formation* drawn = findFormation(library, names.front->drawn_against);
  const bool drawn_so = drawn != nullptr && isOpenGun(*drawn);
  if (isOpenGun(*names.formation) && !drawn_so) depth.from = habits.gun_backer_y;
  const bool brief = field.distance <= habits.short_distance || field.to_goal <= habits.short_to_goal;
  if (brief) depth = {0.0, habits.short_backer_y};
  return depth;
}

/// A picture of film may leave names out; what stands for them has no men and no jobs.
Names filmedNames(const Scenario& scenario, const Library& library) {
  static const Formation no_formation{};
  static const Front no_front{};
  Names names;
  names.splits = splitsOf(scenario, library.bodies);
  names.formation = &no_formation;
  names.front = &no_front;
  names.shell = &found(findShell(library, scenario.defense.shell), scenario, "/defense/shell",
                       scenario.defense.shell, shellNames(library));
  if (!scenario.defense.front.empty())
    names.front = &found(findFront(library, scenario.defense.front), scenario, "/defense/front",
                         scenario.defense.front, frontNames(library));
  if (!scenario.offense.formation.empty())
    names.formation = &found(findFormation(library, scenario.offense.formation), scenario,
                             "/offense/formation", scenario.offense.formation, formationNames(library));
  if (scenario.offense.scheme.empty()) return names;
  const Scheme& scheme = found(findScheme(library, scenario.offense.scheme), scenario, "/offense/scheme",
                               scenario.offense.scheme, schemeNames(library));
  requireWord(scenario, "/offense/variant", scenario.offense.variant, variantNames(scheme));
  names.scheme = varied(scheme, scenario.offense.variant);
  return names;
}

}  // namespace

void refuseWord(const Scenario& scenario, const std::string& path, const std::string& value,
                const std::string& allowed) {
  const std::string quoted = "\"" + value + "\"";
  if (isKept(scenario, path))
    throw InputError(scenario.kept->file, path.substr(std::string("/defense").size()), quoted, allowed);
  throw InputError(scenario.source, path, quoted, allowed);
}

void requireWords(const Scenario& scenario) {
  requireWord(scenario, "/offense/direction", scenario.offense.direction, {"left", "right"});
  requireWord(scenario, "/offense/strength", scenario.offense.strength, {"left", "right"});
  requireWord(scenario, "/field/spot", scenario.field.spot, {"left_hash", "middle", "right_hash"});
  requireWord(scenario, "/defense/call/structure", scenario.defense.structure, {"spill", "box"});
  requireWord(scenario, "/defense/call/strength", scenario.defense.strength,
              {"formation", "receivers", "field", "boundary", "left", "right"});
  requireWord(scenario, "/defense/call/bs_backer", scenario.defense.bs_backer,
              {"overlap", "fold", "shoot", "hang"});
  for (const std::string& word : {scenario.defense.force, scenario.defense.force_left.value_or("shell"),
                                  scenario.defense.force_right.value_or("shell")})
    requireWord(scenario, "/defense/call/force", word, {"shell", "safety", "backer", "corner"});
  requireWord(scenario, "/defense/call/overlap", scenario.defense.overlap, {"under", "over"});
  requireWord(scenario, "/defense/call/key", scenario.defense.key, {"single", "triangle"});
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
    names.motion = &found(findMotion(library, call->kind), scenario, "/offense/motion/kind", call->kind,
                          motionNames(library));
  }
  names.splits = splitsOf(scenario, library.bodies);
  for (std::size_t i = 0; i < defense.checks.size(); ++i) {
    const std::string path = "/defense/call/checks/" + std::to_string(i);
    names.checks.push_back(&found(findCheck(library, defense.checks[i]), scenario, path.c_str(),
                                  defense.checks[i], checkNames(library)));
  }
  names.backer_depth = backerDepthOf(scenario, library, names);
  return names;
}

}  // namespace gapsound
