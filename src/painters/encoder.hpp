#pragma once
#include <sys/types.h>

#include <cstdint>
#include <span>
#include <string>
#include <vector>

namespace gapsound {

/// One run of ffmpeg that reads raw pictures from us. No shell, no signal is raised when it dies early.
class Encoder {
 public:
  /// `wanted` is the film it is for, as errors name it. Arguments after the program's name; the raw pictures
  /// are its standard input. Throws Error(noAccess) when ffmpeg is not installed.
  Encoder(std::string wanted, const std::vector<std::string>& arguments);
  /// Ends and collects the process if finish() was not reached.
  ~Encoder();
  Encoder(const Encoder&) = delete;
  Encoder& operator=(const Encoder&) = delete;
  /// Throws Error(noAccess) with ffmpeg's own last line when it has given up.
  void feed(std::span<const std::uint8_t> picture);
  /// Closes the input and waits. Throws as feed() does when ffmpeg failed.
  void finish();

 private:
  [[noreturn]] void fail();
  void closeInput();
  [[nodiscard]] int wait();

  std::string wanted_;
  int input_ = -1;   // our end of its standard input
  int errors_ = -1;  // unnamed file that holds its standard error
  pid_t process_ = -1;
};

}  // namespace gapsound
