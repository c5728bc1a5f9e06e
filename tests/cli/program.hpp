#pragma once
#include <cstdint>
#include <string>
#include <vector>

namespace gapsound::testing {

struct Outcome {
  int code = -1;
  std::string out, err;
};

/// Runs the built program with these arguments and waits for it.
[[nodiscard]] Outcome run(const std::vector<std::string>& arguments);

/// The same, ended by a signal ("KILL", "INT") after so many seconds if it is still at work; code 128 + the
/// signal's number when it was ended.
[[nodiscard]] Outcome runFor(double seconds, const std::string& signal,
                             const std::vector<std::string>& arguments);
/// The same, ended as soon as the file is there and larger than so many bytes, whatever time that takes.
[[nodiscard]] Outcome runUntilLarger(const std::string& file, std::uintmax_t bytes, const std::string& signal,
                                     const std::vector<std::string>& arguments);
/// Runs a line of the shell, with a state folder of its own.
[[nodiscard]] Outcome shell(const std::string& command);
/// The text as one word of the shell.
[[nodiscard]] std::string quoted(const std::string& text);

/// A folder of its own that goes away with the object.
class ScratchFolder {
 public:
  ScratchFolder();
  ~ScratchFolder();
  ScratchFolder(const ScratchFolder&) = delete;
  ScratchFolder& operator=(const ScratchFolder&) = delete;
  [[nodiscard]] std::string path(const std::string& name) const;
  /// Writes a file into the folder and gives its path.
  std::string file(const std::string& name, const std::string& content) const;
  /// Names of what lies in the folder, sorted.
  [[nodiscard]] std::vector<std::string> names() const;

 private:
  std::string folder_;
};

[[nodiscard]] std::string shipped(const std::string& scenario);
[[nodiscard]] int lines(const std::string& text);

}  // namespace gapsound::testing
