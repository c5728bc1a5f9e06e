#include "base/error.hpp"

#include <string_view>

#include "base/text.hpp"

namespace gapsound {
namespace {

// What comes from a file may be anything; a message is one line of bounded length.
constexpr std::size_t kMostOfPath = 200, kMostOfValue = 160, kMostOfAllowed = 1000;

std::string message(const std::string& file, std::string_view path, std::string_view value,
                    std::string_view allowed) {
  return file + ": " + oneLine(path, kMostOfPath) + ": " + oneLine(value, kMostOfValue) +
         "; allowed: " + oneLine(allowed, kMostOfAllowed);
}

}  // namespace

InputError::InputError(const std::string& file, const std::string& path, const std::string& value,
                       const std::string& allowed)
    : Error(ExitCode::badInput, message(file, path, value, allowed)),
      file_(file),
      path_(oneLine(path, kMostOfPath)),
      value_(oneLine(value, kMostOfValue)),
      allowed_(oneLine(allowed, kMostOfAllowed)) {}

}  // namespace gapsound
