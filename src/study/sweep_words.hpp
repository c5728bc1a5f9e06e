#pragma once
#include <string>

#include "study/vary.hpp"

namespace gapsound {

/// "6 yd/s".
[[nodiscard]] std::string measured(double value, const std::string& unit);
/// The finding in one plain sentence, with its interval.
[[nodiscard]] std::string sentenceOf(const SweepPlan& plan, const SweepResult& result);

}  // namespace gapsound
