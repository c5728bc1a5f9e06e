#include <doctest/doctest.h>

#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "program.hpp"

using namespace gapsound::testing;

namespace {

using Json = nlohmann::json;

Json good() {
  return Json::parse(R"({"gapsound": 1, "title": "good", "level": "pro",
    "offense": {"formation": "F01", "scheme": "R01"}, "defense": {"front": "D01"}})");
}

struct BadFile {
  const char* what;
  const char* pointer;  // where the good file is changed
  const char* value;    // JSON put there
  const char* path;     // JSON path in the message
  const char* shown;    // value in the message
  const char* allowed;  // part of what is allowed
};

const std::vector<BadFile> kBadFiles = {
    {"version of the future", "/gapsound", "2", "/gapsound", "2", "1 to 1"},
    {"no version", "/gapsound", "null", "/gapsound", "null", "whole number"},
    {"wrong type of a text", "/title", "12", "/title", "12", "text"},
    {"empty title", "/title", "\"\"", "/title", "\"\"", "at least one character"},
    {"unknown level", "/level", "\"varsity\"", "/level", "\"varsity\"", "high_school"},
    {"unknown key", "/colour", "\"red\"", "/colour", "unknown key", "title"},
    {"misspelt key", "/defense/shel", "\"cover 1\"", "/defense/shel", "unknown key", "shell"},
    {"unknown formation", "/offense/formation", "\"F99\"", "/offense/formation", "F99", "F01"},
    {"unknown scheme", "/offense/scheme", "\"R99\"", "/offense/scheme", "R99", "R01"},
    {"unknown variant", "/offense/variant", "\"trick\"", "/offense/variant", "trick", "base"},
    {"unknown front", "/defense/front", "\"D99\"", "/defense/front", "D99", "D01"},
    {"unknown shell", "/defense/shell", "\"cover 9\"", "/defense/shell", "cover 9", "quarters"},
    {"unknown movement", "/defense/call/movement", "\"twist\"", "/defense/call/movement", "twist", "none"},
    {"unknown structure", "/defense/call/structure", "\"spil\"", "/defense/call/structure", "spil", "spill"},
    {"list for an object", "/players", "[1]", "/players", "[1]", "an object"},
    {"negative depth", "/players/SS/depth_yd", "-4", "/players/SS/depth_yd", "-4", "1 to 25"},
    {"absurd mass", "/players/SS/mass_kg", "900", "/players/SS/mass_kg", "900", "45 to 190"},
    {"absurd speed", "/players/SS/downhill_yps", "40", "/players/SS/downhill_yps", "40", "1 to 11"},
    {"a number too large to hold", "/players/SS/x", "1e300", "/players/SS/x", "1e+300", "-30 to 30"},
    {"text for a number", "/players/SS/read_delay_s", "\"soon\"", "/players/SS/read_delay_s", "\"soon\"",
     "0 to 3"},
    {"depth and y at once", "/players/SS", "{\"y\": 8, \"depth_yd\": 9}", "/players/SS", "depth_yd",
     "not both"},
    {"a man who is not there", "/players/XX", "{\"mass_kg\": 90}", "/players/XX", "unknown man", "nearest"},
    {"times that no man runs", "/players/SS", "{\"ten_yd_s\": 2.9, \"forty_yd_s\": 4.2}", "/players/SS",
     "2.9", ""},
    {"two men on a spot", "/players/M", "{\"x\": 3.6, \"y\": 4.5}", "/players/M", "on one spot", "0.5 yd"},
    {"offside defender", "/players/M/y", "-2", "/players/M", "-2", ""},
    {"offense over the line", "/players/T/y", "5", "/players/T", "5", ""},
    {"down five", "/field", "{\"down\": 5}", "/field/down", "5", "1 to 4"},
    {"off the field", "/field", "{\"to_goal\": 140}", "/field/to_goal", "140", "1 to 99"},
    {"unknown fault", "/faults", "[{\"player\": \"S\", \"kind\": \"tired\"}]", "/faults/0/kind", "tired",
     "washed"},
    {"fault on nobody", "/faults", "[{\"player\": \"XX\", \"kind\": \"washed\"}]", "/faults/0/player", "XX",
     "nearest"},
    {"fault of the wrong man", "/faults", "[{\"player\": \"SS\", \"kind\": \"kicked_out\"}]", "/faults/0",
     "SS", ""},
    {"fault of no size", "/faults", "[{\"player\": \"S\", \"kind\": \"scrape_wide\", \"amount\": 0}]",
     "/faults/0/amount", "0", "above 0"},
    {"absurd fault", "/faults", "[{\"player\": \"S\", \"kind\": \"scrape_wide\", \"amount\": 99}]",
     "/faults/0/amount", "99", "0 to"},
};

