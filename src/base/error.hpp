#pragma once
#include <stdexcept>
#include <string>

namespace gapsound {

/// What the program's exit codes mean; scripts rest on them.
enum class ExitCode { fine = 0, usage = 2, badInput = 3, noAccess = 4, ourFault = 5 };

/// The one error that crosses folders: thrown once where the fault is found, printed once at the edge.
class Error : public std::runtime_error {
 public:
  Error(ExitCode code, const std::string& message) : std::runtime_error(message), code_(code) {}
  [[nodiscard]] ExitCode code() const { return code_; }

 private:
  ExitCode code_;
};

/// A value that a file or an option may not have. Reads "FILE: /PATH: VALUE; allowed: WHAT",
/// on one line of bounded length whatever the file holds.
class InputError : public Error {
 public:
  InputError(const std::string& file, const std::string& path, const std::string& value,
             const std::string& allowed);
  [[nodiscard]] const std::string& file() const { return file_; }
  [[nodiscard]] const std::string& path() const { return path_; }
  [[nodiscard]] const std::string& value() const { return value_; }
  [[nodiscard]] const std::string& allowed() const { return allowed_; }

 private:
  std::string file_, path_, value_, allowed_;
};

}  // namespace gapsound
