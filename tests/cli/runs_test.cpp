// Runs on the command line: who blocks whom, motion, reads.
#include <doctest/doctest.h>

#include <filesystem>
#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "program.hpp"

using namespace gapsound::testing;

namespace {

using Json = nlohmann::json;
namespace fs = std::filesystem;

Json answerOf(std::vector<std::string> arguments) {
  arguments.emplace_back("--json");
  const auto outcome = run(arguments);
  INFO(outcome.err);
  REQUIRE(outcome.code == 0);
  return Json::parse(outcome.out);
}

std::string made(const std::string& name, std::vector<std::string> arguments) {
  const std::string file = (fs::temp_directory_path() / ("gapsound-" + name + ".json")).string();
  arguments.insert(arguments.begin(), "new");
  arguments.insert(arguments.end(), {"--level", "pro", "-o", file});
  const auto outcome = run(arguments);
  INFO(outcome.err);
  REQUIRE(outcome.code == 0);
  return file;
}

Json jobOf(const Json& answer, const std::string& player) {
  for (const Json& job : answer["assignments"]) {
    if (job["player"] == player) return job;
  }
  FAIL("no job for " << player);
  return {};
}

}  // namespace

TEST_CASE("check --assignments says who blocks whom, with whom, and where the climb goes") {
  const Json plain = answerOf({"check", shipped("power-right-spill")});
  CHECK_FALSE(plain.contains("assignments"));
  const Json answer = answerOf({"check", shipped("power-right-spill"), "--assignments"});
  CHECK(answer["assignments"].size() == 11);
  CHECK(jobOf(answer, "F")["block"] == "kick");
  CHECK(jobOf(answer, "F")["target"] == "SE");
  CHECK(jobOf(answer, "RT")["with"] == "RG");
  CHECK(jobOf(answer, "LG")["pull"] == "skip");
  CHECK(jobOf(answer, "T")["block"] == "runs");
  const auto words = run({"check", shipped("power-right-spill"), "--assignments"});
  CHECK(words.out.find("LG      wrap S (skip pull)") != std::string::npos);
}

TEST_CASE("check says who stands in for a man the formation does not have") {
  const std::string file = made("no-h", {"--formation", "F13", "--scheme", "R02", "--front", "D04"});
  const Json answer = answerOf({"check", file});
  REQUIRE(answer["notes"].size() == 1);
  CHECK(answer["notes"][0] == "no H: LT is the wrapper");
  fs::remove(file);
}

TEST_CASE("every run and its variants can be written and checked by name") {
  const std::string file = made("nub", {"--formation", "F10", "--scheme", "power", "--variant", "one-back",
                                        "--front", "D03", "--shell", "2-read"});
  CHECK(answerOf({"check", file})["valid"] == true);
  fs::remove(file);
  const auto wrong = run({"new", "--formation", "F10", "--scheme", "R01", "--variant", "tight inset",
                          "--front", "D03", "-o", file});
  CHECK(wrong.code == 3);
  CHECK(wrong.err.find("tight insert") != std::string::npos);
  CHECK_FALSE(fs::exists(file));
}

TEST_CASE("motion by name: written, listed, refused where it cannot be") {
  const std::string file =
      made("fly", {"--formation", "F06", "--scheme", "R04", "--front", "D03", "--motion", "A=fly"});
  CHECK(answerOf({"check", file, "--assignments"})["valid"] == true);
  fs::remove(file);
  CHECK(answerOf({"list", "motions"})["names"].size() >= 4);
  const std::vector<std::string> look = {"new",     "--formation", "F06", "--scheme", "R04",
                                         "--front", "D03",         "-o",  file};
  const auto with = [&](const char* motion) {
    auto arguments = look;
    arguments.insert(arguments.end(), {"--motion", motion});
    return run(arguments);
  };
  CHECK(with("A").code == 2);
  CHECK(with("A=flie").code == 3);
  CHECK(with("A=flie").err.find("fly") != std::string::npos);
  CHECK(with("X=fly").code == 3);
  CHECK_FALSE(fs::exists(file));
}

TEST_CASE("a read play tells who ran with the ball, how often he kept, and why") {
  const std::string file = shipped("zone-read-arc");
  bool kept = false, gave = false;
  for (int seed = 1; seed <= 30 && !(kept && gave); ++seed) {
    const Json rep = answerOf({"rep", file, "--seed", std::to_string(seed)});
    const bool keeps = rep["runner"] == "Q";
    const std::string why = rep["why"].dump();
    CHECK(keeps == rep["t_handoff"].is_null());
    CHECK((why.find(" and kept.") != std::string::npos) == keeps);
    if (keeps) CHECK(why.find("Q ") != std::string::npos);
    (keeps ? kept : gave) = true;
  }
  CHECK(kept);
  CHECK(gave);
  const double share = answerOf({"reps", file, "-n", "60"})["kept"];
  CHECK(share > 0.02);
  CHECK(share < 0.98);
}
