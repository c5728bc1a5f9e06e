#pragma once
#include <cstdint>
#include <set>
#include <string>

#include "base/model.hpp"
#include "cli/options.hpp"
#include "football/library.hpp"
#include "io/roster.hpp"
#include "scenario/scenario.hpp"
#include "scenario/setup.hpp"

namespace gapsound {

/// A scenario ready to be played, with the constants it is played by.
struct Session {
  Scenario scenario;
  Setup setup;
  Model model;
};

/// The shipped library, read once.
[[nodiscard]] const Library& library();
/// Reads what the options name. Throws InputError or Error(noAccess).
[[nodiscard]] Session sessionFor(const PlayOptions& options);
/// The setup of a file with changes laid on it.
[[nodiscard]] Setup setupFor(const std::string& file, const Changes& changes, const Model& model);
/// A scenario file with changes and the options' roster laid on it.
[[nodiscard]] Scenario scenarioFor(const ManyOptions& options, const std::string& file,
                                   const Changes& changes, const Model& model);
/// Says on standard error what a coach should know of his roster; `ids`: the men of all looks.
void tellRemarks(const Roster& roster, const std::set<std::string>& ids);
/// The constants of a file, the shipped ones when `file` is empty.
[[nodiscard]] Model modelFor(const std::string& file);
/// Both lists of changes, the second after the first.
[[nodiscard]] Changes joined(Changes first, const Changes& second);
/// The changes of a picture's options, its title and its mix among them.
[[nodiscard]] Changes pictureChanges(const PictureOptions& options);

}  // namespace gapsound
