#include "cli/program.hpp"
#include "cli/verbs.hpp"
#include "io/rep_log.hpp"

namespace gapsound {
namespace {

void addFile(std::vector<std::string>& words, const char* option, const std::string& file) {
  if (file.empty()) return;
  words.emplace_back(option);
  words.push_back(file);
}

/// The call that played the parts, told to read them instead.
std::vector<std::string> callFor(const GatherOptions& options) {
  std::vector<std::string> words = inspectRepLog(options.parts.front()).head.call;
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
  std::vector<char*> arguments;
  for (auto& word : words) arguments.push_back(word.data());
  arguments.push_back(nullptr);
  return runProgram(static_cast<int>(words.size()), arguments.data(), {});
}

}  // namespace gapsound
