#pragma once
#include <nlohmann/json_fwd.hpp>

#include "io/json_reader.hpp"
#include "scenario/scenario.hpp"

namespace gapsound {

/// The picture of film under "start" of a scenario file; men are checked when the scenario is resolved.
[[nodiscard]] Start startFrom(JsonReader place);
[[nodiscard]] nlohmann::ordered_json written(const Start& start);

}  // namespace gapsound
