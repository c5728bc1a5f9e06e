#pragma once
#include <string>
#include <vector>

#include "study/leak.hpp"

namespace gapsound {

/// Lays the places of a CSV with the columns id, x, y (yards in the frame of the look) on what was seen;
/// empty cells say nothing. Throws InputError with line and column, Error(noAccess) when it cannot be read.
void readPlaces(const std::string& file, const Setup& look, Seen& seen);
/// One thing seen as typed: "S=3.5,2", "S.x=3.5", "SS.y=7", "end=kicked", "backer=too_wide". Throws
/// InputError.
void laySighting(const std::string& text, const Setup& look, Seen& seen);
/// The picture a scenario starts from, as what was seen. Throws InputError for a man the look has not.
void laySighting(const Start& start, const std::string& source, const Setup& look, Seen& seen);

}  // namespace gapsound
