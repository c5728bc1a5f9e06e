#include "looks.hpp"

using namespace gapsound;
using namespace gapsound::looks;

namespace {

void checkSpot(const Setup& setup, const char* id, double x, double y) {
  CAPTURE(id);
  CHECK(man(setup, id).spot.x == doctest::Approx(x).epsilon(1e-9));
  CHECK(man(setup, id).spot.y == doctest::Approx(y).epsilon(1e-9));
}

}  // namespace

TEST_CASE("a front stands as drawn on the formation it is drawn against, at school") {
  const Setup setup = resolved("F01", "R01", "D01");
  checkSpot(setup, "LT", -2.75, -1.1);
  checkSpot(setup, "Y", 4.4, -1.0);
  checkSpot(setup, "SE", 4.8, 0.8);
  checkSpot(setup, "DT", 1.75, 0.8);
  checkSpot(setup, "NT", -0.4, 0.8);
  checkSpot(setup, "WE", -3.15, 0.8);
  checkSpot(setup, "S", 3.6, 4.5);
  checkSpot(setup, "W", -2.05, 4.5);
  checkSpot(setup, "SS", 6.0, 9.0);
  checkSpot(setup, "FS", -6.0, 10.0);
  checkSpot(setup, "CR", 15.0, 7.0);
  checkSpot(setup, "CL", -16.0, 7.0);
}

TEST_CASE("4-2-5 over stands as drawn against doublets, the nickel on the slot") {
  const Setup setup = resolved("F06", "R04", "D03");
  checkSpot(setup, "SE", 4.0, 0.8);
  checkSpot(setup, "M", 0.7, 4.7);
  CHECK(man(setup, "NK").spot.x == doctest::Approx(-7.0).epsilon(0.02));
  CHECK(man(setup, "SS").spot.x == doctest::Approx(6.0));
}

// Common practice, no source: five on the line and a nickel, and each edge belongs to one of the two.
TEST_CASE("tite is set to the receivers, its outside backer to the tight end") {
  const Setup setup = resolved("F06", "R04", "D07");
  CHECK(man(setup, "NK").spot.x < -4.0);
  CHECK(man(setup, "OLB").spot.x > 3.0);
  CHECK(man(setup, "OLB").fit.gap == "C+");
  Scenario called = scenario("F06", "R04", "D07");
  called.defense.strength = "right";
  CHECK(man(resolved(called), "OLB").spot.x < -3.0);
}

TEST_CASE("at pro level the splits widen, techniques follow the blockers and shells stand deeper") {
  Scenario s = scenario("F01", "R01", "D01");
  s.level = Level::pro;
  const Setup setup = resolved(s);
  checkSpot(setup, "RG", 1.57, -1.2);
  checkSpot(setup, "RT", 3.18, -1.3);
  checkSpot(setup, "Y", 4.85, -1.2);
  checkSpot(setup, "SE", 5.25, 0.6);
  CHECK(man(setup, "DT").spot.x > 1.57);
  CHECK(man(setup, "DT").spot.x < 0.5 * (1.57 + 3.18));
  CHECK(man(setup, "SS").spot.y == doctest::Approx(11.0));
  CHECK(man(setup, "FS").spot.y == doctest::Approx(12.0));
}

TEST_CASE("without a tight end a nine becomes a five and the strong backer an overhang") {
  const Setup setup = resolved("F13", "R04", "D01");
  checkSpot(setup, "SE", 3.15, 0.8);
  CHECK(man(setup, "SE").fit.gap == "C+");
  CHECK(man(setup, "S").spot.x > 5.5);
  CHECK(man(setup, "S").spot.x < 9.0);
  CHECK(man(setup, "S").fit.gap == "force+");
}

TEST_CASE("receivers share the room from a hash and keep three yards of it") {
  for (const Level level : {Level::high_school, Level::college, Level::pro}) {
    Scenario s = scenario("F01", "R01", "D01");
    s.level = level;
    s.field.spot = "right_hash";
    const Setup setup = resolved(s);
    CHECK(man(setup, "Z").spot.x <= setup.sideline_right - 3.0);
    CHECK(man(setup, "Z").spot.x < 15.0);
    CHECK(-man(setup, "X").spot.x > 16.0);
    CHECK(setup.sideline_right - setup.sideline_left == doctest::Approx(53.333));
  }
  Scenario s = scenario("F01", "R01", "D01");
  s.field.spot = "left_hash";
  const Setup setup = resolved(s);
  CHECK(setup.sideline_left == doctest::Approx(-17.78));
  CHECK(man(setup, "X").spot.x < -9.0);
  CHECK(man(setup, "X").spot.x > -11.0);
}

TEST_CASE("strength left turns look and front over while the run still goes right") {
  Scenario s = scenario("F01", "R01", "D01");
  s.offense.strength = "left";
  const Setup setup = resolved(s);
  CHECK(setup.direction == 1);
  checkSpot(setup, "Y", -4.4, -1.0);
  checkSpot(setup, "LT", -2.75, -1.1);
  checkSpot(setup, "CR", 16.0, 7.0);
  CHECK(man(setup, "SE").spot.x == doctest::Approx(-4.8));
  CHECK(man(setup, "SE").fit.gap == "D-");
  CHECK(man(setup, "SE").fit.if_right == FitRole::back_edge);
}

