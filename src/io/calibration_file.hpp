#pragma once
#include <string>

#include "study/calibration.hpp"

namespace gapsound {

/// Reads the calibration set (assets/calibration.json): shares of kinds of run and of men in the box, and
/// looks, each a scenario with its half and its kind. Throws InputError with the JSON path, Error(noAccess)
/// when the file cannot be read.
[[nodiscard]] CalibrationSet readCalibrationSet(const std::string& file);

}  // namespace gapsound
