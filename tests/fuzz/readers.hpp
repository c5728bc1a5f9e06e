#pragma once
#include <map>
#include <string>
#include <string_view>

namespace gapsound::fuzz {

/// Reads the bytes as a file from a stranger would be read, down to a resolved look where there is one.
/// Returns when they were fine or refused as they should be; anything else thrown is a fault.
using Reader = void (*)(std::string_view bytes);

/// By the kind of file: scenario, plan, roster, film, charting, reps, library, model, theme.
[[nodiscard]] const std::map<std::string, Reader>& readers();

}  // namespace gapsound::fuzz
