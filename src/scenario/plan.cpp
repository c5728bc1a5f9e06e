#include "scenario/plan.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "base/error.hpp"
#include "base/nearest.hpp"
#include "scenario/resolve.hpp"

namespace gapsound {
namespace {

bool hasMan(const Setup& setup, const std::string& id) {
  return std::any_of(setup.men.begin(), setup.men.end(),
                     [&](const Man& man) { return sameName(man.drawn, id) || sameName(man.id, id); });
}

}  // namespace

Scenario pairOf(const Plan& plan, std::size_t run, std::size_t call) {
  Scenario scenario;
  scenario.source = plan.source;
  scenario.title = fmt::format("{} against {}", plan.runs[run].name, plan.calls[call].name);
  scenario.level = plan.level;
  scenario.clock = plan.clock;
  scenario.field = plan.runs[run].field;
  scenario.offense = plan.runs[run].offense;
  scenario.defense = plan.calls[call].defense;
  return scenario;
}

Scenario pairWithPlayers(const Plan& plan, std::size_t run, std::size_t call, const Library& library,
                         const Model& model) {
  Scenario scenario = pairOf(plan, run, call);
  if (plan.players.empty()) return scenario;
  const Setup bare = resolve(scenario, library, model);
  for (const auto& [id, settings] : plan.players) {
    if (hasMan(bare, id)) scenario.players[id] = settings;
  }
  return scenario;
}

std::vector<std::vector<Setup>> resolveAll(const Plan& plan, const Library& library, const Model& model) {
  std::vector<std::vector<Setup>> setups(plan.runs.size());
  std::set<std::string> placed, men;
  for (std::size_t run = 0; run < plan.runs.size(); ++run) {
    for (std::size_t call = 0; call < plan.calls.size(); ++call) {
      const Scenario pair = pairWithPlayers(plan, run, call, library, model);
      for (const auto& [id, settings] : pair.players) placed.insert(id);
      setups[run].push_back(resolve(pair, library, model));
      for (const Man& man : setups[run].back().men) men.insert(man.id);
    }
  }
  for (const auto& [id, settings] : plan.players) {
    if (placed.count(id) == 0)
      throw InputError(plan.source, "/players/" + id, "in none of the looks",
                       nameHint(id, {men.begin(), men.end()}));
  }
  return setups;
}

}  // namespace gapsound
