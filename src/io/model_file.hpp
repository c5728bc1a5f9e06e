#pragma once
#include <string>
#include <vector>

#include "base/model.hpp"

namespace gapsound {

/// Reads the constants of the simulation. Every name of the model must be there once, no other, each
/// with value, unit, low, high and source, and the value within [low, high].
/// Throws InputError for a bad entry, Error(noAccess) when the file cannot be read.
[[nodiscard]] Model readModel(const std::string& file);
/// Names of the constants whose source says estimate, in the order of the file.
[[nodiscard]] std::vector<std::string> estimatedConstants(const std::string& file);

}  // namespace gapsound
