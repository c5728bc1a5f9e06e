#include "io/atomic_file.hpp"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <cstdio>
#include <cstring>
#include <filesystem>
#include <fstream>
#include <list>
#include <utility>

#include "base/error.hpp"

namespace gapsound {
namespace {

constexpr std::size_t kMostBytes = 16U << 20;

[[noreturn]] void refuse(const std::string& file, const char* what) {
  throw Error(ExitCode::noAccess, file + ": " + what + ": " + std::strerror(errno));
}

/// An open temporary file; removed on the way out unless it was renamed into place.
class Temporary {
 public:
  explicit Temporary(const std::string& target) : target_(target), name_(target + ".XXXXXX") {
    handle_ = mkstemp(name_.data());
    if (handle_ < 0) refuse(target_, "cannot be written");
  }
  ~Temporary() {
    if (handle_ >= 0) close(handle_);
    if (!moved_) unlink(name_.c_str());
  }
  Temporary(const Temporary&) = delete;
  Temporary& operator=(const Temporary&) = delete;

  /// The whole content, flushed to disk.
  void write(std::string_view content) {
    while (!content.empty()) {
      const ssize_t done = ::write(handle_, content.data(), content.size());
      if (done < 0 && errno == EINTR) continue;
      if (done < 0) refuse(target_, "cannot be written");
      content.remove_prefix(static_cast<std::size_t>(done));
    }
    fchmod(handle_, modeOfTarget());
    const bool flushed = fsync(handle_) == 0;
    const bool closed = close(std::exchange(handle_, -1)) == 0;
    if (!flushed || !closed) refuse(target_, "cannot be written");
  }
  void moveIntoPlace() {
    if (std::rename(name_.c_str(), target_.c_str()) != 0) refuse(target_, "cannot be written");
    moved_ = true;
  }

 private:
  [[nodiscard]] mode_t modeOfTarget() const {
    struct stat there {};
    if (stat(target_.c_str(), &there) == 0) return there.st_mode & 07777;
    const mode_t mask = umask(0);
    umask(mask);
    return 0666 & ~mask;
  }

  std::string target_, name_;
  int handle_ = -1;
  bool moved_ = false;
};

void refuseFolder(const std::string& file, const char* what) {
  std::error_code ignored;
  if (!std::filesystem::is_directory(file, ignored)) return;
  errno = EISDIR;
  refuse(file, what);
}

/// A device or a pipe is written into: a file put in its place would take it from everybody.
bool isNoFile(const std::string& name) {
  struct stat there {};
  return stat(name.c_str(), &there) == 0 && !S_ISREG(there.st_mode);
}

void writeInto(const std::string& name, std::string_view content) {
  std::ofstream out(name, std::ios::binary);
  errno = 0;
  if (!out || !out.write(content.data(), static_cast<std::streamsize>(content.size())) || !out.flush())
    refuse(name, "cannot be written");
}

}  // namespace

void writeAtomically(const std::string& file, std::string_view content) {
  const FileContent only{file, std::string(content)};
  writeAtomically(std::span(&only, 1));
}

void writeAtomically(std::span<const FileContent> files) {
  for (const FileContent& it : files) refuseFolder(it.file, "cannot be written");
  std::list<Temporary> temporaries;
  for (const FileContent& it : files)
    if (!isNoFile(it.file)) temporaries.emplace_back(it.file).write(it.content);
  for (const FileContent& it : files)
    if (isNoFile(it.file)) writeInto(it.file, it.content);
  for (Temporary& temporary : temporaries) temporary.moveIntoPlace();
}

void requireWritable(const std::string& file) {
  refuseFolder(file, "cannot be written");
  if (isNoFile(file)) return;
  const Temporary probe(file);
}

std::string readWhole(const std::string& file) {
  refuseFolder(file, "cannot be read");
  std::ifstream in(file, std::ios::binary);
  if (!in) refuse(file, "cannot be read");
  std::string content;
  std::array<char, 1U << 16> block{};
  while (in.read(block.data(), block.size()) || in.gcount() > 0) {
    content.append(block.data(), static_cast<std::size_t>(in.gcount()));
    if (content.size() > kMostBytes) throw InputError(file, "/", "too large", "files up to 16 MiB");
  }
  return content;
}

}  // namespace gapsound
