#include "looks.hpp"

using namespace gapsound;
using namespace gapsound::looks;

// Answers to a nub, trips and an unbalanced line: common practice, no source.

namespace {

Setup checked(const char* formation, const char* front, const char* shell, const char* check) {
  Scenario s = scenario(formation, "R01", front, shell);
  s.defense.checks = {check};
  return resolved(s);
}

}  // namespace

TEST_CASE(
    "roll to nub: the safety comes down as force, the other takes the middle, the corner stays outside") {
  const Setup setup = checked("F11", "D03", "quarters", "roll to nub");
  CHECK(man(setup, "SS").spot.y == doctest::Approx(5.0));
  CHECK(man(setup, "SS").spot.x > man(setup, "Y").spot.x + 1.0);
  CHECK(man(setup, "SS").fit.if_right == FitRole::force);
  CHECK(man(setup, "FS").spot.x == doctest::Approx(0.0));
  CHECK(man(setup, "CR").spot.x > man(setup, "SS").spot.x + 1.0);
}

TEST_CASE("a shell whose safety stays with twins leaves him out of the fit, a check brings a man back") {
  Library stays = library();
  for (Shell& shell : stays.shells) shell.owns_twins = shell.id == "2-read";
  const auto at = [&](const char* formation, const std::vector<std::string>& checks) {
    Scenario s = scenario(formation, "R01", "D03", "2-read");
    s.defense.checks = checks;
    return resolve(s, stays, model());
  };
  CHECK(man(at("F11", {}), "FS").fit.if_right == FitRole::out);
  CHECK(man(at("F01", {}), "FS").fit.if_right == FitRole::cutback);
  CHECK(man(at("F11", {"roll to nub"}), "FS").fit.if_right != FitRole::out);
  const Setup over = at("F11", {"corners over"});
  CHECK(man(over, "CR").spot.x < -8.0);
  CHECK(man(over, "SS").fit.if_right == FitRole::force);
  CHECK(man(over, "FS").fit.if_right != FitRole::out);
}

TEST_CASE("bumped backers stand 0.7 yd nearer the nub") {
  const Setup as_is = resolved("F10", "R01", "D03"),
              bumped = checked("F10", "D03", "quarters", "bump backers");
  for (const char* id : {"M", "W"})
    CHECK(man(bumped, id).spot.x == doctest::Approx(man(as_is, id).spot.x + 0.7));
  CHECK(man(bumped, "NK").spot.x == doctest::Approx(man(as_is, "NK").spot.x));
}

TEST_CASE("a front pushed to the nub is set to it, its end outside the tight end") {
  const Setup setup = checked("F15", "D03", "quarters", "push front");
  CHECK(man(setup, "SE").spot.x > man(setup, "Y").spot.x);
  CHECK(man(setup, "SE").fit.gap == "D+");
  CHECK(man(setup, "SS").fit.gap == "C+/force+");
}

TEST_CASE("a fired edge is told so, nobody else is") {
  const Setup setup = checked("F10", "D03", "quarters", "fire edge");
  int fired = 0;
  for (const Man& each : setup.men) fired += each.fit.fires;
  CHECK(fired == 1);
  CHECK(man(setup, "SE").fit.fires);
}

TEST_CASE("an unbalanced line is counted from its own middle man, unless the check says from the center") {
  const Setup bumped = resolved("F17", "R01", "D01"),
              counted = checked("F17", "D01", "quarters", "count from center");
  CHECK(man(bumped, "NT").spot.x > man(bumped, "C").spot.x + 0.5);
  CHECK(man(counted, "NT").spot.x == doctest::Approx(man(bumped, "NT").spot.x - man(bumped, "RG").spot.x));
}

TEST_CASE("a check without its formation is refused with what it needs") {
  Scenario s = scenario("F01", "R01", "D01");
  s.defense.checks = {"roll to nub"};
  CHECK(refusal(s).path() == "/defense/call/checks");
  CHECK(refusal(s).allowed().find("nub") != std::string::npos);
  s.defense.checks = {"roll to nob"};
  CHECK(refusal(s).path() == "/defense/call/checks/0");
  CHECK(refusal(s).allowed().find("roll to nub") != std::string::npos);
}

TEST_CASE("backers come up in short yardage and stand deeper against a gun without a tight end") {
  Scenario s = scenario("F01", "R01", "D01");
  s.field.down = 3;
  s.field.distance = 1;
  CHECK(man(resolved(s), "M").spot.y == doctest::Approx(3.25));
  CHECK(man(resolved("F13", "R04", "D01"), "M").spot.y == doctest::Approx(5.0));
  CHECK(man(resolved("F13", "R04", "D04"), "M").spot.y == doctest::Approx(4.7));  // drawn against it
}

TEST_CASE("spill on one side and box on the other") {
  Scenario s = scenario("F01", "R01", "D01");
  s.defense.structure_left = "box";
  s.defense.structure_right = "spill";
  CHECK(man(resolved(s), "SE").fit.structure_right == Structure::spill);
  CHECK(man(resolved(s), "SE").fit.structure_left == Structure::box);
  s.offense.direction = "left";
  CHECK(man(resolved(s), "SE").fit.structure_right == Structure::spill);
  CHECK(man(resolved(s), "SE").fit.structure_left == Structure::box);
  CHECK(resolved(s).structure == "box");
}

TEST_CASE("tight and wide splits move line, techniques and aiming point together") {
  Scenario s = scenario("F01", "R01", "D01");
  const Setup standard = resolved(s);
  s.offense.splits = "tight";
  const Setup tight = resolved(s);
  CHECK(man(tight, "RG").spot.x == doctest::Approx(1.0));
  CHECK(man(tight, "Y").spot.x == doctest::Approx(3.0));
  CHECK(man(tight, "SE").spot.x == doctest::Approx(3.4));
  CHECK(tight.run.aim_x < standard.run.aim_x);
  s.offense.splits = "wide";
  CHECK(man(resolved(s), "RT").spot.x == doctest::Approx(3.35));
}
