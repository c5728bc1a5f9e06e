// Files from a stranger: they may be refused or look wrong, and no more.
#include <doctest/doctest.h>

#include <chrono>
#include <filesystem>
#include <fstream>
#include <string>

#include "../fuzz/readers.hpp"
#include "base/error.hpp"
#include "base/text.hpp"
#include "io/atomic_file.hpp"
#include "io/csv.hpp"
#include "io/json_reader.hpp"
#include "io/roster.hpp"
#include "io/scenario_file.hpp"

using namespace gapsound;

namespace {

namespace fs = std::filesystem;

std::string repeated(std::string_view text, std::size_t times) {
  std::string all;
  for (std::size_t i = 0; i < times; ++i) all += text;
  return all;
}

std::string lookWith(const std::string& key, const std::string& value) {
  return R"({"gapsound": 1, "title": "t", "level": "pro", "offense": {"formation": "F01", "scheme": "R01"},)"
         R"("defense": {"front": "D01"}, ")" +
         key + "\": " + value + "}";
}

template <typename Read>
std::string refusalOf(const Read& read) {
  try {
    read();
  } catch (const InputError& error) {
    return error.what();
  }
  return "";
}

double secondsFor(const auto& work) {
  const auto start = std::chrono::steady_clock::now();
  work();
  return std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
}

}  // namespace

TEST_CASE("what once broke a reader is refused or read") {
  int files = 0;
  for (const auto& [name, reader] : fuzz::readers()) {
    for (const auto& entry : fs::directory_iterator(GAPSOUND_ROOT "/tests/fuzz/corpus/" + name)) {
      INFO(entry.path().string());
      CHECK_NOTHROW(reader(readWhole(entry.path().string())));
      ++files;
    }
  }
  CHECK(files >= 15);
}

TEST_CASE("huge and deep files are refused in bounded time") {
  const std::vector<std::pair<const char*, std::string>> files = {
      {"deep list", lookWith("tags", repeated("[", 2000000))},
      {"deep table", lookWith("players", repeated("{\"a\":", 1000000))},
      {"a million men", lookWith("players", "{" + repeated("\"SS\":{},", 1000000) + "\"S\":{}}")},
      {"many men",
       [] {
         std::string men = "{\"x\":{}";
         for (int i = 0; i < 500000; ++i) men += ",\"m" + std::to_string(i) + "\":{}";
         return lookWith("players", men + "}");
       }()},
      {"a long name", lookWith("level", '"' + std::string(8000000, 'x') + '"')},
      {"a long key", lookWith(std::string(8000000, 'k'), "1")},
      {"a long number", lookWith("x", repeated("9", 8000000))}};
  for (const auto& one : files) {
    const std::string what = one.first;
    const std::string& file = one.second;
    INFO(what);
    std::string refusal;
    CHECK(secondsFor([&] {
            refusal = refusalOf([&] {
              fuzz::readers().at("scenario")(file);
              static_cast<void>(parseScenario(file, "f"));
            });
          }) < 10.0);
    if (what != "a million men") CHECK_FALSE(refusal.empty());
    CHECK(refusal.size() < 2000);
    CHECK(refusal.find('\n') == std::string::npos);
  }
}

TEST_CASE("huge tables are refused in bounded time") {
  const std::vector<std::pair<const char*, std::string>> tables = {
      {"a million rows", "id,kg\n" + repeated("SS,90\n", 1000000)},
      {"a million columns", repeated("a,", 1000000) + "\n"},
      {"a long cell", "id,name\nSS," + std::string(8000000, 'x') + "\n"},
      {"a long blank cell", "id,name\nSS," + std::string(8000000, ' ') + "x\n"},
      {"a long quoted cell", "id,name\nSS,\"" + repeated("\"\"", 4000000) + "\n"}};
  for (const auto& one : tables) {
    const std::string what = one.first;
    const std::string& file = one.second;
    INFO(what);
    CHECK(secondsFor([&] { fuzz::readers().at("roster")(file); }) < 10.0);
  }
}

TEST_CASE("a file without end is not read to the end") {
  CHECK(refusalOf([] { static_cast<void>(readWhole("/dev/zero")); }).find("16 MiB") != std::string::npos);
  CHECK_NOTHROW(fuzz::readers().at("reps")(std::string(3000000, '{')));
}

TEST_CASE("a message is one line whatever the file holds") {
  const std::string refusal =
      refusalOf([] { static_cast<void>(parseScenario(lookWith("a\\nb\\u001b[31m", "1"), "f")); });
  CHECK(refusal.find("/a b [31m") != std::string::npos);
  CHECK(refusal.find('\n') == std::string::npos);
  CHECK(refusal.find('\x1b') == std::string::npos);
}

// RFC 3629, section 4; the sequences are Markus Kuhn's kinds: too long, cut short, lone continuation.
TEST_CASE("UTF-8 is told from what is none") {
  for (const char* good :
       {"", "plain", "M\xc3\xbcller", "\xe2\x80\x93", "\xf0\x9f\x8f\x88", "\xf4\x8f\xbf\xbf"})
    CHECK(isUtf8(good));
  for (const char* bad : {"\xc0\xaf", "\xe0\x80\xaf", "\xf0\x80\x80\xaf", "\xf4\x90\x80\x80", "\xff",
                          "M\xfcller", "\xe2\x80", "\x80"})
    CHECK_FALSE(isUtf8(bad));
  CHECK(fromLatin1("M\xfcller") == "M\xc3\xbcller");
  CHECK(oneLine("M\xfcll\ner", 20) == "M?ll er");
  CHECK(oneLine("M\xc3\xbcller", 2) == "M...");
}

TEST_CASE("a roster from an older spreadsheet keeps its umlauts") {
  const CsvTable table("r.csv", "id;name\nSS;M\xfcller\n");
  CHECK(table.text(0, "name") == "M\xc3\xbcller");
}
