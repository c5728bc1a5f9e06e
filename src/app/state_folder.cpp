#include "app/state_folder.hpp"

#include <signal.h>
#include <unistd.h>

#include <algorithm>
#include <charconv>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>

#include "base/error.hpp"
#include "io/atomic_file.hpp"

namespace gapsound {
namespace {

namespace fs = std::filesystem;
constexpr const char* kUnsaved = "unsaved-";

std::string contentOf(const fs::path& file) {
  std::ifstream in(file);
  return {std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
}

std::vector<std::string> linesOf(const std::string& text) {
  std::vector<std::string> lines;
  std::istringstream in(text);
  for (std::string line; std::getline(in, line);) lines.push_back(line);
  return lines;
}

/// The process a file of unsaved work belongs to; 0 for other files.
int ownerOf(const fs::path& file) {
  const std::string name = file.filename().string();
  if (name.rfind(kUnsaved, 0) != 0) return 0;
  int owner = 0;
  const char* begin = name.data() + std::string_view(kUnsaved).size();
  const auto [end, fault] = std::from_chars(begin, name.data() + name.size(), owner);
  return fault == std::errc{} && end == name.data() + name.size() ? owner : 0;
}

bool runs(int process) { return kill(process, 0) == 0 || errno == EPERM; }

std::string ownName() { return kUnsaved + std::to_string(getpid()); }

}  // namespace

StateFolder StateFolder::usual() {
  if (const char* state = std::getenv("XDG_STATE_HOME"); state != nullptr && *state != '\0') {
    return StateFolder(std::string(state) + "/gapsound");
  }
  const char* home = std::getenv("HOME");
  if (home == nullptr || *home == '\0') return StateFolder("");
  return StateFolder(std::string(home) + "/.local/state/gapsound");
}

std::string StateFolder::in(const std::string& name) const { return path_ + "/" + name; }

void StateFolder::write(const std::string& name, const std::string& content) const {
  if (path_.empty()) return;
  std::error_code failed;
  fs::create_directories(path_, failed);
  try {
    writeAtomically(in(name), content);
  } catch (const Error&) {
    return;  // nothing is lost but the memory of it
  }
}

Settings StateFolder::settings() const {
  Settings settings;
  for (const std::string& line : linesOf(contentOf(in("settings")))) {
    if (line == "theme evening") settings.theme = "evening";
    if (line == "ui_scale 150") settings.ui_scale = 150;
    if (line == "ui_scale 200") settings.ui_scale = 200;
    if (line == "hints seen") settings.hints = false;
  }
  return settings;
}

void StateFolder::keep(const Settings& settings) const {
  write("settings", "theme " + settings.theme + "\nui_scale " + std::to_string(settings.ui_scale) + "\n" +
                        (settings.hints ? "" : "hints seen\n"));
}

std::vector<std::string> StateFolder::recent() const {
  std::vector<std::string> files = linesOf(contentOf(in("recent")));
  std::error_code failed;
  std::erase_if(files, [&](const std::string& file) { return !fs::is_regular_file(file, failed); });
  return files;
}

void StateFolder::remember(const std::string& file) const {
  constexpr std::size_t kMost = 12;
  std::error_code failed;
  const std::string whole = fs::absolute(file, failed).string();
  std::vector<std::string> files = recent();
  std::erase(files, whole);
  files.insert(files.begin(), whole);
  files.resize(std::min(files.size(), kMost));
  std::string content;
  for (const std::string& kept : files) content += kept + "\n";
  write("recent", content);
}

void StateFolder::keepUnsaved(const std::string& file, const std::string& text) const {
  write(ownName(), file + "\n" + text);
}

void StateFolder::dropUnsaved() const {
  std::error_code failed;
  fs::remove(in(ownName()), failed);
}

std::optional<Recovered> StateFolder::recover(const std::string& file) const {
  std::error_code failed;
  if (path_.empty() || !fs::is_directory(path_, failed)) return std::nullopt;
  for (const auto& entry : fs::directory_iterator(path_, failed)) {
    const int owner = ownerOf(entry.path());
    if (owner == 0 || owner == getpid() || runs(owner)) continue;
    const std::string content = contentOf(entry.path());
    const auto line = content.find('\n');
    if (line == std::string::npos || (!file.empty() && content.substr(0, line) != file)) continue;
    fs::remove(entry.path(), failed);
    return Recovered{content.substr(0, line), content.substr(line + 1)};
  }
  return std::nullopt;
}

}  // namespace gapsound
