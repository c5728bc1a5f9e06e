#include <doctest/doctest.h>

#include <cmath>
#include <initializer_list>
#include <string>

#include "athlete/splits.hpp"
#include "combine.hpp"
#include "io/assets.hpp"
#include "io/library.hpp"

using namespace gapsound;
using combine::group;

namespace {

constexpr double kMetresPerYard = 0.9144;
constexpr double kGravity = 9.81;  // m/s^2

SprintFit lawOf(const combine::Group& g) {
  const auto fit = fitSplits(g.ten_s, g.forty_s, kHandStart);
  REQUIRE(fit);
  return *fit;
}

bool near(double value, double expected, double tolerance) { return std::abs(value - expected) <= tolerance; }

// Fit with the clock taken as the man's own: T is below what the fit accepts, so it is solved here by hand.
SprintFit clockLaw(double ten, double forty) {
  double low = 0.3;
  double high = 1.5;
  const auto run = [](double t, double tau) { return t - tau * (1.0 - std::exp(-t / tau)); };
  while (high - low > 1e-9) {
    const double tau = 0.5 * (low + high);
    (run(forty, tau) < 4.0 * run(ten, tau) ? low : high) = tau;
  }
  return {40.0 / run(forty, low), low};
}

}  // namespace

// Measured from public combine tables (413 backs): 10 yd 1.58 s, 40 yd 4.55 s, 20 yd held out.
TEST_CASE("check 1: a back's ten and forty predict his twenty") {
  const SprintFit law = lawOf(group("RB"));
  CHECK(near(law.top_speed, 10.91, 0.1));
  CHECK(near(law.tau, 1.15, 0.05));
  CHECK(near(clockTime(law, 20.0, kHandStart), 2.64, 0.05));
}

// Measured from an older public combine table with 20-yd splits (115 receivers).
TEST_CASE("check 2: a receiver's three splits follow one law") {
  const SprintFit law{11.09, 1.13};
  CHECK(near(clockTime(law, 10.0, kHandStart), 1.549, 0.02));
  CHECK(near(clockTime(law, 20.0, kHandStart), 2.596, 0.02));
  CHECK(near(clockTime(law, 40.0, kHandStart), 4.468, 0.02));
}

// Measured from public combine tables (265 guards).
TEST_CASE("check 3: a guard's law gives his ten and his forty") {
  const SprintFit law{9.32, 1.24};
  CHECK(near(clockTime(law, 10.0, kHandStart), 1.83, 0.03));
  CHECK(near(clockTime(law, 40.0, kHandStart), 5.27, 0.03));
}

// Measured from public combine tables, thirteen groups.
TEST_CASE("every group's times give the law it is listed with") {
  for (const combine::Group& g : combine::kGroups) {
    CAPTURE(g.name);
    const SprintFit law = lawOf(g);
    CHECK(near(law.top_speed, g.top_speed, 0.1));
    CHECK(near(law.tau, g.tau, 0.05));
  }
}

// Clark, Rieger, Bruno & Stearne 2017, J Strength Cond Res: T 0.77 +- 0.07 s on the combine clock, fast or
// slow.
TEST_CASE("check 4: on the combine's own clock everybody has the same time constant") {
  for (const combine::Group& g : combine::kGroups) {
    CAPTURE(g.name);
    CHECK(near(clockLaw(g.ten_s, g.forty_s).tau, 0.77, 0.10));
  }
}

// Order of the groups by top speed: measured from public combine tables, whose hundredths are worth 0.05
// yd/s.
TEST_CASE("check 4: corners are the fastest and guards the slowest") {
  const auto speed = [](const char* name) { return lawOf(group(name)).top_speed; };
  const std::initializer_list<const char*> order = {"CB", "WR", "RB", "S",  "LB",
                                                    "TE", "QB", "DT", "OT", "OG"};
  double before = 99.0;
  for (const char* name : order) {
    CAPTURE(std::string(name));
    CHECK(speed(name) < before + 0.05);
    before = speed(name);
  }
  for (const char* name : {"DE", "FB"}) {
    CHECK(speed(name) < speed("LB"));
    CHECK(speed(name) > speed("QB"));
  }
  CHECK(speed("C") < speed("DT"));
  CHECK(speed("C") > speed("OG"));
  CHECK(speed("CB") > speed("OG") + 1.5);
}

// Furusawa, Hill & Parkinson 1927: 90 % of V at 2.30 T. Grip of a cleat on dry turf, about 1.1: from memory.
TEST_CASE("check 5: no group's first step asks for more than the grip of the ground") {
  for (const combine::Group& g : combine::kGroups) {
    CAPTURE(g.name);
    const SprintFit law = lawOf(g);
    constexpr double h = 1e-5;
    const double t = 2.30 * law.tau;
    const double speed = (distanceAt(law, t + h) - distanceAt(law, t - h)) / (2.0 * h);
    CHECK(near(speed / law.top_speed, 0.90, 0.002));
    const double first = law.top_speed / law.tau * kMetresPerYard / kGravity;
    CHECK(first > 0.69);
    CHECK(first < 0.93);
  }
}

// Mann et al. 2015, J Strength Cond Res 29:1509-1514: a hand shows 0.22 +- 0.07 s less over 40 yd.
TEST_CASE("check 21: an electronic forty is the hand forty and 0.22 s") {
  CHECK(near(electronicFromHand(4.60), 4.82, 0.07));
  CHECK(near(handFromElectronic(5.18), 4.96, 0.07));
}

// Mann et al. 2015: the two clocks of the same 81 college men, 4.90 s by hand and 5.12 s electronic.
TEST_CASE("check 21: one man under both clocks is one man") {
  CHECK(near(handFromElectronic(5.12), 4.90, 0.07));
}

// Measured from public combine tables: the bodies the program ships run as their groups do.
TEST_CASE("the shipped bodies run their groups' tens and forties") {
  const Library library = readLibrary(assetPath(""));
  struct Pair {
    Group ours;
    const char* table;
  };
  for (const Pair& p : {Pair{Group::receiver, "WR"},
                        {Group::corner, "CB"},
                        {Group::safety, "S"},
                        {Group::back, "RB"},
                        {Group::fullback, "FB"},
                        {Group::tight_end, "TE"},
                        {Group::quarterback, "QB"},
                        {Group::backer, "LB"},
                        {Group::edge, "DE"},
                        {Group::tackle, "DT"},
                        {Group::off_tackle, "OT"},
                        {Group::guard, "OG"},
                        {Group::center, "C"}}) {
    CAPTURE(std::string(p.table));
    const auto& body = library.bodies.kinds[static_cast<std::size_t>(p.ours)];
    const SprintFit law{body.top_speed, body.tau};
    CHECK(near(clockTime(law, 10.0, kHandStart), group(p.table).ten_s, 0.03));
    CHECK(near(clockTime(law, 40.0, kHandStart), group(p.table).forty_s, 0.03));
  }
}
