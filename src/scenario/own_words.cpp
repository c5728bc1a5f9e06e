#include "scenario/own_words.hpp"

#include "base/error.hpp"

namespace gapsound {

Scenario inLibraryWords(const Scenario& given, const Vocabulary& vocabulary) {
  if (vocabulary.words().empty()) return given;
  Scenario scenario = given;
  OffensePlan& offense = scenario.offense;
  DefensePlan& defense = scenario.defense;
  for (std::string* name : {&offense.formation, &offense.scheme, &offense.variant, &defense.front,
                            &defense.shell, &defense.movement})
    *name = vocabulary.meant(*name);
  if (offense.motion) {
    offense.motion->player = vocabulary.meant(offense.motion->player);
    offense.motion->kind = vocabulary.meant(offense.motion->kind);
  }
  for (std::string& check : defense.checks) check = vocabulary.meant(check);
  for (PlacedFault& fault : scenario.faults) fault.player = vocabulary.meant(fault.player);
  scenario.players.clear();
  for (const auto& [id, settings] : given.players) {
    ManSettings meant = settings;
    if (meant.on) meant.on = vocabulary.meant(*meant.on);
    if (!scenario.players.emplace(vocabulary.meant(id), meant).second)
      throw InputError(given.source, "/players/" + id, "named twice", "one name for one man");
  }
  return scenario;
}

void tellInOwnWords(Setup& setup, const Vocabulary& vocabulary) {
  if (vocabulary.words().empty()) return;
  for (Man& man : setup.men) man.id = vocabulary.shown(man.drawn);
  for (std::string* name : {&setup.variant, &setup.shell}) *name = vocabulary.shown(*name);
  for (std::string& note : setup.notes) note = vocabulary.told(note);
}

}  // namespace gapsound
