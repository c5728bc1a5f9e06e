#include <doctest/doctest.h>

#include "base/error.hpp"
#include "io/assets.hpp"
#include "io/library.hpp"
#include "io/model_file.hpp"
#include "io/roster.hpp"
#include "io/scenario_file.hpp"
#include "scenario/resolve.hpp"

using namespace gapsound;
using doctest::Approx;

namespace {

const std::vector<std::string> kIds = {"SS", "M", "W"};

std::string refusalOf(const std::string& text) {
  try {
    static_cast<void>(parseRoster(text, "ours.csv"));
  } catch (const InputError& error) {
    return error.what();
  }
  return "";
}

Body bodyOfSafety(const std::string& roster) {
  Scenario look = readScenario(std::string(GAPSOUND_ROOT) + "/scenarios/power-right-spill.json");
  layRoster(parseRoster(roster, "ours.csv"), kIds, look);
  const Setup setup = resolve(look, readLibrary(assetPath("")), readModel(assetPath("model.json")));
  for (const Man& man : setup.men)
    if (man.id == "SS") return man.body;
  return {};
}

}  // namespace

TEST_CASE("a roster as a coach keeps it") {
  const Roster roster = parseRoster(
      "id,name,number,lb,ten,forty,read delay,notes\nSS,,21,187,1.7,4.8,0.6,\"new, quick\"\nM,,52,,,,,\n",
      "ours.csv");
  CHECK(roster.clock == "hand");
  REQUIRE(roster.men.size() == 2);
  CHECK(*roster.men.at("SS").mass_kg == Approx(84.82).epsilon(0.001));
  CHECK(roster.men.at("SS").read_delay_s == 0.6);
  CHECK_FALSE(roster.men.at("M").mass_kg);
}

TEST_CASE("a roster is laid over the men of the look and leaves the others alone") {
  Scenario look;
  look.players["SS"].depth_yd = 9.0;
  look.players["SS"].mass_kg = 80.0;
  layRoster(parseRoster("id,kg,clock\nSS,90,electronic\nFS,85,electronic\n", "ours.csv"), kIds, look);
  CHECK(look.players["SS"].depth_yd == 9.0);
  CHECK(look.players["SS"].mass_kg == 90.0);
  CHECK(look.players.count("FS") == 0);
  CHECK(look.clock == "electronic");
}

// Mann et al. 2015: over forty yards a hand shows 0.22 s less than an electronic clock.
TEST_CASE("the same man is timed 0.22 s later by an electronic clock") {
  const Body hand = bodyOfSafety("id,ten,forty,clock\nSS,1.60,4.60,hand\n");
  const Body electronic = bodyOfSafety("id,ten,forty,clock\nSS,1.82,4.82,electronic\n");
  CHECK(hand.top_speed == Approx(electronic.top_speed));
  CHECK(hand.tau == Approx(electronic.tau));
}

TEST_CASE("numbers stand beside the men, names only when asked for") {
  const Roster roster = parseRoster("id,name,number\nSS,Alder,21\nM,Birch,\n", "ours.csv");
  const Setup look = resolve(readScenario(std::string(GAPSOUND_ROOT) + "/scenarios/power-right-spill.json"),
                             readLibrary(assetPath("")), readModel(assetPath("model.json")));
  const auto numbers = tagsOf(roster, false, look), names = tagsOf(roster, true, look);
  CHECK(numbers == std::map<std::string, std::string>{{"SS", "21"}});
  CHECK(names == std::map<std::string, std::string>{{"SS", "21 Alder"}, {"M", "Birch"}});
}

TEST_CASE("a roster of 23 men, a missing time, a forty faster than the ten, a comma for a point") {
  std::string many = "id,number\nSS,1\n";
  for (int k = 2; k <= 23; ++k) many += "P" + std::to_string(k) + "," + std::to_string(k) + "\n";
  CHECK(refusalOf(many).empty());  // men for other looks may be on it
  CHECK(refusalOf(many + "SS,24\n").find("line 25, column id: SS; allowed: every man once") !=
        std::string::npos);
  // The other time follows from the one given.
  CHECK(bodyOfSafety("id,ten,forty\nSS,1.65,\n").top_speed >
        bodyOfSafety("id,ten,forty\nSS,1.85,\n").top_speed);
  CHECK(bodyOfSafety("id,ten,forty\nSS,,4.6\n").top_speed >
        bodyOfSafety("id,ten,forty\nSS,,5.2\n").top_speed);
  CHECK(refusalOf("id,ten,forty\nSS,1.75,1.60\n").find("line 2, column forty: 1.60") != std::string::npos);
  CHECK_THROWS_WITH_AS(static_cast<void>(bodyOfSafety("id,ten,forty\nSS,2.6,4.2\n")),
                       doctest::Contains("4.2"), InputError);
  CHECK(refusalOf("id,ten\nSS,\"1,75\"\n").find("line 2, column ten: 1,75") != std::string::npos);
  CHECK(refusalOf("id,ten\nSS,1,75\n").find("line 2") != std::string::npos);
  CHECK(refusalOf("id;ten\nSS;1,75\n").empty());
}

TEST_CASE("men whom no look has and times that are missing are told") {
  const Roster roster = parseRoster("id,ten,forty\nSS,1.75,\nM,1.8,5.0\nP1,,4.9\nP2,1.7,4.8\n", "ours.csv");
  CHECK(remarksOn(roster, {"SS", "M"}) ==
        std::vector<std::string>{"ours.csv: SS: no forty; it is reckoned from his ten",
                                 "ours.csv: not in this look, left out: P1, P2"});
  CHECK(remarksOn(roster, {"M", "SS", "P1", "P2"}).size() == 2);
}

TEST_CASE("what a roster may not say") {
  CHECK(refusalOf("name,kg\nA,90\n").find("no column id") != std::string::npos);
  CHECK(refusalOf("id,weight\nSS,90\n").find("column weight") != std::string::npos);
  CHECK(refusalOf("id,kg,lb\nSS,90,200\n").find("kg or lb, not both") != std::string::npos);
  CHECK(refusalOf("id,kg\nSS,900\n").find("line 2, column kg: 900; allowed: a number 45 to 190") !=
        std::string::npos);
  CHECK(refusalOf("id,kg\nSS,90\nSS,91\n").find("every man once") != std::string::npos);
  CHECK(refusalOf("id,clock\nSS,hand\nM,electronic\n").find("one clock for all") != std::string::npos);
  CHECK(refusalOf("id\n").find("at least one man") != std::string::npos);
  Scenario look;
  CHECK_THROWS_AS(layRoster(parseRoster("id\nXX\n", "ours.csv"), kIds, look), InputError);
  look.players["W"].forty_yd_s = 4.7;
  CHECK_THROWS_AS(layRoster(parseRoster("id,clock\nSS,electronic\n", "ours.csv"), kIds, look), InputError);
}
