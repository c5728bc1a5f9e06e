#pragma once
#include <string>

namespace CLI {  // NOLINT(readability-identifier-naming): the name the library gave itself
class App;
}

namespace gapsound {

/// The manual page of the program in roff, section 1, from its verbs and options as they are.
[[nodiscard]] std::string manualPage(const CLI::App& app);
/// Completion of verbs, options and the words an option allows, for bash.
[[nodiscard]] std::string bashCompletion(const CLI::App& app);
/// One line: version, how it was built, engine and model. The engine is a fingerprint of the reps the shipped
/// looks play, the model one of the constants in use. Throws Error(noAccess) when those cannot be read.
[[nodiscard]] std::string versionLine();

}  // namespace gapsound
