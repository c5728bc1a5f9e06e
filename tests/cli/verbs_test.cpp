#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "program.hpp"

using namespace gapsound::testing;

namespace {

using Json = nlohmann::json;

/// Runs a verb with --json; checks that it went well and gives its one document.
Json answerOf(std::vector<std::string> arguments) {
  arguments.emplace_back("--json");
  const auto outcome = run(arguments);
  INFO(outcome.err);
  REQUIRE(outcome.code == 0);
  return Json::parse(outcome.out);  // throws on anything but one document
}

void checkKeys(const Json& answer, const std::vector<std::string>& keys) {
  for (const auto& key : keys) {
    INFO(key);
    CHECK(answer.contains(key));
  }
}

const std::string kPower = shipped("power-right-spill");
const std::string kCounter = shipped("counter-right-guard-and-h");

}  // namespace

TEST_CASE("list names everything the library has") {
  for (const auto* kind :
       {"formations", "fronts", "shells", "schemes", "variants", "movements", "faults", "attributes"}) {
    INFO(kind);
    CHECK(answerOf({"list", kind})["names"].size() >= 4);
  }
  const auto has = [](const char* kind, const char* name) {
    const auto names = answerOf({"list", kind})["names"].get<std::vector<std::string>>();
    return std::find(names.begin(), names.end(), name) != names.end();
  };
  CHECK(has("formations", "F10"));
  CHECK(has("fronts", "D06"));
  CHECK(has("shells", "cover 3 sky"));
  CHECK(has("schemes", "R02"));
  CHECK(has("variants", "log"));
  CHECK(has("faults", "scrape_wide"));
  CHECK(has("attributes", "downhill_yps"));
}

TEST_CASE("new names a defense that is kept in a file, from the new file's folder") {
  const ScratchFolder folder;
  const auto defense = folder.file("ours.json", R"({"gapsound": 1, "front": "D05", "shell": "cover 2"})");
  const auto look = folder.path("look.json");
  answerOf(
      {"new", "--formation", "F01", "--scheme", "R01", "--splits", "wide", "--defense", defense, "-o", look});
  const auto written = shell("cat " + look).out;
  CHECK(Json::parse(written)["defense"] == Json{{"file", "ours.json"}});
  CHECK(Json::parse(written)["offense"]["splits"] == "wide");
  CHECK(run({"new", "--formation", "F01", "--scheme", "R01", "-o", look}).code == 2);
  CHECK(run({"new", "--formation", "F01", "--scheme", "R01", "--front", "D01", "--defense", defense, "-o",
             look})
            .code == 2);
}

TEST_CASE("every shipped look passes its check") {
  int count = 0;
  for (const auto& entry : std::filesystem::directory_iterator(std::string(GAPSOUND_ROOT) + "/scenarios")) {
    if (entry.path().extension() != ".json" || entry.path().filename().string().rfind("plan-", 0) == 0)
      continue;
    INFO(entry.path().string());
    const auto answer = answerOf({"check", entry.path().string()});
    CHECK(answer["valid"] == true);
    CHECK(answer["problems"].empty());
    CHECK(answer["gaps"].size() >= 6);
    for (const auto& gap : answer["gaps"]) checkKeys(gap, {"gap", "owner"});
    ++count;
  }
  CHECK(count >= 10);
}

TEST_CASE("rep tells one snap, the same every time") {
  const auto first = answerOf({"rep", kPower, "--seed", "7"});
  checkKeys(first, {"seed", "yards", "ended", "t_handoff", "t_line", "t_first_contact", "t_end", "lane",
                    "tacklers", "missed_tackles", "fits", "why", "hash"});
  CHECK(first["seed"] == 7);
  CHECK(first["fits"].size() >= 7);
  for (const auto& fit : first["fits"]) {
    checkKeys(fit, {"player", "level", "called", "saw", "did", "gap", "t", "result"});
  }
  CHECK(answerOf({"rep", kPower, "--seed", "7"}) == first);
  CHECK(answerOf({"rep", kPower, "--seed", "8"})["hash"] != first["hash"]);
}

TEST_CASE("rep in words") {
  const auto outcome = run({"rep", kPower});
  CHECK(outcome.code == 0);
  CHECK(outcome.err.empty());
  CHECK(outcome.out.find("seed 1: ") != std::string::npos);
  CHECK(lines(outcome.out) > 15);
}

TEST_CASE("rep keeps its tape") {
  const ScratchFolder folder;
  const auto tape = folder.path("rep.cbor");
  CHECK(run({"rep", kPower, "--tape", tape}).code == 0);
  CHECK(std::filesystem::file_size(tape) > 10000);
}

