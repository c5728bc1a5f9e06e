#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <nlohmann/json.hpp>
#include <random>
#include <string>
#include <vector>

#include "program.hpp"

using namespace gapsound::testing;

namespace {

namespace fs = std::filesystem;
using Json = nlohmann::json;
using Words = std::vector<std::string>;

const std::string kLook = shipped("power-right-spill");

std::string contentOf(const std::string& file) {
  std::ifstream in(file, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
}

Words newLook(const std::string& file, const std::string& title) {
  return {"new", "--formation", "F10", "--scheme", "R02", "--front", "D03", "--title", title, "-o", file};
}

std::string lineOf(const Words& words) {
  std::string line = quoted(GAPSOUND_PROGRAM);
  for (const std::string& word : words) line += " " + quoted(word);
  return line;
}

/// Something that writes `file` in one of two ways.
struct Saver {
  std::string name;
  Words first, second;
};

/// What each way leaves when nobody disturbs it.
std::vector<std::string> wholeFiles(const Saver& saver, const std::string& file) {
  std::vector<std::string> whole;
  for (const Words& words : {saver.first, saver.second}) {
    REQUIRE(run(words).code == 0);
    whole.push_back(contentOf(file));
  }
  REQUIRE(whole[0] != whole[1]);
  return whole;
}

/// Kills it at so many random moments; gives how often the file was the first and how often the second.
std::vector<int> killed(int times, const Saver& saver, const std::string& file, double longest) {
  const auto whole = wholeFiles(saver, file);
  std::mt19937 moments(7);
  std::vector<int> left(2);
  for (int k = 0; k < times; ++k) {
    static_cast<void>(runFor(0.002 + longest * static_cast<double>(moments()) / 4294967296.0, "KILL",
                             k % 2 == 0 ? saver.first : saver.second));
    const std::string now = contentOf(file);
    INFO(saver.name << ", kill " << k << ", " << now.size() << " bytes");
    const auto found = std::find(whole.begin(), whole.end(), now);
    REQUIRE(found != whole.end());
    ++left[static_cast<std::size_t>(found - whole.begin())];
  }
  return left;
}

}  // namespace

TEST_CASE("long: whoever is killed while he saves leaves the old file or the new one") {
  const ScratchFolder folder;
  const std::string look = folder.path("look.json"), tape = folder.path("rep.tape"),
                    table = folder.path("reps.csv");
  const auto record = [&](const char* seed) { return Words{"rep", kLook, "--seed", seed, "--tape", tape}; };
  const auto study = [&](const char* seed) {
    return Words{"reps", kLook, "-n", "40", "--seed", seed, "--csv", table};
  };
  for (const int n : killed(70, {"saving", newLook(look, "one"), newLook(look, "other")}, look, 0.1))
    CHECK(n > 0);
  for (const int n : killed(70, {"recording", record("1"), record("2")}, tape, 0.12)) CHECK(n > 0);
  for (const int n : killed(60, {"studying", study("1"), study("501")}, table, 1.0)) CHECK(n > 0);
}

TEST_CASE("a disk that is full or a folder that takes nothing leaves no trace and says so") {
  const ScratchFolder folder;
  const std::string tape = folder.path("rep.tape");
  // A file may grow to 1 KiB here: the write fails half-way, as on a full disk.
  const auto full = shell("trap '' XFSZ; ulimit -f 1; " + lineOf({"rep", kLook, "--tape", tape}));
  CHECK(full.code == 4);
  CHECK(full.err.find(tape + ": cannot be written") != std::string::npos);
  CHECK(folder.names().empty());
  // The table would fit, the picture does not: neither is there.
  const auto both =
      shell("trap '' XFSZ; ulimit -f 8; " + lineOf({"reps", kLook, "-n", "20", "--csv", folder.path("a.csv"),
                                                    "--png", folder.path("b.png")}));
  INFO(both.err);
  CHECK(both.code == 4);
  CHECK(both.err.find(folder.path("b.png") + ": cannot be written") != std::string::npos);
  CHECK(folder.names().empty());
  const auto study = shell("trap '' XFSZ; ulimit -f 4; " +
                           lineOf({"reps", kLook, "-n", "120", "--checkpoint", folder.path("log")}));
  CHECK(study.code == 0);
  CHECK(study.err.find("going on, but this run cannot be resumed") != std::string::npos);
  CHECK(folder.names().empty());
  const auto closed = run(newLook("/proc/look.json", "closed"));
  CHECK(closed.code == 4);
  CHECK(closed.err.find("/proc/look.json: cannot be written") != std::string::npos);
}

TEST_CASE("of two programs on one file one wins whole, of two on one study the second is told") {
  const ScratchFolder folder;
  const std::string look = folder.path("look.json");
  const Saver saver{"two", newLook(look, "one"), newLook(look, "other")};
  const auto whole = wholeFiles(saver, look);
  for (int k = 0; k < 6; ++k) {
    REQUIRE(shell(lineOf(saver.first) + " & " + lineOf(saver.second) + "; wait").code == 0);
    CHECK(std::count(whole.begin(), whole.end(), contentOf(look)) == 1);
  }
  CHECK(folder.names() == Words{"look.json"});
  const std::string log = folder.path("log");
  const auto study = [&](const char* reps) { return Words{"reps", kLook, "-n", reps, "--checkpoint", log}; };
  const auto second = shell("timeout -s KILL 60 " + lineOf(study("100000")) +
                            " >/dev/null 2>&1 & first=$!; for k in $(seq 600); do [ -e " + quoted(log) +
                            " ] && break; sleep 0.05; done; sleep 0.2; timeout -s KILL 60 " +
                            lineOf(study("30")) + "; code=$?; kill $first; exit $code");
  INFO(second.err);
  CHECK(second.code == 0);
  CHECK(second.out.find("30 reps") != std::string::npos);
  CHECK(second.err.find(log + ": cannot be written: the same study is being played into it") !=
        std::string::npos);
}

TEST_CASE("a comma for the decimals, no home, umlauts in a path and no font settings change nothing") {
  const ScratchFolder folder;
  const std::string inside = folder.path("Über uns, größer"), look = inside + "/ein Lauf.json";
  fs::create_directory(inside);
  REQUIRE(run(newLook(look, "Über außen")).code == 0);
  // Where the system can make one, the locale is there to be used.
  static_cast<void>(shell("localedef -i de_DE -f UTF-8 " + quoted(folder.path("de_DE.UTF-8"))));
  const std::string hostile =
      "env -i PATH=\"$PATH\" LOCPATH=" + quoted(folder.path("")) +
      " LANG=de_DE.UTF-8 LC_ALL=de_DE.UTF-8 TZ=Nowhere/None ASAN_OPTIONS=\"$ASAN_OPTIONS\" ";
  const Words rep = {"rep", look, "--json", "--seed", "3"};
  const auto plain = run(rep);
  REQUIRE(plain.code == 0);
  CHECK(shell(hostile + lineOf(rep)).out == plain.out);
  CHECK(Json::parse(plain.out)["yards"].is_number());
  const std::string strip = inside + "/Streifen.svg";
  REQUIRE(run({"strip", look, "-o", strip}).code == 0);
  const std::string drawn = contentOf(strip);
  REQUIRE(shell(hostile + lineOf({"strip", look, "-o", strip})).code == 0);
  CHECK(contentOf(strip) == drawn);
  const auto bare = shell("FONTCONFIG_FILE=/dev/null " + lineOf({"strip", look, "-o", inside + "/bare.png"}));
  CHECK((bare.code == 0 || bare.code == 4));
  CHECK(fs::exists(inside + "/bare.png") == (bare.code == 0));
}

TEST_CASE("a look or a plan from a stranger reads nothing outside its own folder") {
  const ScratchFolder folder;
  fs::create_directory(folder.path("inside"));
  std::ofstream(folder.path("secret.json")) << R"({"gapsound": 1, "front": "D03", "shell": "quarters"})";
  Json look = Json::parse(contentOf(kLook));
  for (const std::string& named : {std::string("../secret.json"), std::string("../../../../../../etc/passwd"),
                                   std::string("sub/../../secret.json"), folder.path("secret.json")}) {
    INFO(named);
    look["defense"] = {{"file", named}};
    const auto outcome = run({"rep", folder.file("inside/look.json", look.dump())});
    CHECK(outcome.code == 3);
    CHECK(outcome.err.find("/defense/file") != std::string::npos);
    CHECK(outcome.err.find("; allowed: a file in the folder of this one or below") != std::string::npos);
    CHECK(lines(outcome.err) == 1);
  }
}
