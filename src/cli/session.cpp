#include "cli/session.hpp"

#include <fmt/core.h>

#include <nlohmann/json.hpp>

#include "io/assets.hpp"
#include "io/library.hpp"
#include "io/model_file.hpp"
#include "io/roster.hpp"
#include "io/scenario_file.hpp"
#include "scenario/resolve.hpp"

namespace gapsound {

const Library& library() {
  static const Library shipped = readLibrary(assetPath(""));
  return shipped;
}

Model modelFor(const std::string& file) { return readModel(file.empty() ? assetPath("model.json") : file); }

Setup setupFor(const std::string& file, const Changes& changes, const Model& model) {
  return resolve(readScenario(file, changes), library(), model);
}

Scenario scenarioFor(const ManyOptions& options, const std::string& file, const Changes& changes,
                     const Model& model) {
  Scenario scenario = readScenario(file, changes);
  if (options.roster.empty()) return scenario;
  std::vector<std::string> ids;
  for (const Man& man : resolve(scenario, library(), model).men) ids.push_back(man.drawn);
  const Roster roster = readRoster(options.roster);
  layRoster(roster, ids, scenario);
  tellRemarks(roster, {ids.begin(), ids.end()});
  return scenario;
}

void tellRemarks(const Roster& roster, const std::set<std::string>& ids) {
  static std::set<std::string> told;  // both sides of a comparison have the same men
  for (const std::string& remark : remarksOn(roster, ids))
    if (told.insert(remark).second) fmt::print(stderr, "gapsound: {}\n", remark);
}

Session sessionFor(const PlayOptions& options) {
  const Model model = modelFor(options.model);
  Scenario scenario = readScenario(options.file, options.changes);
  Setup setup = resolve(scenario, library(), model);
  return {std::move(scenario), std::move(setup), model};
}

Changes joined(Changes first, const Changes& second) {
  first.sets.insert(first.sets.end(), second.sets.begin(), second.sets.end());
  first.faults.insert(first.faults.end(), second.faults.begin(), second.faults.end());
  return first;
}

Changes pictureChanges(const PictureOptions& options) {
  Changes changes = options.changes;
  if (!options.title.empty()) changes.sets.push_back("title=" + nlohmann::json(options.title).dump());
  if (options.no_mix) changes.sets.emplace_back("defense.call.mix=none");
  return changes;
}

}  // namespace gapsound
