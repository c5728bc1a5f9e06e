#pragma once
#include <string>
#include <vector>

#include "cli/options.hpp"

namespace CLI {  // NOLINT(readability-identifier-naming): the name the library gave itself
class App;
class Option;
}  // namespace CLI

namespace gapsound {

void addJson(CLI::App& verb, bool& json);
CLI::Option* addRepeatable(CLI::App& verb, const char* name, std::vector<std::string>& into,
                           const char* words);
/// The scenario file and what may be changed about it.
void addPlay(CLI::App& verb, PlayOptions& options);
/// The file, --json, how many reps and on how many threads.
void addMany(CLI::App& verb, ManyOptions& options);

// The options of the verbs that play many reps.
void addReps(CLI::App& verb, ManyOptions& options);
void addVary(CLI::App& verb, VaryOptions& options);
void addVersus(CLI::App& verb, VersusOptions& options);
void addFaults(CLI::App& verb, FaultsOptions& options);
void addMatrix(CLI::App& verb, MatrixOptions& options);
void addGather(CLI::App& verb, GatherOptions& options);

/// The command line without the program, the options that say where a study runs and those that say what it
/// writes: two calls with the same rest are the same study.
[[nodiscard]] std::vector<std::string> callOf(int argc, char** argv);

}  // namespace gapsound
