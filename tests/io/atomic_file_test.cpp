#include "io/atomic_file.hpp"

#include <doctest/doctest.h>

#include <cstdlib>
#include <filesystem>
#include <string>
#include <vector>

#include "base/error.hpp"

using namespace gapsound;

namespace {

namespace fs = std::filesystem;

struct Folder {
  Folder() {
    auto name = (fs::temp_directory_path() / "gapsound-io-XXXXXX").string();
    REQUIRE(mkdtemp(name.data()) != nullptr);
    path = name;
  }
  ~Folder() { fs::remove_all(path); }
  [[nodiscard]] std::string file(const char* name) const { return (path / name).string(); }
  [[nodiscard]] long count() const { return std::distance(fs::directory_iterator(path), {}); }
  fs::path path;
};

}  // namespace

TEST_CASE("a file is written whole and replaced whole") {
  const Folder folder;
  const auto file = folder.file("a.json");
  const std::string binary("one\0two\xff", 8);
  writeAtomically(file, binary);
  CHECK(readWhole(file) == binary);
  writeAtomically(file, "second");
  CHECK(readWhole(file) == "second");
  CHECK(folder.count() == 1);
}

TEST_CASE("what cannot be written leaves no trace") {
  const Folder folder;
  CHECK_THROWS_AS(writeAtomically(folder.file("none/a.json"), "x"), Error);
  fs::create_directory(folder.path / "sub");
  CHECK_THROWS_AS(writeAtomically(folder.file("sub"), "x"), Error);
  CHECK(folder.count() == 1);
}

TEST_CASE("of files that belong together all are written or none") {
  const Folder folder;
  writeAtomically(folder.file("old"), "old");
  const std::vector<FileContent> broken{{folder.file("old"), "new"}, {folder.file("none/b"), "b"}};
  CHECK_THROWS_AS(writeAtomically(broken), Error);
  CHECK(readWhole(folder.file("old")) == "old");
  CHECK(folder.count() == 1);
  const std::vector<FileContent> fine{{folder.file("old"), "new"}, {folder.file("b"), "b"}};
  writeAtomically(fine);
  CHECK(readWhole(folder.file("old")) == "new");
  CHECK(readWhole(folder.file("b")) == "b");
  CHECK(folder.count() == 2);
}

TEST_CASE("a device is written into and stays a device") {
  const Folder folder;
  std::filesystem::create_symlink("/dev/full", folder.file("full"));
  requireWritable(folder.file("full"));
  CHECK_THROWS_AS(writeAtomically(folder.file("full"), "x"), Error);
  writeAtomically("/dev/null", "x");
  CHECK(std::filesystem::is_symlink(folder.file("full")));
  CHECK(std::filesystem::is_character_file("/dev/null"));
}

TEST_CASE("asking whether a file may be written changes nothing") {
  const Folder folder;
  requireWritable(folder.file("a"));
  CHECK(folder.count() == 0);
  writeAtomically(folder.file("a"), "kept");
  requireWritable(folder.file("a"));
  CHECK(readWhole(folder.file("a")) == "kept");
  CHECK_THROWS_AS(requireWritable(folder.file("none/a")), Error);
}

TEST_CASE("an error of access names the file and has its exit code") {
  try {
    static_cast<void>(readWhole("/nowhere/at/all.json"));
    FAIL("was read");
  } catch (const Error& e) {
    CHECK(e.code() == ExitCode::noAccess);
    CHECK(std::string(e.what()).find("/nowhere/at/all.json") == 0);
  }
}
