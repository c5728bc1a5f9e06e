#pragma once
#include "scenario/setup.hpp"

namespace gapsound {

/// A block, a part in the fit and a defender by the words of a file; throw InputError (`path` in the
/// scenario's file) with the nearest known ones.
[[nodiscard]] BlockKind blockNamed(const std::string& word, const Scenario& scenario,
                                   const std::string& path);
[[nodiscard]] FitRole partNamed(const std::string& word, const Scenario& scenario, const std::string& path);
[[nodiscard]] int defenderNamed(const Setup& setup, const std::string& id, const Scenario& scenario,
                                const std::string& path);

/// The parts a man of this level can be given, as a file calls them.
[[nodiscard]] std::vector<std::string> partNames(int level);

/// The job a file gives one man (`/players/ID/job`, `/on`), in the frame of the setup. A part only one man
/// can have goes over to him, and who had it takes his. Throws InputError for a job his kind of man cannot
/// have.
void giveJob(Setup& setup, int man, const ManSettings& given, const Scenario& scenario);

}  // namespace gapsound
