#pragma once
#include <string>

#include "football/library.hpp"

namespace gapsound {

/// Reads the library folder of an assets folder: formations, fronts, shells, schemes, bodies, calls, fits and
/// phrases. Throws InputError with file and JSON path for anything unknown, missing or out of range,
/// Error(noAccess) when a file cannot be read.
[[nodiscard]] Library readLibrary(const std::string& assetsDir);

}  // namespace gapsound
