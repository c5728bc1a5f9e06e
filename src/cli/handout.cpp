#include "cli/handout.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <filesystem>
#include <optional>
#include <set>
#include <sstream>

#include "base/error.hpp"
#include "base/nearest.hpp"
#include "cli/print.hpp"
#include "cli/session.hpp"
#include "io/plan_file.hpp"
#include "io/roster.hpp"
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

/// What a formation, front or shell is called; what is not in the library is refused when the look is
/// resolved.
template <class Entry>
std::string called(const Entry* entry, const std::string& name) {
  return entry == nullptr ? name : entry->name;
}

/// Our men laid on looks, when the options name them.
class OurMen {
 public:
  OurMen(const HandoutOptions& options, const Model& model) : names_(options.names), model_(model) {
    if (!options.roster.empty()) roster_ = readRoster(options.roster);
  }
  /// The look with our men, laid on its scenario too; `tags` gets what stands beside them on pages.
  Setup on(Scenario& scenario, Tags& tags) {
    Setup look = resolve(scenario, library(), model_);
    if (!roster_) return look;
    std::vector<std::string> ids;
    for (const Man& man : look.men) ids.push_back(man.drawn);
    layRoster(*roster_, ids, scenario);
    seen_.insert(ids.begin(), ids.end());
    look = resolve(scenario, library(), model_);
    tags.merge(tagsOf(*roster_, names_, look));
    return look;
  }
  /// What a coach should know of his roster, once all looks are made.
  void tell() const {
    if (roster_) tellRemarks(*roster_, seen_);
  }

 private:
  bool names_;
  const Model& model_;
  std::optional<Roster> roster_;
  std::set<std::string> seen_;  // men of the looks so far
};

Handout ofScenario(const HandoutOptions& options, const Model& model) {
  Handout handout;
  const Scenario base = readScenario(options.file, options.changes);
  OurMen men(options, model);
  handout.title = base.title;
  handout.calls = {fmt::format(
      "{}, {}, {}", called(findFront(library(), base.defense.front), base.defense.front),
      called(findShell(library(), base.defense.shell), base.defense.shell), base.defense.structure)};
  std::vector<std::string> schemes = options.schemes;
  if (schemes.empty()) schemes = {base.offense.scheme};
  for (const std::string& scheme : schemes) {
    Scenario scenario = base;
    if (scheme != base.offense.scheme) scenario.offense.scheme = scheme, scenario.offense.variant = "base";
    const std::string name = called(findScheme(library(), scheme), scheme);
    if (!options.schemes.empty())
      scenario.title = fmt::format("{} {} against {}", name, base.offense.direction, handout.calls[0]);
    handout.runs.push_back(fmt::format(
        "{}, {} {}", called(findFormation(library(), base.offense.formation), base.offense.formation), name,
        base.offense.direction));
    const Setup look = men.on(scenario, handout.tags);
    handout.scenarios.push_back({scenario});
    handout.setups.push_back({look});
  }
  men.tell();
  return handout;
}

}  // namespace

Handout handoutOf(const Plan& plan, const HandoutOptions& options, const Model& model) {
  Handout handout{plan.title, {}, {}, {}, {}, {}};
  static_cast<void>(resolveAll(plan, library(), model));  // refuses men that are in none of the looks
  OurMen men(options, model);
  for (const PlanRun& run : plan.runs) handout.runs.push_back(run.name);
  for (const PlanCall& call : plan.calls) handout.calls.push_back(call.name);
  for (std::size_t run = 0; run < plan.runs.size(); ++run) {
    handout.scenarios.emplace_back();
    handout.setups.emplace_back();
    for (std::size_t call = 0; call < plan.calls.size(); ++call) {
      Scenario pair = pairWithPlayers(plan, run, call, library(), model);
      handout.setups.back().push_back(men.on(pair, handout.tags));
      handout.scenarios.back().push_back(std::move(pair));
    }
  }
  men.tell();
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
  return handoutOf(plan, options, model);
}

namespace {

/// A name that fits the narrow column of a sheet; letters of more than one byte stay whole.
std::string cut(const std::string& name) {
  constexpr std::size_t kMost = 8;
  std::size_t letters = 0;
  for (std::size_t at = 0; at < name.size(); ++at)
    if ((static_cast<unsigned char>(name[at]) & 0xC0U) != 0x80U && letters++ == kMost)
      return name.substr(0, at) + ".";
  return name;
}

/// Every word of a tag cut.
std::string narrow(const std::string& tag) {
  std::istringstream words(tag);
  std::string text;
  for (std::string word; words >> word;) text += " " + cut(word);
  return text;
}

}  // namespace

void tagRows(FitSheet& sheet, const Tags& tags) {
  for (FitRow& row : sheet.rows)
    if (const auto tag = tags.find(row.man); tag != tags.end()) row.man += narrow(tag->second);
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
