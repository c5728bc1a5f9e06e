#pragma once
#include <map>
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

/// How far a constant may be moved, both ends included.
struct ConstantRange {
  double low = 0.0, high = 0.0;
};
/// The range of every constant, by name.
[[nodiscard]] std::map<std::string, ConstantRange> constantRanges(const std::string& file);
/// A model file's content with other values for some constants, all else as it was laid out. Throws
/// InputError for a name the content has not.
[[nodiscard]] std::string withValues(const std::string& content, const std::map<std::string, double>& values);

}  // namespace gapsound
