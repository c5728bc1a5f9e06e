#include "io/plan_file.hpp"

#include <doctest/doctest.h>

#include <nlohmann/json.hpp>

#include "base/error.hpp"
#include "io/assets.hpp"
#include "io/atomic_file.hpp"
#include "io/library.hpp"
#include "io/model_file.hpp"
#include "scenario/resolve.hpp"
#include "schema_check.hpp"

using namespace gapsound;

namespace {

using Json = nlohmann::json;

bool accepts(const Json& document) { return passesSchema(document, "plan"); }

bool loads(const Json& document) {
  try {
    static_cast<void>(parsePlan(document.dump(), "plan.json"));
    return true;
  } catch (const InputError&) {
    return false;
  }
}

Json good() {
  return Json::parse(R"({"gapsound": 1, "title": "good", "runs": [{"formation": "F01", "scheme": "R01"}],
    "calls": [{"front": "D01", "call": {"structure": "spill"}}], "practice": [{"day": "Tuesday"}]})");
}

const std::vector<std::string> kBad = {"gapsound=2",
                                       "title=\"\"",
                                       "runs=[]",
                                       "calls=[]",
                                       "runs.0.formation=7",
                                       "runs.0.share=1.5",
                                       "runs.0.spot=center",
                                       "runs.0.down=5",
                                       "runs.0.seen=-1",
                                       "runs.0.thin=maybe",
                                       "runs.0.tempo=fast",
                                       "runs.0.name=\"\"",
                                       "calls.0.front=null",
                                       "calls.0.call.structure=spil",
                                       "calls.0.blitz=yes",
                                       "practice.0.contact=hard",
                                       "practice.0.minutes=0",
                                       "practice.0.reps=0",
                                       "practice.0.drill=x",
                                       "players.SS.mass_kg=400",
                                       "weather=rain"};

std::string shippedPlan() { return std::string(GAPSOUND_ROOT) + "/scenarios/plan-river-week.json"; }

}  // namespace

TEST_CASE("the shipped plan passes its schema and every pair of it resolves") {
  CHECK(accepts(Json::parse(readWhole(shippedPlan()))));
  const Plan plan = readPlan(shippedPlan());
  CHECK(plan.runs.size() >= 8);
  CHECK(plan.calls.size() >= 3);
  const Library library = readLibrary(assetPath(""));
  const Model model = readModel(assetPath("model.json"));
  for (std::size_t r = 0; r < plan.runs.size(); ++r) {
    for (std::size_t c = 0; c < plan.calls.size(); ++c) {
      const Setup setup = resolve(pairOf(plan, r, c), library, model);
      CHECK(setup.direction == (plan.runs[r].offense.direction == "right" ? +1 : -1));
    }
  }
}

TEST_CASE("a plan written and read back is the same plan") {
  const Plan plan = readPlan(shippedPlan());
  const std::string text = toJson(plan);
  CHECK(toJson(parsePlan(text, "again")) == text);
  CHECK(accepts(Json::parse(text)));
}

TEST_CASE("plan schema and plan reader refuse the same bad documents") {
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

TEST_CASE("a plan is told from a scenario, and nameless runs and calls get a name") {
  CHECK(isPlanFile(shippedPlan()));
  CHECK_FALSE(isPlanFile(std::string(GAPSOUND_ROOT) + "/scenarios/power-right-spill.json"));
  const Plan plan = parsePlan(good().dump(), "plan.json");
  CHECK(plan.runs[0].name == "F01 R01 right");
  CHECK(plan.calls[0].name == "D01 quarters spill");
}

TEST_CASE("a plan's players are laid on the looks that have them, and nobody is laid on none") {
  const Library library = readLibrary(assetPath(""));
  const Model model = readModel(assetPath("model.json"));
  const Plan plan = readPlan(shippedPlan());
  const auto setups = resolveAll(plan, library, model);
  CHECK(setups.size() == plan.runs.size());
  CHECK(pairWithPlayers(plan, 0, 0, library, model).players.size() == 2);
  CHECK(pairWithPlayers(plan, 0, 1, library, model).players.size() == 1);  // the nickel look has no S
  Plan stray = plan;
  stray.players["ROVER"].mass_kg = 90.0;
  CHECK_THROWS_WITH_AS(static_cast<void>(resolveAll(stray, library, model)),
                       doctest::Contains("/players/ROVER"), InputError);
}
