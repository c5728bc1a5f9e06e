#pragma once
#include <string>
#include <vector>

#include "scenario/scenario.hpp"

namespace gapsound {

/// What the second scenario has that the first has not, one short text each: "SS comes downhill at 9 yd/s,
/// not 5", "structure box, not spill", "SE kicked out". Titles and tags do not count.
[[nodiscard]] std::vector<std::string> differencesOf(const Scenario& a, const Scenario& b);

}  // namespace gapsound
