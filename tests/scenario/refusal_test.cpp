#include "looks.hpp"

using namespace gapsound;
using namespace gapsound::looks;

namespace {

void checkRefused(const Scenario& s, const std::string& path, const std::string& value,
                  const std::string& allowed) {
  const InputError error = refusal(s);
  CHECK(error.file() == "look.json");
  CHECK(error.path() == path);
  CHECK(error.value().find(value) != std::string::npos);
  CHECK(error.allowed().find(allowed) != std::string::npos);
  CHECK(error.code() == ExitCode::badInput);
}

Scenario usual() { return scenario("F01", "R01", "D01"); }

}  // namespace

TEST_CASE("names are found by id or name, whatever the case") {
  CHECK(resolved("21 i STRONG", "Power", "4-3 Over", "Quarters").scheme == "power");
  CHECK(resolved("f01", "r01", "d01", "palms").shell == "2-read");
}

TEST_CASE("unknown names are refused with the nearest known ones") {
  checkRefused(scenario("21 I strung", "R01", "D01"), "/offense/formation", "21 I strung", "21 I strong");
  checkRefused(scenario("F01", "powr", "D01"), "/offense/scheme", "powr", "power");
  checkRefused(scenario("F01", "R01", "D99"), "/defense/front", "D99", "D09");
  checkRefused(scenario("F01", "R01", "D01", "cover 7"), "/defense/shell", "cover 7", "cover 1");
  Scenario s = usual();
  s.offense.variant = "logg";
  checkRefused(s, "/offense/variant", "logg", "log");
  s = usual();
  s.offense.direction = "up";
  checkRefused(s, "/offense/direction", "up", "\"left\", \"right\"");
  s = usual();
  s.defense.movement = "slant rite";
  checkRefused(s, "/defense/call/movement", "slant rite", "slant");
  s = usual();
  s.defense.structure = "wall";
  checkRefused(s, "/defense/call/structure", "wall", "spill");
}

TEST_CASE("men who are not in the look are refused where they are named") {
  Scenario s = usual();
  s.players["NK"].x = 5.0;
  checkRefused(s, "/players/NK", "unknown man", "NT");
  s = usual();
  s.faults.push_back({"SSX", {FaultKind::late_read, 0.3}});
  checkRefused(s, "/faults/0/player", "SSX", "SS");
}

TEST_CASE("two men on one spot, offside and out of bounds are refused") {
  Scenario s = usual();
  s.players["M"].x = 3.6;
  checkRefused(s, "/players/M", "on one spot with S", "0.5 yd");
  s.players["M"].x = 3.0;
  checkRefused(s, "/players/M", "in S", "yd abreast");
  s.players["M"].x = 2.8;
  CHECK_NOTHROW((void)resolved(s));
  s.players["M"].mass_kg = s.players["S"].mass_kg = 180.0;
  checkRefused(s, "/players/M", "in S", "yd abreast");
  s = usual();
  s.players["DT"].y = 0.2;
  checkRefused(s, "/players/DT", "offside", "0.31");
  s = usual();
  s.players["RG"].y = 0.4;
  checkRefused(s, "/players/RG", "beyond the ball", "up to 0");
  s = usual();
  s.players["CR"].x = 28.0;
  checkRefused(s, "/players/CR", "out of bounds", "26.67");
  s = usual();
  s.players["RG"].y = -3.0;
  checkRefused(s, "/players/RG", "off the line", "on the line");
}

TEST_CASE("a message speaks of the side the file speaks of, also when the run goes left") {
  Scenario s = usual();
  s.offense.direction = "left";
  s.players["LG"].y = 0.4;
  checkRefused(s, "/players/LG", "(-1.35, 0.40)", "up to 0");
}

TEST_CASE("figures out of range are refused") {
  Scenario s = usual();
  s.players["SS"].downhill_yps = -2.0;
  checkRefused(s, "/players/SS/downhill_yps", "-2", "1 to 11");
  s = usual();
  s.players["SS"].mass_kg = 900.0;
  checkRefused(s, "/players/SS/mass_kg", "900", "45 to 190");
  s = usual();
  s.players["SS"].depth_yd = 9.0;
  s.players["SS"].y = 9.0;
  checkRefused(s, "/players/SS/depth_yd", "9", "not both");
  s = usual();
  s.players["SS"].ten_yd_s = 1.4;
  s.players["SS"].forty_yd_s = 6.0;
  checkRefused(s, "/players/SS", "ten_yd_s 1.40 with forty_yd_s 6.00", "one sprint");
  s = usual();
  s.players["LT"].read_delay_s = 0.5;
  checkRefused(s, "/players/LT/read_delay_s", "0.5", "a defender");
}

TEST_CASE("a fault must fit the man and its amount its kind") {
  Scenario s = usual();
  s.faults.push_back({"SS", {FaultKind::kicked_out, 1.0}});
  checkRefused(s, "/faults/0/kind", "kicked_out for SS", "end man");
  s.faults = {{"SE", {FaultKind::kicked_out, 1.0}}, {"LG", {FaultKind::scrape_wide, 2.0}}};
  checkRefused(s, "/faults/1/kind", "scrape_wide for LG", "second level");
  s.faults = {{"SE", {FaultKind::kicked_out, 30.0}}};
  checkRefused(s, "/faults/0/amount", "30", "at most 3 yd");
  s.faults = {{"SE", {FaultKind::kicked_out, 1.0}},
              {"S", {FaultKind::scrape_wide, 2.0}},
              {"LG", {FaultKind::late_pull, 0.3}}};
  const Setup setup = resolved(s);
  CHECK(man(setup, "SE").faults.size() == 1);
  CHECK(man(setup, "LG").faults[0].kind == FaultKind::late_pull);
}
