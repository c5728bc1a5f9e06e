#pragma once
#include "football/library.hpp"
#include "scenario/scenario.hpp"

namespace gapsound {

/// Least and greatest depth of backers for the situation, yd.
struct BackerDepth {
  double from = 0.0, to = 25.0;
};
/// The scenario's names looked up; borrows from the library.
struct Names {
  const Formation* formation = nullptr;
  Scheme scheme;
  const Front* front = nullptr;
  const Shell* shell = nullptr;
  const Motion* motion = nullptr;
  std::vector<const Check*> checks;
  Splits splits;
  BackerDepth backer_depth;
};
/// True for a picture of film that names no look of the library.
[[nodiscard]] bool isFilmed(const Scenario& scenario);
/// Throws InputError with the nearest known names.
[[nodiscard]] Names namesOf(const Scenario& scenario, const Library& library);
/// Throws the InputError for a word at this path of the scenario, about the file of the defense where it
/// stands in one.
[[noreturn]] void refuseWord(const Scenario& scenario, const std::string& path, const std::string& value,
                             const std::string& allowed);
/// Refuses words that are none of the few allowed. Throws InputError.
void requireWords(const Scenario& scenario);

}  // namespace gapsound
