#include <doctest/doctest.h>

#include <cmath>
#include <initializer_list>

#include "../sim/looks.hpp"
#include "picture/ground.hpp"

using namespace gapsound;

// Rule books of the three levels: hash rows 53 ft 4 in, 40 ft and 18 ft 6 in apart on a field of 160 ft.
TEST_CASE("check 20: the hashes lie where each level's rules put them") {
  struct Rule {
    Level level;
    double gap_ft;
  };
  for (const Rule& rule :
       {Rule{Level::high_school, 53.0 + 4.0 / 12.0}, Rule{Level::college, 40.0}, Rule{Level::pro, 18.5}}) {
    const double gap = rule.gap_ft / 3.0;
    CHECK(std::abs(2.0 * hashDistance(rule.level) + gap - 160.0 / 3.0) < 0.01);
  }
}

// Measured from league player tracking, 415 lines: 6.35 +- 0.41 yd from tackle to tackle.
TEST_CASE("check 20: tackle to tackle at pro spacing") {
  for (const std::string& name : looks::names()) {
    const Setup setup = looks::setupOf(name, {"level=pro"});
    if (setup.opening) continue;
    double low = 99.0, high = -99.0;
    for (const Man& man : setup.men) {
      if (!man.attacks || man.group != Group::off_tackle) continue;
      low = std::min(low, man.spot.x);
      high = std::max(high, man.spot.x);
    }
    CAPTURE(name);
    CHECK(std::abs(high - low - 6.35) < 0.5);
  }
}