TEST_CASE("the sniffer starts behind the play where the scheme wants him") {
  CHECK(man(resolved("F03", "R02", "D03"), "H").spot.x < 0.0);
  CHECK(man(resolved("F07", "R02", "D03"), "H").spot.x < 0.0);
  CHECK(man(resolved("F07", "R04", "D03"), "H").spot.x > 0.0);
  Scenario s = scenario("F03", "R02", "D03");
  s.offense.direction = "left";
  CHECK(man(resolved(s), "H").spot.x > 0.0);
}

TEST_CASE("cover 3 sky brings the strong safety down outside the end and the free safety to the middle") {
  const Setup setup = resolved("F01", "R01", "D01", "cover 3 sky");
  checkSpot(setup, "SS", 6.5, 5.0);
  checkSpot(setup, "FS", 0.0, 12.0);
  CHECK(man(setup, "SS").fit.if_right == FitRole::force);
  CHECK(man(setup, "FS").fit.if_right == FitRole::alley);
  CHECK(man(setup, "SS").fit.if_left == FitRole::cutback);
}

TEST_CASE("a nub side makes its corner the force man, who stands outside the wing") {
  const Setup setup = resolved("F10", "R01", "D03");
  CHECK(man(setup, "CR").spot.x > man(setup, "U").spot.x + 1.0);
  CHECK(man(setup, "CR").spot.y == doctest::Approx(5.0));
  CHECK(man(setup, "CR").fit.if_right == FitRole::force);
  CHECK(man(setup, "SS").fit.if_right == FitRole::alley);
  CHECK(man(setup, "NK").spot.x < 0.0);
  const Setup rolled = resolved("F10", "R01", "D03", "cover 3 sky");
  CHECK(man(rolled, "SS").fit.if_right == FitRole::force);
  CHECK(man(rolled, "CR").fit.if_right == FitRole::corner);
}

TEST_CASE("cover 1 gives every receiver and the tight end a man") {
  const Setup setup = resolved("F06", "R04", "D03", "cover 1");
  CHECK(idOf(setup, man(setup, "CR").fit.man_on) == "Z");
  CHECK(idOf(setup, man(setup, "CL").fit.man_on) == "X");
  CHECK(idOf(setup, man(setup, "NK").fit.man_on) == "A");
  CHECK(idOf(setup, man(setup, "SS").fit.man_on) == "Y");
  CHECK(man(setup, "CR").fit.if_right == FitRole::out);
  CHECK(man(setup, "FS").fit.if_right == FitRole::alley);
  const Setup nub = resolved("F10", "R04", "D03", "cover 1");
  CHECK(idOf(nub, man(nub, "CR").fit.man_on) != "-");
}

TEST_CASE("a one-safety front takes a man from the fit for a two-safety shell") {
  const Setup two = resolved("F13", "R04", "D06");
  CHECK(man(two, "OV").fit.level == 3);
  CHECK(man(two, "OV").spot.y > 8.0);
  const Setup one = resolved("F13", "R04", "D06", "cover 3 sky");
  CHECK(man(one, "OV").fit.level == 2);
  CHECK(man(one, "FS").spot.x == doctest::Approx(0.0));
}

TEST_CASE("called movement moves the line and exchanges the gaps behind it") {
  Scenario s = scenario("F13", "R04", "D06");
  s.defense.movement = "slant right";
  const Setup setup = resolved(s);
  CHECK(man(setup, "NT").fit.gap == "A+");
  CHECK(man(setup, "DE").fit.gap == "C+");
  CHECK(man(setup, "DE2").fit.gap == "B-");
  CHECK(man(setup, "S").fit.gap == "B+");
  CHECK(man(setup, "M").fit.gap == "A-");
  CHECK(man(setup, "W").fit.gap == "C-");
  CHECK(man(setup, "NT").fit.slant_x > 0.0);
  CHECK(man(setup, "NT").fit.gap_x + man(setup, "NT").fit.slant_x == doctest::Approx(0.675));
  CHECK(man(setup, "DE2").fit.gap_x + man(setup, "DE2").fit.slant_x == doctest::Approx(-2.05));
  CHECK(man(setup, "DE2").fit.slant_x > 0.0);
  CHECK(man(setup, "M").fit.slant_x == 0.0);
}

TEST_CASE("every formation takes every front and shell, both ways") {
  for (const Formation& formation : library().formations) {
    for (const Front& front : library().fronts) {
      for (const Shell& shell : library().shells) {
        for (const char* direction : {"right", "left"}) {
          Scenario s = scenario(formation.id, "R01", front.id, shell.id);
          s.offense.direction = direction;
          CAPTURE(formation.id);
          CAPTURE(front.id);
          CAPTURE(shell.id);
          const Setup setup = resolved(s);
          int edges = 0;
          for (const Man& each : setup.men) edges += !each.attacks && each.fit.if_right == FitRole::edge;
          CHECK(edges == 1);
        }
      }
    }
  }
}
