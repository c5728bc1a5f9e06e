#pragma once
#include <string>
#include <string_view>

#include "io/changes.hpp"
#include "scenario/plan.hpp"

namespace gapsound {

/// Reads a week's plan (scenarios/plan-*.json): keys, types and ranges; library names and men are checked
/// when a pair is resolved (pairOf). Needs at least one run and one call; runs and calls without a name get
/// one. Throws InputError with the JSON path, Error(noAccess) when the file cannot be read.
[[nodiscard]] Plan readPlan(const std::string& file, const Changes& changes = {});
/// The same from a text; `source` stands for the file in messages.
[[nodiscard]] Plan parsePlan(std::string_view text, const std::string& source, const Changes& changes = {});
/// The plan as a file's content; reading it back gives the same plan.
[[nodiscard]] std::string toJson(const Plan& plan);
/// True for a JSON document with "runs" and "calls", as a plan has and a scenario has not.
[[nodiscard]] bool isPlanFile(const std::string& file);

}  // namespace gapsound
