#pragma once
#include <string>

#include "app/rep.hpp"

namespace gapsound {

/// One sentence: what the second rep did differently first, and where it led. `change` says what was changed
/// between the two, "" when only the seed differs.
[[nodiscard]] std::string differenceWords(const Rep& held, const Rep& now, const std::string& change);

}  // namespace gapsound
