#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "io/changes.hpp"
#include "scenario/scenario.hpp"

namespace gapsound {

/// Reads a scenario file, lays `changes` on it and checks keys, types and ranges; library names and
/// men are checked when it is resolved. Throws InputError with the JSON path, Error(noAccess) when the
/// file cannot be read.
[[nodiscard]] Scenario readScenario(const std::string& file, const Changes& changes = {});
/// The same from a text; `source` stands for the file in messages.
[[nodiscard]] Scenario parseScenario(std::string_view text, const std::string& source,
                                     const Changes& changes = {});
/// The scenario as a file's content that needs no other file; reading it back gives the same scenario.
[[nodiscard]] std::string toJson(const Scenario& scenario);
/// The same for the file scenario.source: a defense kept in a file of its own stays there.
[[nodiscard]] std::string toFile(const Scenario& scenario);

/// A key that players.ID may have, and its allowed values in words.
struct Attribute {
  std::string name, allowed;
};
[[nodiscard]] std::vector<Attribute> manAttributes();

}  // namespace gapsound
