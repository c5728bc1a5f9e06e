#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "base/error.hpp"
#include "football/faults.hpp"
#include "io/assets.hpp"
#include "io/atomic_file.hpp"
#include "io/changes.hpp"
#include "io/scenario_file.hpp"
#include "schema_check.hpp"

using namespace gapsound;

namespace {

using Json = nlohmann::json;

Json schemaDocument() { return Json::parse(readWhole(assetPath("schema/scenario.schema.json"))); }

bool accepts(const Json& document) { return passesSchema(document, "scenario"); }

/// As a file of the shipped scenarios' folder.
bool loads(const Json& document) {
  try {
    static_cast<void>(parseScenario(document.dump(), std::string(GAPSOUND_ROOT) + "/scenarios/test.json"));
    return true;
  } catch (const InputError&) {
    return false;
  }
}

Json good() {
  return Json::parse(R"({"gapsound": 1, "title": "good", "offense": {"formation": "F01", "scheme": "R01"},
    "defense": {"front": "D01", "call": {"structure": "spill"}}, "players": {"SS": {"downhill_yps": 6}},
    "faults": [{"player": "S", "kind": "scrape_wide", "amount": 2}]})");
}

// PATH=VALUE changes that make the good document a bad one.
const std::vector<std::string> kBad = {
    "gapsound=2",
    "gapsound=null",
    "title=12",
    "title=\"\"",
    "level=varsity",
    "clock=sand",
    "tags=sound",
    "field.spot=center",
    "field.to_goal=0",
    "field.to_goal=120",
    "field.down=5",
    "field.down=1.5",
    "field.distance=-3",
    "field.hash=left",
    "offense.formation=7",
    "offense.direction=up",
    "offense.motion=jet",
    "offense=F01",
    "defense.front=null",
    "defense={\"file\":\"\"}",
    "defense={\"shell\":\"quarters\"}",
    "defense.fit_off=nobody",
    "defense.fit_off={\"level4\":\"call\"}",
    "defense.call.structure=spil",
    "defense.call.mix=some",
    "defense.call.mix={\"slant_share\":1.5}",
    "defense.call.key=double",
    "defense.call.overlap=through",
    "defense.call.force=tackle",
    "defense.call.force={\"left\":\"safety\"}",
    "players.SS.job=4",
    "players.SS.job={}",
    "players.SS.job={\"middle\":\"force\"}",
    "players.RG.on=7",
    "players=[]",
    "players.SS.downhill_yps=0.5",
    "players.SS.downhill_yps=fast",
    "players.SS.read_delay_s=-0.1",
    "players.SS.mass_kg=400",
    "players.SS.depth_yd=-4",
    "players.SS.speed=9",
    "players.SS={\"y\":8,\"depth_yd\":9}",
    "faults=none",
    "faults.0.kind=tired",
    "faults.0.amount=0",
    "faults.0.amount=-1",
    "faults.0.player=12",
    "faults.0.why=late",
    "start=film",
    "start.since_snap_s=9",
    "start={\"since_snap_s\":1.3,\"ball\":\"T\"}",
    "start={\"since_snap_s\":1.3,\"ball\":\"T\",\"men\":{\"T\":{\"x\":0}}}",
    "start={\"since_snap_s\":1.3,\"ball\":\"T\",\"men\":{\"T\":{\"x\":0,\"y\":-4,\"v\":2}}}"};

}  // namespace

TEST_CASE("the schema accepts every shipped scenario") {
  int count = 0;
  for (const auto& entry : std::filesystem::directory_iterator(std::string(GAPSOUND_ROOT) + "/scenarios")) {
    const auto name = entry.path().filename().string();
    if (entry.path().extension() != ".json" || name.rfind("plan-", 0) == 0) continue;
    INFO(name);
    const auto document = Json::parse(readWhole(entry.path().string()));
    CHECK(accepts(document));
    CHECK(loads(document));
    ++count;
  }
  CHECK(count >= 10);
}

TEST_CASE("schema and loader refuse the same bad documents") {
  REQUIRE(accepts(good()));
  REQUIRE(loads(good()));
  for (const auto& change : kBad) {
    INFO(change);
    auto document = good();
    applyChanges(document, {{change}, {}});
    CHECK_FALSE(accepts(document));
    CHECK_FALSE(loads(document));
  }
}

TEST_CASE("a start from film needs no names, without one they are needed") {
  const auto filmed =
      Json::parse(R"({"gapsound": 1, "title": "film", "start": {"since_snap_s": 1.3, "ball": "T",
    "men": {"T": {"x": 0, "y": -4, "vx": 0.2, "vy": 4.1, "facing_deg": 10}}}})");
  CHECK(accepts(filmed));
  CHECK(loads(filmed));
  for (const char* missing :
       {"/offense", "/defense", "/offense/formation", "/offense/scheme", "/defense/front"}) {
    INFO(missing);
    auto document = good();
    const Json::json_pointer pointer(missing);
    document.at(pointer.parent_pointer()).erase(pointer.back());
    CHECK_FALSE(accepts(document));
    CHECK_FALSE(loads(document));
  }
}

TEST_CASE("the schema knows every fault") {
  const auto kinds = schemaDocument()["definitions"]["fault"]["properties"]["kind"]["enum"];
  CHECK(kinds.size() == faultTable().size());
  for (const auto& facts : faultTable()) {
    INFO(facts.name);
    CHECK(std::find(kinds.begin(), kinds.end(), facts.name) != kinds.end());
  }
}
