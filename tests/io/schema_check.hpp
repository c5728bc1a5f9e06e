#pragma once
#include <nlohmann/json_fwd.hpp>
#include <string>

namespace gapsound {

/// Whether a document passes assets/schema/NAME.schema.json, by another library than our readers.
[[nodiscard]] bool passesSchema(const nlohmann::json& document, const std::string& name);

}  // namespace gapsound
