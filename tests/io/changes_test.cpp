#include "io/changes.hpp"

#include <doctest/doctest.h>

#include "base/error.hpp"

using namespace gapsound;

TEST_CASE("a range includes its upper end") {
  const auto sweep = expandRange("players.SS.downhill_yps=3:9:1");
  CHECK(sweep.path == "players.SS.downhill_yps");
  CHECK(sweep.values == std::vector<double>{3, 4, 5, 6, 7, 8, 9});
}

TEST_CASE("range steps do not gather rounding") {
  const auto sweep = expandRange("players.SS.read_delay_s=0.5:1.4:0.1");
  REQUIRE(sweep.values.size() == 10);
  CHECK(sweep.values[3] == 0.8);
  CHECK(sweep.values.back() == 1.4);
}

TEST_CASE("a range of one value and a step that does not fit") {
  CHECK(expandRange("a=2:2:1").values == std::vector<double>{2});
  CHECK(expandRange("a=0:10:4").values.size() == 4);  // round(10 / 4) + 1
}

TEST_CASE("nonsense ranges are refused") {
  for (const auto* text : {"", "a", "a=", "a=1", "a=1:2", "a=1:2:0", "a=1:2:-1", "a=3:2:1", "a=x:2:1",
                           "a=1:2:3:4", "=1:2:1", "a=0:1e9:1", "a=0:inf:1", "a=nan:2:1"}) {
    INFO(text);
    CHECK_THROWS_AS(static_cast<void>(expandRange(text)), InputError);
  }
}

TEST_CASE("a setting is written so that it reads back exactly") {
  CHECK(settingText("players.SS.downhill_yps", 6.5) == "players.SS.downhill_yps=6.5");
  CHECK(settingText("a", 0.1) == "a=0.1");
}