TEST_CASE("reps gives the distribution") {
  const auto answer = answerOf({"reps", kPower, "-n", "40"});
  checkKeys(answer,
            {"n",           "mean",           "sd",      "median",       "p10",           "p90",
             "mean_ci",     "lost",           "stuffed", "four_plus",    "ten_plus",      "twelve_plus",
             "twenty_plus", "success",        "cross_x", "cutback_open", "cutback_taken", "lanes",
             "timing",      "reps_per_second"});
  checkKeys(answer["timing"],
            {"t_handoff", "t_line", "t_first_contact", "t_end", "line_speed", "never_crossed"});
  checkKeys(answer["cross_x"], {"mean", "median"});
  CHECK(answer["n"] == 40);
  CHECK(answer["mean_ci"][0] <= answer["mean"]);
  CHECK(answer["mean"] <= answer["mean_ci"][1]);
}

TEST_CASE("the number of threads changes nothing") {
  auto one = answerOf({"reps", kCounter, "-n", "24", "--jobs", "1"});
  auto four = answerOf({"reps", kCounter, "-n", "24", "--jobs", "4"});
  one.erase("reps_per_second");
  four.erase("reps_per_second");
  CHECK(one == four);
}

TEST_CASE("vary sweeps one setting with its upper end") {
  const ScratchFolder folder;
  const auto answer = answerOf({"vary", kCounter, "--over", "players.SS.downhill_yps=3:9:3", "-n", "20",
                                "--csv", folder.path("a.csv"), "--png", folder.path("a.png")});
  checkKeys(answer, {"over", "cells", "break_point", "best", "sentence"});
  REQUIRE(answer["cells"].size() == 3);
  CHECK(answer["cells"][2]["at"] == Json::array({9.0}));
  for (const auto& cell : answer["cells"]) {
    checkKeys(cell, {"at", "n", "mean", "mean_ci", "cutback_open", "cutback_taken", "stuffed", "ten_plus"});
  }
  checkKeys(answer["best"], {"at", "mean"});
  CHECK(answer["sentence"].get<std::string>().find("pass") != std::string::npos);
  CHECK(folder.names() == std::vector<std::string>{"a.csv", "a.png"});
}

TEST_CASE("versus on identical sides sees no difference") {
  const auto answer = answerOf({"versus", kPower, kPower, "-n", "20"});
  checkKeys(answer, {"n", "a", "b", "mean_difference", "difference_ci", "p_value"});
  CHECK(answer["mean_difference"] == 0.0);
  CHECK(answer["difference_ci"] == Json::array({0.0, 0.0}));
  CHECK(answer["p_value"] == 1.0);
  CHECK(answer["a"] == answer["b"]);
}

TEST_CASE("versus changes one side, both sides") {
  const auto answer = answerOf({"versus", kPower, "--a", "players.SS.depth_yd=8", "--b",
                                "players.SS.depth_yd=12", "--set", "players.FS.depth_yd=9", "-n", "20"});
  CHECK(answer["a"]["mean"] != answer["b"]["mean"]);
}

TEST_CASE("new writes a look that can be played") {
  const ScratchFolder folder;
  const auto file = folder.path("look.json");
  const auto answer = answerOf({"new", "--formation", "F10",         "--scheme",    "R02",   "--variant",
                                "log", "--direction", "left",        "--strength",  "right", "--front",
                                "D03", "--shell",     "cover 3 sky", "--structure", "spill", "--level",
                                "pro", "--spot",      "right_hash",  "-o",          file});
  CHECK(answer["written"] == file);
  CHECK(answerOf({"check", file})["valid"] == true);
  CHECK(answerOf({"rep", file})["hash"].is_string());
}

TEST_CASE("a strip is written whole") {
  const ScratchFolder folder;
  CHECK(answerOf({"strip", kPower, "-o", folder.path("a.png")})["written"] == folder.path("a.png"));
  CHECK(folder.names() == std::vector<std::string>{"a.png"});
}

TEST_CASE("long: clips are written whole, alone and side by side") {
  const ScratchFolder folder;
  answerOf({"clip", kPower, "-o", folder.path("a.mp4")});
  answerOf({"clip", kCounter, "--b", "players.SS.downhill_yps=9", "-o", folder.path("b.gif")});
  CHECK(folder.names() == std::vector<std::string>{"a.mp4", "b.gif"});
  for (const auto& name : folder.names()) CHECK(std::filesystem::file_size(folder.path(name)) < 5u << 20);
}

TEST_CASE("a verb nobody knows is answered with the nearest ones") {
  const auto refused = run({"clpi", kCounter});
  CHECK(refused.code == 2);
  CHECK(refused.err.find("\"clpi\"") != std::string::npos);
  CHECK(refused.err.find("\"clip\"") != std::string::npos);
  CHECK(std::count(refused.err.begin(), refused.err.end(), '\n') == 1);
}

TEST_CASE("a picked clip shows one rep of a hundred, and both sides of a pair on the same luck") {
  const ScratchFolder folder;
  const auto refused =
      run({"clip", kCounter, "--pick", "worst", "--b-seed", "4", "-o", folder.path("a.gif")});
  CHECK(refused.code == 3);
  CHECK(refused.err.find("--b-seed") != std::string::npos);
  CHECK(folder.names().empty());
  CHECK(run({"clip", kCounter, "--pick", "longest", "-o", folder.path("a.gif")}).code == 2);
}
