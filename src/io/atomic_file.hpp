#pragma once
#include <span>
#include <string>
#include <string_view>

namespace gapsound {

/// Writes the whole content or leaves what was there: a temporary file in the same folder, flushed to
/// disk, then renamed. Throws Error(noAccess) with the file and the reason.
void writeAtomically(const std::string& file, std::string_view content);
struct FileContent {
  std::string file, content;
};
/// The same for files that belong together: every one is whole on the disk before the first is put in its
/// place.
void writeAtomically(std::span<const FileContent> files);
/// The file's bytes; Error(noAccess) when it cannot be read, folders included, InputError past 16 MiB.
[[nodiscard]] std::string readWhole(const std::string& file);
/// Early check that `file` could be written, so that long work is not done for nothing; leaves no trace.
/// Throws Error(noAccess).
void requireWritable(const std::string& file);

}  // namespace gapsound
