#pragma once
#include <nlohmann/json.hpp>

#include "io/json_reader.hpp"
#include "scenario/scenario.hpp"

namespace gapsound {

// Parts that scenario and plan files share. Readers of a reference leave other keys to the caller, who calls
// finish(); manFrom() reads a whole object. All throw InputError.

[[nodiscard]] std::string filledText(const JsonReader& place);
[[nodiscard]] Level readLevel(JsonReader& root);
[[nodiscard]] FieldSpot readField(JsonReader& place);
// `filmed`: formation, scheme, front and direction may be left out.
[[nodiscard]] OffensePlan readOffense(JsonReader& place, bool filmed = false);
[[nodiscard]] DefensePlan readDefense(JsonReader& place, bool filmed = false);
[[nodiscard]] ManSettings manFrom(JsonReader place);

[[nodiscard]] const char* wordOf(Level level);
[[nodiscard]] nlohmann::ordered_json written(const FieldSpot& field);
[[nodiscard]] nlohmann::ordered_json written(const OffensePlan& plan);
[[nodiscard]] nlohmann::ordered_json written(const DefensePlan& plan);
[[nodiscard]] nlohmann::ordered_json written(const ManSettings& man);

}  // namespace gapsound
