#pragma once
#include <map>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "scenario/scenario.hpp"
#include "scenario/setup.hpp"

namespace gapsound {

/// What stands beside a man's letters on a page.
struct RosterTag {
  std::string number, name;
};

/// What a roster knows of its men, by their place in the look ("SS", "LT").
struct Roster {
  std::string source;          // file, for messages
  std::string clock = "hand";  // how its times were taken: hand, electronic
  std::map<std::string, ManSettings> men;
  std::map<std::string, RosterTag> tags;
};

/// CSV with the columns id and any of name, number, kg, lb, ten, forty, read_delay, clock, notes; one clock
/// for all men. Throws InputError with line and column, Error(noAccess) when the file cannot be read.
[[nodiscard]] Roster readRoster(const std::string& file);
[[nodiscard]] Roster parseRoster(std::string_view text, const std::string& source);

/// Lays the roster on the scenario, over what the file says of the same men; men the look does not have are
/// for other looks. `ids`: the men of the look. Throws InputError when it has none of them, and when the
/// scenario gives times of other men by another clock.
void layRoster(const Roster& roster, const std::vector<std::string>& ids, Scenario& scenario);

/// What a coach should know before he trusts an answer, a line each: men on the roster whom the looks do not
/// have, and times that follow from the only one given. `ids`: the men of all looks.
[[nodiscard]] std::vector<std::string> remarksOn(const Roster& roster, const std::set<std::string>& ids);

/// What stands beside the letters of the look's men on pages, by the id shown: their numbers; names as well,
/// where there are any, only if `names`.
[[nodiscard]] std::map<std::string, std::string> tagsOf(const Roster& roster, bool names, const Setup& look);

}  // namespace gapsound
