#include <doctest/doctest.h>

#include <set>

#include "football/faults.hpp"
#include "football/groups.hpp"
#include "football/states.hpp"

using namespace gapsound;

TEST_CASE("the fault table is in the order of the kinds and names each once") {
  REQUIRE(faultTable().size() == kFaultKinds);
  std::set<std::string_view> names;
  for (int i = 0; i < kFaultKinds; ++i) {
    const auto kind = static_cast<FaultKind>(i);
    CHECK(factsOf(kind).kind == kind);
    CHECK(faultNamed(factsOf(kind).name) == kind);
    CHECK(factsOf(kind).usual > 0.0);
    CHECK(factsOf(kind).usual <= factsOf(kind).most);
    names.insert(factsOf(kind).name);
  }
  CHECK(names.size() == kFaultKinds);
  CHECK_FALSE(faultNamed("kicked"));
}

TEST_CASE("default amounts of faults") {
  CHECK(factsOf(FaultKind::kicked_out).usual == 1.0);
  CHECK(factsOf(FaultKind::washed).usual == 2.0);
  CHECK(factsOf(FaultKind::upfield).usual == 1.5);
  CHECK(factsOf(FaultKind::scrape_wide).usual == 2.0);
  CHECK(factsOf(FaultKind::late_read).usual == 0.3);
  CHECK(factsOf(FaultKind::too_fast).usual == 2.0);
  CHECK(factsOf(FaultKind::flowed).usual == 1.0);
}

TEST_CASE("states, fits and groups are found by the names they print") {
  for (int i = 0; i < kEndStates; ++i) {
    const auto state = static_cast<EndState>(i);
    CHECK(endStateNamed(nameOf(state)) == state);
  }
  for (int i = 0; i < kBackerStates; ++i) {
    const auto state = static_cast<BackerState>(i);
    CHECK(backerStateNamed(nameOf(state)) == state);
  }
  for (int i = 0; i < kFits; ++i) CHECK(fitNamed(nameOf(static_cast<Fit>(i))) == static_cast<Fit>(i));
  for (int i = 0; i < kGroups; ++i) CHECK(groupNamed(nameOf(static_cast<Group>(i))) == static_cast<Group>(i));
  CHECK_FALSE(fitNamed("over the top"));
}
