#include "cli/week_folder.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cctype>
#include <filesystem>
#include <nlohmann/json.hpp>

#include "base/error.hpp"
#include "base/nearest.hpp"
#include "base/stream.hpp"
#include "io/atomic_file.hpp"

namespace gapsound {
namespace {

namespace fs = std::filesystem;
using Json = nlohmann::ordered_json;

void makeFolder(const fs::path& folder) {
  std::error_code failed;
  fs::create_directories(folder, failed);
  if (failed || !fs::is_directory(folder))
    throw Error(ExitCode::noAccess,
                folder.string() + ": cannot be made: " + (failed ? failed.message() : "not a folder"));
}

void requireKnown(const std::vector<WeekStep>& steps, const std::vector<std::string>& only) {
  std::vector<std::string> parts;
  for (const WeekStep& step : steps)
    if (std::find(parts.begin(), parts.end(), step.part) == parts.end()) parts.push_back(step.part);
  for (const std::string& part : only)
    if (std::find(parts.begin(), parts.end(), part) == parts.end())
      throw InputError("command line", "--only", part, nameHint(part, parts));
}

}  // namespace

std::string fileNameOf(const std::string& name, std::set<std::string>& taken) {
  std::string safe;
  for (const char letter : name) {
    const auto byte = static_cast<unsigned char>(letter);
    if (byte < 128 && std::isalnum(byte) != 0)
      safe += static_cast<char>(std::tolower(byte));
    else if (!safe.empty() && safe.back() != '-')
      safe += '-';
  }
  while (!safe.empty() && safe.back() == '-') safe.pop_back();
  safe = safe.empty() ? "call" : safe.substr(0, 60);
  std::string unique = safe;
  for (int i = 2; !taken.insert(unique).second; ++i) unique = fmt::format("{}-{}", safe, i);
  return unique;
}

WeekFolder::WeekFolder(std::string folder, const std::string& key)
    : folder_(std::move(folder)), made_from_(fmt::format("{:016x}", keyOf(key))) {
  makeFolder(folder_);
  recall();
}

/// Where a file of the folder really lies; refused when a link leads elsewhere.
std::string WeekFolder::placeOf(const std::string& file) const {
  const fs::path wanted = fs::path(folder_) / file;
  makeFolder(wanted.parent_path());
  const fs::path root = fs::canonical(folder_), parent = fs::canonical(wanted.parent_path());
  const auto [end, at] = std::mismatch(root.begin(), root.end(), parent.begin(), parent.end());
  if (end != root.end())
    throw InputError(wanted.string(), "folder", parent.string(), "a place inside " + root.string());
  return wanted.string();
}

bool WeekFolder::isDone(const std::string& file) const {
  return std::find(done_.begin(), done_.end(), file) != done_.end() && fs::exists(fs::path(folder_) / file);
}

void WeekFolder::recall() {
  const fs::path record = fs::path(folder_) / "week.json";
  if (!fs::exists(record)) return;
  const Json kept = Json::parse(readWhole(record.string()), nullptr, false);
  if (!kept.is_object() || kept.value("made_from", "") != made_from_ || !kept.contains("files")) return;
  for (const auto& file : kept["files"])
    if (file.is_string()) done_.push_back(file.get<std::string>());
}

void WeekFolder::remember(const std::string& file) {
  if (std::find(done_.begin(), done_.end(), file) == done_.end()) done_.push_back(file);
  const Json record = {{"gapsound", 1}, {"made_from", made_from_}, {"files", done_}};
  writeAtomically((fs::path(folder_) / "week.json").string(), record.dump(2) + "\n");
}

void WeekFolder::make(const std::vector<WeekStep>& steps, const std::vector<std::string>& only) {
  requireKnown(steps, only);
  std::size_t number = 0;
  for (const WeekStep& step : steps) {
    ++number;
    const bool wanted = only.empty() || std::find(only.begin(), only.end(), step.part) != only.end();
    if (!wanted) continue;
    const bool done = isDone(step.file);
    fmt::print(stderr, "{} of {}: {}{}\n", number, steps.size(), step.file, done ? ", done before" : "");
    if (done) continue;
    step.write(placeOf(step.file));
    remember(step.file);
  }
}

std::vector<std::string> WeekFolder::files() const {
  std::vector<std::string> found;
  for (const std::string& file : done_)
    if (isDone(file)) found.push_back((fs::path(folder_) / file).string());
  return found;
}

}  // namespace gapsound