void checkRefusal(const Outcome& outcome, int code, const std::vector<std::string>& parts) {
  INFO(outcome.err);
  CHECK(outcome.code == code);
  CHECK(outcome.out.empty());
  CHECK(lines(outcome.err) == 1);
  for (const auto& part : parts) {
    INFO(part);
    CHECK(outcome.err.find(part) != std::string::npos);
  }
}

}  // namespace

TEST_CASE("a bad file is refused in one line that says where, what and what instead") {
  for (const BadFile& bad : kBadFiles) {
    INFO(bad.what);
    const ScratchFolder folder;
    auto document = good();
    document[Json::json_pointer(bad.pointer)] = Json::parse(bad.value);
    const auto file = folder.file("bad.json", document.dump());
    const auto outcome = run({"rep", file, "--tape", folder.path("out.cbor")});
    checkRefusal(outcome, 3,
                 {file + ": ", std::string(": ") + bad.path, bad.shown, "; allowed: ", bad.allowed});
    CHECK(folder.names() == std::vector<std::string>{"bad.json"});
  }
}

TEST_CASE("files that are no scenario at all") {
  const ScratchFolder folder;
  const auto whole = good().dump(2);
  const std::vector<std::pair<const char*, std::string>> kinds = {
      {"cut.json", whole.substr(0, whole.size() / 2)},
      {"empty.json", ""},
      {"list.json", "[]"},
      {"number.json", "12"},
      {"huge.json", "{\"gapsound\": 1e999}"},
      {"bytes.json", std::string("\xff\xfe\0{", 4)}};
  for (const auto& kind : kinds) {
    INFO(kind.first);
    const auto file = folder.file(kind.first, kind.second);
    checkRefusal(run({"rep", file}), 3, {file + ": ", "; allowed: "});
  }
}

TEST_CASE("what cannot be read or written") {
  const ScratchFolder folder;
  const auto file = folder.file("good.json", good().dump());
  const auto nowhere = folder.path("none/out");
  checkRefusal(run({"rep", folder.path("missing.json")}), 4, {folder.path("missing.json")});
  checkRefusal(run({"rep", folder.path("")}), 4, {"cannot be read"});
  checkRefusal(run({"rep", file, "--model", folder.path("missing.json")}), 4, {"missing.json"});
  checkRefusal(run({"rep", file, "--tape", nowhere}), 4, {nowhere});
  checkRefusal(run({"vary", file, "--over", "players.SS.depth_yd=8:9:1", "-n", "2", "--csv", nowhere}), 4,
               {nowhere});
  checkRefusal(run({"strip", file, "-o", nowhere + ".png"}), 4, {nowhere});
  checkRefusal(run({"clip", file, "-o", nowhere + ".mp4"}), 4, {nowhere});
  checkRefusal(run({"new", "--formation", "F01", "--scheme", "R01", "--front", "D01", "-o", nowhere}), 4,
               {nowhere});
  CHECK(folder.names() == std::vector<std::string>{"good.json"});
}

