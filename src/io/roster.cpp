#include "io/roster.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "base/error.hpp"
#include "io/atomic_file.hpp"
#include "io/csv.hpp"

namespace gapsound {
namespace {

constexpr double kKgPerLb = 0.45359237;
constexpr double kLeastKg = 45.0, kMostKg = 190.0;

ManSettings manFrom(const CsvTable& table, std::size_t row) {
  ManSettings man;
  man.mass_kg = table.number(row, "kg", kLeastKg, kMostKg);
  if (const auto lb = table.number(row, "lb", 100.0, 418.0)) {
    if (man.mass_kg) table.refuse(row, "lb", "kg or lb, not both");
    man.mass_kg = std::clamp(*lb * kKgPerLb, kLeastKg, kMostKg);
  }
  man.ten_yd_s = table.number(row, "ten", 1.3, 2.8);
  man.forty_yd_s = table.number(row, "forty", 4.0, 7.5);
  man.read_delay_s = table.number(row, "read_delay", 0.0, 3.0);
  return man;
}

void layOver(ManSettings& man, const ManSettings& listed) {
  const auto take = [](auto& value, const auto& over) {
    if (over) value = over;
  };
  take(man.mass_kg, listed.mass_kg);
  take(man.ten_yd_s, listed.ten_yd_s);
  take(man.forty_yd_s, listed.forty_yd_s);
  take(man.read_delay_s, listed.read_delay_s);
}

bool hasTimes(const ManSettings& man) { return man.ten_yd_s || man.forty_yd_s; }

/// Times of the scenario and of the roster have to be by one clock.
void requireOneClock(const Roster& roster, const Scenario& scenario) {
  if (roster.clock == scenario.clock) return;
  for (const auto& [id, man] : scenario.players)
    if (hasTimes(man))
      throw InputError(
          roster.source, "column clock", roster.clock,
          fmt::format("{}, as {} has it for the times of {}", scenario.clock, scenario.source, id));
}

}  // namespace

Roster parseRoster(std::string_view text, const std::string& source) {
  const CsvTable table(source, text);
  table.requireColumns({"id"},
                       {"name", "number", "kg", "lb", "ten", "forty", "read_delay", "clock", "notes"});
  Roster roster{source, "", {}, {}};
  for (std::size_t row = 0; row < table.rows(); ++row) {
    const std::string id = table.text(row, "id");
    if (id.empty()) table.refuse(row, "id", "the man's place in the look, as SS");
    if (!roster.men.emplace(id, manFrom(table, row)).second) table.refuse(row, "id", "every man once");
    roster.tags[id] = {table.text(row, "number"), table.text(row, "name")};
    const std::string clock = table.word(row, "clock", {"hand", "electronic"}).value_or("hand");
    if (!roster.clock.empty() && clock != roster.clock)
      table.refuse(row, "clock", roster.clock + ", one clock for all");
    roster.clock = clock;
  }
  if (roster.men.empty()) throw InputError(source, "line 2", "nothing", "at least one man");
  return roster;
}

Roster readRoster(const std::string& file) { return parseRoster(readWhole(file), file); }

void layRoster(const Roster& roster, const std::vector<std::string>& ids, Scenario& scenario) {
  requireOneClock(roster, scenario);
  bool laid = false;
  for (const auto& [id, listed] : roster.men) {
    if (std::find(ids.begin(), ids.end(), id) == ids.end()) continue;
    layOver(scenario.players[id], listed);
    laid = true;
  }
  if (!laid)
    throw InputError(roster.source, "column id", roster.men.begin()->first,
                     fmt::format("men of the look: {}", fmt::join(ids, ", ")));
  scenario.clock = roster.clock;
}

std::vector<std::string> remarksOn(const Roster& roster, const std::set<std::string>& ids) {
  std::vector<std::string> strangers, remarks;
  for (const auto& [id, man] : roster.men) {
    const bool there = ids.count(id) > 0;
    if (!there) strangers.push_back(id);
    if (there && man.ten_yd_s.has_value() != man.forty_yd_s.has_value())
      remarks.push_back(fmt::format("{}: {}: no {}; it is reckoned from his {}", roster.source, id,
                                    man.ten_yd_s ? "forty" : "ten", man.ten_yd_s ? "ten" : "forty"));
  }
  if (!strangers.empty())
    remarks.push_back(
        fmt::format("{}: not in this look, left out: {}", roster.source, fmt::join(strangers, ", ")));
  return remarks;
}

std::map<std::string, std::string> tagsOf(const Roster& roster, bool names, const Setup& look) {
  std::map<std::string, std::string> tags;
  for (const Man& man : look.men) {
    const auto known = roster.tags.find(man.drawn);
    if (known == roster.tags.end()) continue;
    const auto& [number, name] = known->second;
    const std::string tag = !names || name.empty() ? number : number.empty() ? name : number + " " + name;
    if (!tag.empty()) tags[man.id] = tag;
  }
  return tags;
}

}  // namespace gapsound
