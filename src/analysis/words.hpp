#pragma once
#include <string>
#include <string_view>

#include "analysis/lanes.hpp"
#include "football/faults.hpp"
#include "football/states.hpp"

namespace gapsound {

/// What a coach says of a man in this state, after the man's name: "was kicked out".
[[nodiscard]] std::string_view saidOf(EndState state);
[[nodiscard]] std::string_view saidOf(BackerState state);
/// Whether a man in this state is not where his call needs him, so that somebody has to fit off him.
[[nodiscard]] bool isLost(EndState state);
[[nodiscard]] bool isLost(BackerState state);
/// What a man did who fitted like this, after his name: "fitted inside the end".
[[nodiscard]] std::string_view saidOf(Fit fit);
/// The same of a man who has just decided to: "fits inside the end".
[[nodiscard]] std::string_view setsOutTo(Fit fit);
/// What a man did whose mistake this is, after his name: "scraped too wide".
[[nodiscard]] std::string_view saidOf(FaultKind kind);
/// How a crossing lies to the play, after the runner's name: "cut back".
[[nodiscard]] std::string_view saidOf(Relation relation);
/// "1.4 yd", "a yard" is not used: figures read the same everywhere.
[[nodiscard]] std::string yards(double value);

}  // namespace gapsound
