#include "program.hpp"

#include <sys/wait.h>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <stdexcept>

namespace gapsound::testing {
namespace {

namespace fs = std::filesystem;

std::string contentOf(const std::string& file) {
  std::ifstream in(file, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
}

}  // namespace

std::string quoted(const std::string& text) {
  std::string result = "'";
  for (const char c : text) result += c == '\'' ? std::string("'\\''") : std::string(1, c);
  return result + "'";
}

namespace {

std::string commandFor(const std::vector<std::string>& arguments) {
  std::string command = quoted(GAPSOUND_PROGRAM);
  for (const auto& argument : arguments) command += " " + quoted(argument);
  return command;
}

}  // namespace

Outcome shell(const std::string& command) {
  const ScratchFolder scratch;
  const auto out = scratch.path("out");
  const auto err = scratch.path("err");
  const std::string state = "export XDG_STATE_HOME=" + quoted(scratch.path("state")) + "; ";
  const int status =
      std::system((state + "{ " + command + "\n} >" + out + " 2>" + err + " </dev/null").c_str());
  return {WIFEXITED(status) ? WEXITSTATUS(status) : -1, contentOf(out), contentOf(err)};
}

Outcome run(const std::vector<std::string>& arguments) { return shell(commandFor(arguments)); }

Outcome runFor(double seconds, const std::string& signal, const std::vector<std::string>& arguments) {
  return shell("timeout --preserve-status -s " + signal + " " + std::to_string(seconds) + " " +
               commandFor(arguments));
}

Outcome runUntilLarger(const std::string& file, std::uintmax_t bytes, const std::string& signal,
                       const std::vector<std::string>& arguments) {
  const std::string alive = "kill -0 $p 2>/dev/null";
  const std::string size = "$(stat -c %s " + quoted(file) + " 2>/dev/null || echo 0)";
  return shell(commandFor(arguments) + " & p=$!; while " + alive + " && [ \"" + size + "\" -le " +
               std::to_string(bytes) + " ]; do sleep 0.01; done; kill -s " + signal +
               " $p 2>/dev/null; wait $p");
}

ScratchFolder::ScratchFolder() {
  auto name = (fs::temp_directory_path() / "gapsound-test-XXXXXX").string();
  if (!mkdtemp(name.data())) throw std::runtime_error("no scratch folder");
  folder_ = name;
}

ScratchFolder::~ScratchFolder() {
  std::error_code ignored;
  fs::remove_all(folder_, ignored);
}

std::string ScratchFolder::path(const std::string& name) const { return folder_ + "/" + name; }

std::string ScratchFolder::file(const std::string& name, const std::string& content) const {
  std::ofstream(path(name), std::ios::binary) << content;
  return path(name);
}

std::vector<std::string> ScratchFolder::names() const {
  std::vector<std::string> found;
  for (const auto& entry : fs::directory_iterator(folder_)) found.push_back(entry.path().filename().string());
  std::sort(found.begin(), found.end());
  return found;
}

std::string shipped(const std::string& scenario) {
  return std::string(GAPSOUND_ROOT) + "/scenarios/" + scenario + ".json";
}

int lines(const std::string& text) { return static_cast<int>(std::count(text.begin(), text.end(), '\n')); }

}  // namespace gapsound::testing
