#include "io/differences.hpp"

#include <doctest/doctest.h>

#include "io/scenario_file.hpp"

using namespace gapsound;

namespace {
Scenario scenarioOf(const std::vector<std::string>& sets, const std::vector<std::string>& faults = {}) {
  return readScenario(std::string(GAPSOUND_ROOT) + "/scenarios/power-right-spill.json", {sets, faults});
}
using Words = std::vector<std::string>;
}  // namespace

TEST_CASE("what differs between two scenarios is told in a coach's words") {
  CHECK(differencesOf(scenarioOf({}), scenarioOf({})).empty());
  CHECK(differencesOf(scenarioOf({}), scenarioOf({"title=\"Another\""})).empty());
  CHECK(differencesOf(scenarioOf({"players.SS.downhill_yps=5"}), scenarioOf({"players.SS.downhill_yps=9"})) ==
        Words{"SS comes downhill at 9 yd/s, not 5"});
  CHECK(differencesOf(scenarioOf({}), scenarioOf({"defense.call.structure=box"})) ==
        Words{"structure box, not spill"});
  CHECK(differencesOf(scenarioOf({}), scenarioOf({}, {"SE=kicked_out"})) == Words{"SE kicked out"});
  CHECK(differencesOf(scenarioOf({"players.SS.depth_yd=9"}), scenarioOf({})) ==
        Words{"without: SS is 9 yd deep"});
}
