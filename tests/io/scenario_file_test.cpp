#include "io/scenario_file.hpp"

#include <doctest/doctest.h>

#include <string>

#include "base/error.hpp"

using namespace gapsound;

namespace {

const std::string kSmall = R"({"gapsound": 1, "title": "small",
  "offense": {"formation": "F01", "scheme": "R01"}, "defense": {"front": "D01"}})";

const std::string kFull = R"({"gapsound": 1, "title": "full", "tags": ["sound", "week 3"], "level": "college",
  "clock": "electronic", "field": {"spot": "right_hash", "to_goal": 58.5, "down": 2, "distance": 7},
  "offense": {"formation": "F10", "scheme": "R02", "variant": "log", "direction": "left", "strength": "right"},
  "defense": {"front": "D03", "shell": "2-read",
    "call": {"structure": "box", "movement": "none", "bs_backer": "fold", "key": "single", "overlap": "over",
             "force": {"left": "safety", "right": "corner"},
             "mix": {"line_spread_yd": 0.2, "shoot_share": 0.25}},
    "fit_off": {"level2": "call"}},
  "players": {"FS": {"downhill_yps": 6.0, "read_delay_s": 0.55, "depth_yd": 10, "mass_kg": 80},
              "M": {"x": 0.5, "y": 4.2, "fit_off": "call", "key": "triangle", "job": {"left": "overlap_backer"}},
              "LG": {"job": "climb", "on": "M"}},
  "faults": [{"player": "WE", "kind": "kicked_out", "amount": 1.5}, {"player": "SS", "kind": "late_read"}]})";

}  // namespace

TEST_CASE("a short scenario takes the defaults") {
  const auto scenario = parseScenario(kSmall, "small.json");
  CHECK(scenario.source == "small.json");
  CHECK(scenario.level == Level::high_school);
  CHECK(scenario.field.spot == "middle");
  CHECK(scenario.field.to_goal == 75.0);
  CHECK(scenario.offense.direction == "right");
  CHECK(scenario.defense.shell == "quarters");
  CHECK(scenario.defense.structure == "spill");
  CHECK_FALSE(scenario.defense.mix.has_value());
  for (const auto fit : scenario.defense.fit_off) CHECK(fit == FitOff::man_in_front);
}

TEST_CASE("every part of a scenario is read") {
  const auto s = parseScenario(kFull, "full.json");
  CHECK(s.tags == std::vector<std::string>{"sound", "week 3"});
  CHECK(s.level == Level::college);
  CHECK(s.clock == "electronic");
  CHECK(s.field.down == 2);
  CHECK(s.field.to_goal == 58.5);
  CHECK(s.offense.variant == "log");
  CHECK(s.offense.direction == "left");
  CHECK(s.defense.structure == "box");
  CHECK(s.defense.overlap == "over");
  CHECK(s.defense.force_right == "corner");
  CHECK(s.players.at("M").job_left == "overlap_backer");
  CHECK_FALSE(s.players.at("M").job_right.has_value());
  CHECK(s.players.at("LG").on == "M");
  REQUIRE(s.defense.mix.has_value());
  CHECK(s.defense.mix->shoot_share == 0.25);
  CHECK(s.defense.mix->slant_share == 0.0);
  CHECK(s.defense.fit_off[0] == FitOff::man_in_front);
  CHECK(s.defense.fit_off[1] == FitOff::call);
  CHECK(s.players.at("FS").downhill_yps == 6.0);
  CHECK(s.players.at("M").fit_off == FitOff::call);
  REQUIRE(s.faults.size() == 2);
  CHECK(s.faults[0].fault.amount == 1.5);
  CHECK(s.faults[1].fault.amount == doctest::Approx(0.3));
}

TEST_CASE("what is written reads back the same") {
  for (const auto& text : {kSmall, kFull}) {
    const auto once = toJson(parseScenario(text, "a.json"));
    CHECK(toJson(parseScenario(once, "b.json")) == once);
  }
}

TEST_CASE("a scenario with no variety in its calls says none") {
  const auto s = parseScenario(kSmall, "small.json", {{"defense.call.mix=none"}, {}});
  REQUIRE(s.defense.mix.has_value());
  CHECK(s.defense.mix->line_spread_yd == 0.0);
}

TEST_CASE("changes are laid on before the checks") {
  const Changes changes{
      {"players.SS.downhill_yps=9", "defense.structure=box", "level=pro", "defense.shell=cover 3 sky"},
      {"WE=kicked_out:1.5", "S=scrape_wide"}};
  const auto s = parseScenario(kSmall, "small.json", changes);
  CHECK(s.players.at("SS").downhill_yps == 9.0);
  CHECK(s.defense.structure == "box");
  CHECK(s.defense.shell == "cover 3 sky");
  CHECK(s.level == Level::pro);
  REQUIRE(s.faults.size() == 2);
  CHECK(s.faults[0].player == "WE");
  CHECK(s.faults[0].fault.kind == FaultKind::kicked_out);
  CHECK(s.faults[0].fault.amount == 1.5);
  CHECK(s.faults[1].fault.amount == factsOf(FaultKind::scrape_wide).usual);
}

TEST_CASE("a later change wins, and reaches into lists") {
  const auto s = parseScenario(
      kFull, "full.json", {{"players.FS.depth_yd=9", "players.FS.depth_yd=11", "faults.0.amount=0.5"}, {}});
  CHECK(s.players.at("FS").depth_yd == 11.0);
  CHECK(s.faults[0].fault.amount == 0.5);
}

TEST_CASE("a changed value is checked like a written one") {
  const auto refusal = [](const std::string& set) {
    try {
      static_cast<void>(parseScenario(kSmall, "small.json", {{set}, {}}));
    } catch (const InputError& e) {
      return e.path() + " " + e.value();
    }
    return std::string("accepted");
  };
  CHECK(refusal("players.SS.downhill_yps=12") == "/players/SS/downhill_yps 12");
  CHECK(refusal("players.SS.downhill_yps=fast") == "/players/SS/downhill_yps \"fast\"");
  CHECK(refusal("defense.structure=spil") == "/defense/call/structure \"spil\"");
  CHECK(refusal("defense.front=12") == "/defense/front 12");
  CHECK(refusal("title.x=1") == "--set title.x=1");
  CHECK(refusal("players..x=1") == "--set players..x=1");
  CHECK(refusal("nothing") == "--set nothing");
}

TEST_CASE("every promised range is open") {
  for (const auto* set : {"players.SS.downhill_yps=1", "players.SS.downhill_yps=11",
                          "players.SS.read_delay_s=0", "players.SS.read_delay_s=3", "players.SS.depth_yd=1",
                          "players.SS.depth_yd=25", "players.SS.mass_kg=45", "players.SS.mass_kg=190"}) {
    INFO(set);
    CHECK_NOTHROW(static_cast<void>(parseScenario(kSmall, "small.json", {{set}, {}})));
  }
}
