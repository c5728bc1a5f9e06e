#include "looks.hpp"

using namespace gapsound;
using namespace gapsound::looks;

namespace {

void checkRole(const Setup& setup, const char* id, FitRole right, FitRole left) {
  CAPTURE(id);
  CHECK(man(setup, id).fit.if_right == right);
  CHECK(man(setup, id).fit.if_left == left);
}

std::string keyOf(const Setup& setup, const char* id) { return idOf(setup, man(setup, id).fit.key); }

using R = FitRole;

}  // namespace

TEST_CASE("4-3 over in quarters: who is what when the run goes either way") {
  const Setup setup = resolved("F01", "R01", "D01");
  checkRole(setup, "SE", R::edge, R::back_edge);
  checkRole(setup, "WE", R::back_edge, R::edge);
  checkRole(setup, "DT", R::interior, R::interior);
  checkRole(setup, "S", R::first_backer, R::overlap_backer);
  checkRole(setup, "M", R::fill_backer, R::fill_backer);
  checkRole(setup, "W", R::overlap_backer, R::first_backer);
  checkRole(setup, "SS", R::alley, R::cutback);
  checkRole(setup, "FS", R::cutback, R::alley);
  checkRole(setup, "CR", R::corner, R::corner);
}

TEST_CASE("4-2-5 over in quarters: two backers, the nickel is force on the slot's side") {
  const Setup setup = resolved("F06", "R04", "D03");
  checkRole(setup, "M", R::first_backer, R::overlap_backer);
  checkRole(setup, "W", R::overlap_backer, R::first_backer);
  checkRole(setup, "NK", R::out, R::force);
  checkRole(setup, "SS", R::alley, R::cutback);
}

TEST_CASE("2-read makes the corner force") {
  const Setup setup = resolved("F13", "R04", "D04", "2-read");
  checkRole(setup, "CR", R::force, R::corner);
  checkRole(setup, "CL", R::corner, R::force);
  checkRole(setup, "SS", R::alley, R::cutback);
}

TEST_CASE("an overhang called for force is force and no backer, near the end or far from him") {
  const Setup near = resolved("F01", "R01", "D04");
  checkRole(near, "NK", R::force, R::cutback);
  checkRole(near, "M", R::first_backer, R::overlap_backer);
  const Setup four_four = resolved("F01", "R01", "D09");
  checkRole(four_four, "S", R::force, R::cutback);
  checkRole(four_four, "M", R::first_backer, R::overlap_backer);
  const Setup far = resolved("F13", "R01", "D04");
  checkRole(far, "M", R::first_backer, R::overlap_backer);
}

TEST_CASE("who has the end in man coverage and stands outside him is force on that side") {
  checkRole(resolved("F01", "R01", "D09", "cover 1"), "S", R::force, R::cutback);
}

TEST_CASE("keys: the man in front for the line, guards for inside backers, the end for the safety") {
  const Setup setup = resolved("F01", "R01", "D01");
  CHECK(keyOf(setup, "SE") == "Y");
  CHECK(keyOf(setup, "WE") == "LT");
  CHECK(keyOf(setup, "DT") == "RG");
  CHECK(keyOf(setup, "NT") == "C");
  CHECK(keyOf(setup, "S") == "Y");
  CHECK(keyOf(setup, "M") == "RG");
  CHECK(keyOf(setup, "W") == "LG");
  CHECK(keyOf(setup, "SS") == "Y");
  CHECK(keyOf(setup, "CR") == "Z");
  CHECK(keyOf(resolved("F13", "R04", "D04"), "SS") == "B");
}

TEST_CASE("the call reaches every man, a man's own settings win") {
  Scenario s = scenario("F01", "R01", "D01");
  s.defense.structure = "box";
  s.defense.bs_backer = "fold";
  s.defense.fit_off = {FitOff::man_in_front, FitOff::call, FitOff::man_in_front};
  s.players["S"].fit_off = FitOff::man_in_front;
  s.players["S"].key = "single";
  const Setup setup = resolved(s);
  CHECK(man(setup, "SE").fit.structure_right == Structure::box);
  CHECK(man(setup, "W").fit.bs_backer == BackSideBacker::fold);
  CHECK(man(setup, "M").fit.off_the_man_in_front == false);
  CHECK(man(setup, "S").fit.off_the_man_in_front == true);
  CHECK(man(setup, "SS").fit.off_the_man_in_front == true);
  CHECK(man(setup, "S").fit.key_style == KeyStyle::single);
}

TEST_CASE("the offense's scheme changes nothing in what the defense was told") {
  const Setup power = resolved("F01", "R01", "D01");
  const Setup zone = resolved("F01", "R04", "D01");
  for (std::size_t i = kOffense; i < kMen; ++i) {
    CHECK(power.men[i].fit.gap == zone.men[i].fit.gap);
    CHECK(power.men[i].fit.if_right == zone.men[i].fit.if_right);
    CHECK(power.men[i].fit.key == zone.men[i].fit.key);
  }
}

TEST_CASE("the last of three backers takes the double, the last of two the window") {
  const auto spilled = static_cast<std::size_t>(EndState::spilled);
  CHECK(resolved("F01", "R01", "D01").fits.overlap_backer[0][spilled] == Fit::tight_double);
  CHECK(resolved("F01", "R01", "D03").fits.overlap_backer[0][spilled] == Fit::under);
}

TEST_CASE("a later level reads and runs more slowly, given figures are the man's own") {
  Scenario s = scenario("F01", "R01", "D01");
  s.players["SS"].downhill_yps = 20.0 / 2;
  s.players["FS"].ten_yd_s = 1.58;
  s.players["FS"].forty_yd_s = 4.55;
  s.players["M"].mass_kg = 110.0;
  const Setup school = resolved(s);
  s.level = Level::pro;
  const Setup pro = resolved(s);
  CHECK(man(school, "W").body.top_speed < man(pro, "W").body.top_speed);
  CHECK(man(school, "W").fit.read_delay_s > man(pro, "W").fit.read_delay_s);
  CHECK(man(school, "FS").body.top_speed == man(pro, "FS").body.top_speed);
  CHECK(man(school, "M").body.mass_kg == 110.0);
  CHECK(man(school, "SS").fit.downhill_yps <= man(school, "SS").body.top_speed);
}

TEST_CASE("a body's breadth grows with its mass") {
  const Setup setup = resolved("F01", "R01", "D01");
  CHECK(man(setup, "LT").body.shoulder > man(setup, "CR").body.shoulder);
  CHECK(man(setup, "LT").body.shoulder > man(setup, "LT").body.chest);
  CHECK(man(setup, "CR").body.shoulder == doctest::Approx(0.32).epsilon(0.05));
}
