#pragma once
#include "football/vocabulary.hpp"
#include "scenario/scenario.hpp"
#include "scenario/setup.hpp"

namespace gapsound {

/// The scenario with the coach's own words replaced by what the library calls them. Throws InputError for a
/// man who is named both ways.
[[nodiscard]] Scenario inLibraryWords(const Scenario& scenario, const Vocabulary& vocabulary);
/// The resolved look in the coach's own words: its men, names and notes. Man::drawn stays.
void tellInOwnWords(Setup& setup, const Vocabulary& vocabulary);

}  // namespace gapsound
