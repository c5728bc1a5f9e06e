#include <algorithm>

#include "base/error.hpp"
#include "base/nearest.hpp"
#include "cli/program.hpp"
#include "cli/study_options.hpp"
#include "cli/verbs.hpp"
#include "io/rep_log.hpp"

namespace gapsound {
namespace {

void addFile(std::vector<std::string>& words, const char* option, const std::string& file) {
  if (file.empty()) return;
  words.emplace_back(option);
  words.push_back(file);
}

/// A part may come from anybody: it may name a study and what it is about, nothing that writes.
void requireStudy(const std::string& file, const std::vector<std::string>& call) {
  const std::vector<std::string> studies = {"reps", "vary", "versus", "faults", "matrix"};
  const std::string verb = call.size() > 1 ? call[1] : "";
  if (std::find(studies.begin(), studies.end(), verb) == studies.end())
    throw InputError(file, "/call", "\"" + verb + "\"", nameHint(verb, studies));
}

std::vector<char*> pointersTo(std::vector<std::string>& words) {
  std::vector<char*> pointers;
  for (auto& word : words) pointers.push_back(word.data());
  pointers.push_back(nullptr);
  return pointers;
}

/// The call that played the parts, told to read them instead.
std::vector<std::string> callFor(const GatherOptions& options) {
  const std::string& first = options.parts.front();
  std::vector<std::string> kept = inspectRepLog(first).head.call;
  kept.insert(kept.begin(), "gapsound");
  requireStudy(first, kept);
  auto pointers = pointersTo(kept);
  std::vector<std::string> words = callOf(static_cast<int>(kept.size()), pointers.data());
  words.insert(words.begin(), "gapsound");
  for (const auto& part : options.parts) addFile(words, "--gathered", part);
  addFile(words, "--csv", options.files.csv);
  addFile(words, "--png", options.files.png);
  addFile(words, "--svg", options.files.svg);
  addFile(words, "--pdf", options.files.pdf);
  if (options.json) words.emplace_back("--json");
  return words;
}

}  // namespace

int runGather(const GatherOptions& options) {
  std::vector<std::string> words = callFor(options);
  std::vector<char*> arguments = pointersTo(words);
  return runProgram(static_cast<int>(words.size()), arguments.data(), {});
}

}  // namespace gapsound
