#include "painters/encoder.hpp"

#include <fcntl.h>
#include <signal.h>
#include <spawn.h>
#include <sys/mman.h>
#include <sys/socket.h>
#include <sys/wait.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <cstring>
#include <utility>

#include "base/error.hpp"

extern char** environ;

namespace gapsound {
namespace {

std::vector<char*> pointersTo(std::vector<std::string>& words) {
  std::vector<char*> pointers;
  pointers.reserve(words.size() + 1);
  for (std::string& word : words) pointers.push_back(word.data());
  pointers.push_back(nullptr);
  return pointers;
}

std::string lastLine(int file) {
  std::array<char, 4096> buffer{};
  const off_t size = lseek(file, 0, SEEK_END);
  const off_t from = size > static_cast<off_t>(buffer.size()) ? size - static_cast<off_t>(buffer.size()) : 0;
  const ssize_t count = pread(file, buffer.data(), buffer.size(), from);
  std::string text(buffer.data(), count > 0 ? static_cast<std::size_t>(count) : 0);
  while (!text.empty() && text.back() == '\n') text.pop_back();
  return text.substr(text.find_last_of('\n') + 1);
}

/// Why, without the file that ffmpeg writes beside the wanted one until it is whole.
std::string reasonIn(const std::string& line) {
  const std::size_t colon = line.rfind(": ");
  return colon == std::string::npos ? line : line.substr(colon + 2);
}

/// Standard streams of the child: pictures in, nothing out, errors into a file of ours.
class ChildStreams {
 public:
  ChildStreams(int input, int errors) {
    posix_spawn_file_actions_init(&actions_);
    posix_spawn_file_actions_adddup2(&actions_, input, STDIN_FILENO);
    posix_spawn_file_actions_addopen(&actions_, STDOUT_FILENO, "/dev/null", O_WRONLY, 0);
    posix_spawn_file_actions_adddup2(&actions_, errors, STDERR_FILENO);
  }
  ~ChildStreams() { posix_spawn_file_actions_destroy(&actions_); }
  ChildStreams(const ChildStreams&) = delete;
  ChildStreams& operator=(const ChildStreams&) = delete;
  [[nodiscard]] const posix_spawn_file_actions_t* get() const { return &actions_; }

 private:
  posix_spawn_file_actions_t actions_{};
};

}  // namespace

Encoder::Encoder(std::string wanted, const std::vector<std::string>& arguments) : wanted_(std::move(wanted)) {
  std::array<int, 2> ends{};
  if (socketpair(AF_UNIX, SOCK_STREAM | SOCK_CLOEXEC, 0, ends.data()) != 0) {
    throw Error(ExitCode::ourFault, std::string("ffmpeg: no channel: ") + std::strerror(errno));
  }
  input_ = ends[0];
  errors_ = memfd_create("ffmpeg-errors", MFD_CLOEXEC);
  std::vector<std::string> words{"ffmpeg"};
  words.insert(words.end(), arguments.begin(), arguments.end());
  const ChildStreams streams(ends[1], errors_);
  const int failed =
      posix_spawnp(&process_, "ffmpeg", streams.get(), nullptr, pointersTo(words).data(), environ);
  close(ends[1]);
  if (failed != 0) {
    process_ = -1;
    closeInput();
    close(errors_);
    throw Error(ExitCode::noAccess, std::string("ffmpeg: cannot be run: ") + std::strerror(failed) +
                                        "; films need the package ffmpeg");
  }
}

Encoder::~Encoder() {
  closeInput();
  if (process_ > 0) {
    kill(process_, SIGTERM);
    static_cast<void>(wait());
  }
  close(errors_);
}

void Encoder::feed(std::span<const std::uint8_t> picture) {
  while (!picture.empty()) {
    const ssize_t sent = send(input_, picture.data(), picture.size(), MSG_NOSIGNAL);
    if (sent < 0 && errno == EINTR) continue;
    if (sent <= 0) fail();
    picture = picture.subspan(static_cast<std::size_t>(sent));
  }
}

void Encoder::finish() {
  closeInput();
  if (wait() != 0) fail();
}

void Encoder::fail() {
  closeInput();
  if (process_ > 0) static_cast<void>(wait());
  throw Error(ExitCode::noAccess, wanted_ + ": cannot be written: ffmpeg: " + reasonIn(lastLine(errors_)));
}

void Encoder::closeInput() {
  if (input_ >= 0) close(input_);
  input_ = -1;
}

int Encoder::wait() {
  int status = 0;
  while (waitpid(process_, &status, 0) < 0 && errno == EINTR) {
  }
  process_ = -1;
  return WIFEXITED(status) ? WEXITSTATUS(status) : 1;
}

}  // namespace gapsound
