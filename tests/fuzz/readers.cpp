#include "readers.hpp"

#include <sys/mman.h>
#include <unistd.h>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <stdexcept>
#include <string>
#include <vector>

#include "base/error.hpp"
#include "io/assets.hpp"
#include "io/charting_file.hpp"
#include "io/film_frame.hpp"
#include "io/library.hpp"
#include "io/model_file.hpp"
#include "io/plan_file.hpp"
#include "io/rep_log.hpp"
#include "io/roster.hpp"
#include "io/scenario_file.hpp"
#include "io/theme_file.hpp"
#include "scenario/plan.hpp"
#include "scenario/resolve.hpp"

namespace gapsound::fuzz {
namespace {

namespace fs = std::filesystem;

const Library& library() {
  static const Library shipped = readLibrary(assetPath(""));
  return shipped;
}
const Model& model() {
  static const Model shipped = readModel(assetPath("model.json"));
  return shipped;
}

/// A file in memory for readers that take a name.
class MemoryFile {
 public:
  explicit MemoryFile(std::string_view bytes) : handle_(memfd_create("file", MFD_CLOEXEC)) {
    if (handle_ < 0 || write(handle_, bytes.data(), bytes.size()) != static_cast<ssize_t>(bytes.size()))
      throw std::runtime_error("no file in memory");
  }
  ~MemoryFile() { close(handle_); }
  MemoryFile(const MemoryFile&) = delete;
  MemoryFile& operator=(const MemoryFile&) = delete;
  [[nodiscard]] std::string name() const { return "/proc/self/fd/" + std::to_string(handle_); }

 private:
  int handle_;
};

/// An assets folder whose library is links to the shipped files, but for the one that is replaced.
class LibraryFolder {
 public:
  LibraryFolder() {
    auto name = (fs::temp_directory_path() / "gapsound-fuzz-XXXXXX").string();
    if (!mkdtemp(name.data())) throw std::runtime_error("no scratch folder");
    folder_ = name;
    fs::create_directory(folder_ / "library");
    for (const auto& entry : fs::directory_iterator(assetPath("library"))) {
      fs::create_symlink(entry.path(), inLibrary(entry.path().filename()));
      parts_.push_back(entry.path().filename());
    }
    std::sort(parts_.begin(), parts_.end());
  }
  ~LibraryFolder() {
    std::error_code ignored;
    fs::remove_all(folder_, ignored);
  }
  LibraryFolder(const LibraryFolder&) = delete;
  LibraryFolder& operator=(const LibraryFolder&) = delete;

  /// Reads the library with `bytes` in place of its part number `which`.
  void readWith(std::size_t which, std::string_view bytes) {
    const MemoryFile file(bytes);
    const fs::path part = parts_.at(which % parts_.size());
    fs::remove(inLibrary(part));
    fs::create_symlink(file.name(), inLibrary(part));
    try {
      static_cast<void>(readLibrary(folder_.string()));
    } catch (const Error&) {
    }
    fs::remove(inLibrary(part));
    fs::create_symlink(assetPath("library") / part, inLibrary(part));
  }

 private:
  [[nodiscard]] fs::path inLibrary(const fs::path& part) const { return folder_ / "library" / part; }

  fs::path folder_;
  std::vector<fs::path> parts_;
};

void readScenarioBytes(std::string_view bytes) {
  const Scenario scenario = parseScenario(bytes, "file");
  static_cast<void>(parseScenario(toJson(scenario), "again"));  // what was read can be written and read
  static_cast<void>(resolve(scenario, library(), model()));
}

void readPlanBytes(std::string_view bytes) {
  const Plan plan = parsePlan(bytes, "file");
  static_cast<void>(parsePlan(toJson(plan), "again"));
  static_cast<void>(resolve(pairOf(plan, 0, 0), library(), model()));
}

void readRosterBytes(std::string_view bytes) { static_cast<void>(parseRoster(bytes, "file")); }

void readFilmBytes(std::string_view bytes) {
  FilmAxes axes;
  axes.line = 45.0;
  static_cast<void>(readFilm(MemoryFile(bytes).name(), axes));
}

void readChartingBytes(std::string_view bytes) {
  static_cast<void>(readCharting(MemoryFile(bytes).name(), {}, library()));
}

void readRepsBytes(std::string_view bytes) { static_cast<void>(inspectRepLog(MemoryFile(bytes).name())); }

/// The first byte chooses the part; '{' is as good as any.
void readLibraryBytes(std::string_view bytes) {
  static LibraryFolder folder;
  if (!bytes.empty()) folder.readWith(static_cast<unsigned char>(bytes.front()), bytes.substr(1));
}

void readModelBytes(std::string_view bytes) { static_cast<void>(readModel(MemoryFile(bytes).name())); }

void readThemeBytes(std::string_view bytes) { static_cast<void>(readTheme(MemoryFile(bytes).name())); }

/// An Error is the refusal that is asked for, but for one that says the fault is ours.
template <Reader reader>
void refusing(std::string_view bytes) {
  try {
    reader(bytes);
  } catch (const Error& error) {
    if (error.code() == ExitCode::ourFault) throw;
  }
}

}  // namespace

const std::map<std::string, Reader>& readers() {
  static const std::map<std::string, Reader> all = {
      {"scenario", refusing<readScenarioBytes>}, {"plan", refusing<readPlanBytes>},
      {"roster", refusing<readRosterBytes>},     {"film", refusing<readFilmBytes>},
      {"charting", refusing<readChartingBytes>}, {"reps", refusing<readRepsBytes>},
      {"library", refusing<readLibraryBytes>},   {"model", refusing<readModelBytes>},
      {"theme", refusing<readThemeBytes>}};
  return all;
}

}  // namespace gapsound::fuzz
