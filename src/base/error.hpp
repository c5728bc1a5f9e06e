#pragma once
#include <stdexcept>
#include <string>
#include <utility>

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

/// A value that a file or an option may not have. Reads "FILE: /PATH: VALUE; allowed: WHAT".
class InputError : public Error {
 public:
  InputError(std::string file, std::string path, std::string value, std::string allowed)
      : Error(ExitCode::badInput, file + ": " + path + ": " + value + "; allowed: " + allowed),
        file_(std::move(file)),
        path_(std::move(path)),
        value_(std::move(value)),
        allowed_(std::move(allowed)) {}
  [[nodiscard]] const std::string& file() const { return file_; }
  [[nodiscard]] const std::string& path() const { return path_; }
  [[nodiscard]] const std::string& value() const { return value_; }
  [[nodiscard]] const std::string& allowed() const { return allowed_; }

 private:
  std::string file_, path_, value_, allowed_;
};

}  // namespace gapsound