TEST_CASE("a picture of a kind nobody knows") {
  const ScratchFolder folder;
  const auto file = folder.file("good.json", good().dump());
  checkRefusal(run({"strip", file, "-o", folder.path("a.bmp")}), 3, {"a.bmp", "; allowed: "});
  checkRefusal(run({"clip", file, "-o", folder.path("a.avi")}), 3, {"a.avi", "; allowed: "});
  CHECK(folder.names() == std::vector<std::string>{"good.json"});
}

TEST_CASE("a wrong command line") {
  const auto file = shipped("power-right-spill");
  const std::vector<std::vector<std::string>> calls = {{},
                                                       {"dance"},
                                                       {"rep"},
                                                       {"rep", file, "--sed", "3"},
                                                       {"rep", file, "--seed", "three"},
                                                       {"reps", file, "-n", "0"},
                                                       {"reps", file, "-n", "-5"},
                                                       {"reps", file, "-n", "99999999999999999999"},
                                                       {"reps", file, "--jobs", "-1"},
                                                       {"vary", file},
                                                       {"strip", file},
                                                       {"open", file, "--ui-scale", "120"}};
  for (const auto& call : calls) {
    checkRefusal(run(call), 2, {"gapsound: ", "; allowed: "});
  }
}

TEST_CASE("bad values of options that change a scenario") {
  const auto file = shipped("power-right-spill");
  checkRefusal(run({"rep", file, "--set", "players.SS.downhill_yps"}), 3, {"--set", "PATH=VALUE"});
  checkRefusal(run({"rep", file, "--set", "players.SS.downhill_yps=99"}), 3,
               {"/players/SS/downhill_yps", "1 to 11"});
  checkRefusal(run({"rep", file, "--set", "players.SS.shoes=12"}), 3, {"/players/SS/shoes", "unknown key"});
  checkRefusal(run({"rep", file, "--fault", "S"}), 3, {"--fault", "MAN=KIND"});
  checkRefusal(run({"rep", file, "--fault", "S=tired"}), 3, {"/faults/0/kind", "tired"});
  checkRefusal(run({"rep", file, "--fault", "S=scrape_wide:x"}), 3, {"--fault", "S=scrape_wide:x"});
  checkRefusal(run({"vary", file, "--over", "players.SS.depth_yd=9:3:1"}), 3, {"--over", "LO:HI:STEP"});
  checkRefusal(run({"vary", file, "--over", "players.SS.depth_yd=3:9:0"}), 3, {"--over", "STEP > 0"});
  checkRefusal(run({"vary", file, "--over", "players.SS.downhill_yps=3:30:1", "-n", "2"}), 3,
               {"/players/SS/downhill_yps", "1 to 11"});
  checkRefusal(run({"reps", file, "-n", "1"}), 2, {"-n", "2 to 10000000"});
  checkRefusal(run({"versus", file, "--b", "defense.front=D99"}), 3, {"/defense/front", "D99"});
  checkRefusal(run({"list", "shoes"}), 3, {"shoes", "formations"});
}

TEST_CASE("new writes nothing when a name is wrong") {
  const ScratchFolder folder;
  checkRefusal(
      run({"new", "--formation", "F99", "--scheme", "R01", "--front", "D01", "-o", folder.path("a.json")}), 3,
      {"formation", "F99", "F01"});
  CHECK(folder.names().empty());
}

TEST_CASE("check says in JSON what is wrong with a bad file") {
  const ScratchFolder folder;
  auto document = good();
  document["level"] = "varsity";
  const auto outcome = run({"check", folder.file("bad.json", document.dump()), "--json"});
  CHECK(outcome.code == 3);
  const auto answer = Json::parse(outcome.out);
  CHECK(answer["valid"] == false);
  REQUIRE(answer["problems"].size() == 1);
  CHECK(answer["problems"][0]["path"] == "/level");
  CHECK(answer["problems"][0]["message"].get<std::string>().find("varsity") != std::string::npos);
}
