#include "cli/handout.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <filesystem>

#include "base/error.hpp"
#include "base/nearest.hpp"
#include "cli/print.hpp"
#include "cli/session.hpp"
#include "io/plan_file.hpp"
#include "io/scenario_file.hpp"
#include "scenario/resolve.hpp"

namespace gapsound {
namespace {

template <class Item>
void pick(std::vector<Item>& items, const std::vector<std::string>& wanted, const std::string& option) {
  if (wanted.empty()) return;
  std::vector<std::string> names;
  names.reserve(items.size());
  for (const Item& item : items) names.push_back(item.name);
  std::vector<Item> picked;
  for (const std::string& name : wanted) {
    const auto found =
        std::find_if(items.begin(), items.end(), [&](const Item& item) { return sameName(item.name, name); });
    if (found == items.end()) throw InputError("command line", option, name, nameHint(name, names));
    picked.push_back(*found);
  }
  items = std::move(picked);
}

const std::string& shown(const std::string& id) { return library().vocabulary.shown(id); }

Handout ofScenario(const HandoutOptions& options, const Model& model) {
  Handout handout;
  const Scenario base = readScenario(options.file, options.changes);
  handout.title = base.title;
  handout.calls = {
      fmt::format("{} {}, {}", shown(base.defense.front), shown(base.defense.shell), base.defense.structure)};
  std::vector<std::string> schemes = options.schemes;
  if (schemes.empty()) schemes = {base.offense.scheme};
  for (const std::string& scheme : schemes) {
    Scenario scenario = base;
    if (scheme != base.offense.scheme) scenario.offense.scheme = scheme, scenario.offense.variant = "base";
    const Scheme* known = findScheme(library(), scheme);
    const std::string name = known == nullptr ? scheme : known->name;
    if (!options.schemes.empty())
      scenario.title = fmt::format("{} {} against {}", name, base.offense.direction, handout.calls[0]);
    handout.runs.push_back(
        fmt::format("{} {} {}", shown(base.offense.formation), name, base.offense.direction));
    handout.scenarios.push_back({scenario});
    handout.setups.push_back({resolve(scenario, library(), model)});
  }
  return handout;
}

}  // namespace

Handout handoutOf(const Plan& plan, const Model& model) {
  Handout handout{plan.title, {}, {}, {}, resolveAll(plan, library(), model)};
  for (const PlanRun& run : plan.runs) handout.runs.push_back(run.name);
  for (const PlanCall& call : plan.calls) handout.calls.push_back(call.name);
  for (std::size_t run = 0; run < plan.runs.size(); ++run) {
    handout.scenarios.emplace_back();
    for (std::size_t call = 0; call < plan.calls.size(); ++call)
      handout.scenarios.back().push_back(pairWithPlayers(plan, run, call, library(), model));
  }
  return handout;
}

Handout handoutOf(const HandoutOptions& options, const Model& model) {
  if (!isPlanFile(options.file)) return ofScenario(options, model);
  if (!options.schemes.empty())
    throw InputError("command line", "--schemes", options.schemes.front(),
                     "a scenario file; a plan has its own runs");
  Plan plan = readPlan(options.file, options.changes);
  pick(plan.runs, options.runs, "--runs");
  pick(plan.calls, options.calls, "--calls");
  return handoutOf(plan, model);
}

Paper paperOf(const HandoutOptions& options) { return options.paper == "a4" ? Paper::a4 : Paper::letter; }

void requirePdf(const std::string& file) {
  const std::string ending = std::filesystem::path(file).extension().string();
  if (ending != ".pdf") throw InputError(file, "ending", ending.empty() ? "none" : ending, ".pdf");
}

int sayWritten(const std::string& file, bool json) {
  if (json) {
    printAnswer({{"written", file}});
  } else {
    fmt::print("{} written\n", file);
  }
  return 0;
}

}  // namespace gapsound
