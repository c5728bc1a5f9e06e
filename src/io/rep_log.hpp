#pragma once
#include <cstdint>
#include <functional>
#include <string>
#include <vector>

#include "analysis/account.hpp"

namespace gapsound {

/// What a log of reps says of itself, in its first line.
struct RepLogHead {
  std::string study;              // key of everything the numbers depend on
  std::vector<std::string> call;  // the command line that gives the same study
  int part = 1, parts = 1;
  std::uint64_t reps = 0;  // how many it has when it is whole
  bool operator==(const RepLogHead&) const = default;
};

/// A file that reps are appended to, in the order of a schedule. What was appended survives the end of the
/// program, whatever that end is; a record cut short is dropped when the file is opened again.
class RepLog {
 public:
  /// A new file, in place of an old one. Throws Error(noAccess).
  static RepLog create(const std::string& file, const RepLogHead& head);
  /// Goes on with a file after its last sound record. Throws like readRepLog().
  static RepLog open(const std::string& file);
  RepLog(RepLog&& other) noexcept;
  RepLog& operator=(RepLog&&) = delete;
  ~RepLog();

  /// Kept in memory until flush(). Throws Error(noAccess), as a full disk does.
  void append(const Summary& rep);
  void flush();
  /// Flushes down to the disk and gives the file its final name.
  void moveTo(const std::string& name);

 private:
  RepLog(std::string file, int handle);
  std::string file_, pending_;
  int handle_ = -1;
};

/// Reads the head, then hands out the sound records in order until `take` returns false. Gives the head and
/// the number of records handed out. Throws InputError for a file that is no log of reps, Error(noAccess) for
/// one that cannot be read.
struct RepLogContent {
  RepLogHead head;
  std::uint64_t reps = 0;
};
RepLogContent readRepLog(const std::string& file, const std::function<bool(const Summary&)>& take);
/// Head and number of sound records.
[[nodiscard]] RepLogContent inspectRepLog(const std::string& file);

}  // namespace gapsound
