#pragma once
#include <string>

#include "picture/theme.hpp"

namespace gapsound {

/// Reads a theme: a palette of named colours and one entry for every style of picture/styles.hpp, no other.
/// Throws InputError for a bad entry, Error(noAccess) when the file cannot be read.
[[nodiscard]] Theme readTheme(const std::string& file);
/// A shipped theme by name: "paper" or "evening". Throws InputError for any other name.
[[nodiscard]] Theme shippedTheme(const std::string& name);

}  // namespace gapsound
