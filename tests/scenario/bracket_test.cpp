#include "scenario/bracket.hpp"

#include <algorithm>

#include "looks.hpp"
#include "scenario/check.hpp"

using namespace gapsound;
using namespace gapsound::looks;

namespace {

// The bracket rule is common practice, no source: a hat inside and one outside of everybody who comes.

std::string text(const Setup& setup) {
  std::string out;
  for (const Bracket& b : bracketsOf(setup))
    out += b.blocker + ">" + b.on + ": " + b.inside + "|" + b.outside + ", ";
  return out;
}

bool says(const Setup& setup, const std::string& words) {
  const auto concerns = concernsOf(setup);
  return std::find(concerns.begin(), concerns.end(), words) != concerns.end();
}

}  // namespace

TEST_CASE("power against a spill: the end inside the kicker, the first backer outside him and the wrapper") {
  CHECK(text(resolved("F01", "R01", "D01")) == "LG>S: M|S, F>SE: SE|S, ");
}

TEST_CASE("power against a box: the end outside the kicker, the first backer inside him") {
  Scenario s = scenario("F01", "R01", "D01");
  s.defense.structure = "box";
  CHECK(text(resolved(s)) == "LG>S: M|S, F>SE: S|SE, ");
}

TEST_CASE("the same to the left") {
  Scenario s = scenario("F01", "R01", "D01");
  s.offense.direction = "left";
  s.offense.strength = "left";
  CHECK(text(resolved(s)) == "RG>S: M|S, F>SE: SE|S, ");
}

TEST_CASE("two backers on one side of a lead leave the other side open, and check says so") {
  Scenario s = scenario("F03", "R01", "D03");
  CHECK_FALSE(says(resolved(s), "nobody is inside LG, who is for M"));
  s.defense.bs_backer = "shoot";  // W runs through: nobody is left inside the wrapper
  CHECK(says(resolved(s), "nobody is inside LG, who is for M"));
}

TEST_CASE("who pulls or leads has a bracket, who only climbs has none") {
  CHECK(bracketsOf(resolved("F13", "R04", "D04")).empty());
  CHECK(bracketsOf(resolved("F01", "R10", "D02")).size() == 1);
  CHECK(bracketsOf(resolved("F13", "R03", "D04")).size() == 2);
}
