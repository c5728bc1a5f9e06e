#include "scenario/own_words.hpp"

#include <algorithm>
#include <nlohmann/json.hpp>
#include <valijson/adapters/nlohmann_json_adapter.hpp>
#include <valijson/schema.hpp>
#include <valijson/schema_parser.hpp>
#include <valijson/validator.hpp>

#include "io/assets.hpp"
#include "io/atomic_file.hpp"
#include "io/json_reader.hpp"
#include "io/library_parts.hpp"
#include "looks.hpp"
#include "scenario/check.hpp"

using namespace gapsound;
using namespace gapsound::looks;

namespace {

using Json = nlohmann::json;
using Adapter = valijson::adapters::NlohmannJsonAdapter;

const char* const kOurs =
    R"({"gapsound": 1, "words": {"SS": "Rover", "F01": "Ace", "R01": "Truck", "D01": "Okie",
  "quarters": "Blue", "log": "Hook", "H": "Joker"}})";

Library worded(const std::string& text) {
  Library copy = library();
  const Json document = Json::parse(text);
  readVocabulary(JsonReader("words.json", document), copy);
  return copy;
}

Scenario ours() {
  Scenario s = scenario("Ace", "Truck", "Okie", "Blue");
  s.offense.variant = "hook";
  s.players["Rover"].depth_yd = 7.0;
  s.faults.push_back({"rover", {FaultKind::late_read, 0.3}});
  return s;
}

bool accepts(const Json& document) {
  const Json description = Json::parse(readWhole(assetPath("schema/vocabulary.schema.json")));
  valijson::Schema schema;
  valijson::SchemaParser parser;
  parser.populateSchema(Adapter(description), schema);
  valijson::Validator validator;
  return validator.validate(schema, Adapter(document), nullptr);
}

}  // namespace

TEST_CASE("a look may be written in the coach's words and is told in them") {
  const Library words = worded(kOurs);
  const Setup setup = resolve(ours(), words, model());
  CHECK(setup.formation == "Ace");
  CHECK(setup.scheme == "Truck");
  CHECK(setup.front == "Okie");
  CHECK(setup.shell == "Blue");
  CHECK(setup.variant == "Hook");
  const Man& rover = man(setup, "Rover");
  CHECK(rover.drawn == "SS");
  CHECK(rover.spot.y == doctest::Approx(7.0));
  CHECK(rover.faults.size() == 1);
  const auto gaps = gapsOf(setup);
  CHECK(gaps.back().owners == std::vector<std::string>{"Rover"});
}

TEST_CASE("the same look by ids is the same game, and told in the coach's words all the same") {
  Scenario plain = scenario("F01", "R01", "D01");
  plain.offense.variant = "log";
  plain.players["SS"].depth_yd = 7.0;
  plain.faults.push_back({"SS", {FaultKind::late_read, 0.3}});
  const Setup a = resolve(plain, worded(kOurs), model()), b = resolve(ours(), worded(kOurs), model());
  const Setup bare = resolve(plain, library(), model());
  for (std::size_t i = 0; i < kMen; ++i) {
    CHECK(a.men[i].id == b.men[i].id);
    CHECK(a.men[i].spot == b.men[i].spot);
    CHECK(a.men[i].stream == bare.men[i].stream);
  }
}

TEST_CASE("notes speak in the coach's words") {
  const Setup setup = resolve(scenario("F03", "R01", "D03"), worded(kOurs), model());
  CHECK(std::find(setup.notes.begin(), setup.notes.end(), "no F: Joker is the kicker") != setup.notes.end());
}

TEST_CASE("a man named both ways is refused") {
  Scenario s = ours();
  s.players["SS"].depth_yd = 9.0;
  CHECK_THROWS_AS(static_cast<void>(resolve(s, worded(kOurs), model())), InputError);
}

TEST_CASE("words for nothing, no words and words twice are refused, the schema accepts the good file") {
  CHECK(accepts(Json::parse(kOurs)));
  CHECK(accepts(Json::parse(readWhole(assetPath("library/vocabulary.json")))));
  for (const char* bad :
       {R"({"gapsound": 1, "words": {"S5": "Rover"}})", R"({"gapsound": 1, "words": {"SS": ""}})",
        R"({"gapsound": 1, "words": {"SS": "FS"}})", R"({"gapsound": 1})",
        R"({"gapsound": 1, "words": {"SS": "Rover", "FS": "rover"}})", R"({"gapsound": 2, "words": {}})",
        R"({"gapsound": 1, "words": {}, "more": 1})"}) {
    INFO(bad);
    CHECK_THROWS_AS(static_cast<void>(worded(bad)), InputError);
  }
  for (const char* bad :
       {R"({"gapsound": 1, "words": {"SS": ""}})", R"({"gapsound": 1})", R"({"gapsound": 2, "words": {}})",
        R"({"gapsound": 1, "words": {"SS": 4}})", R"({"gapsound": 1, "words": {}, "more": 1})"}) {
    INFO(bad);
    CHECK_FALSE(accepts(Json::parse(bad)));
  }
}
