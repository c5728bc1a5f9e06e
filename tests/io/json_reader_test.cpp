#include <doctest/doctest.h>

#include <nlohmann/json.hpp>

#include "base/error.hpp"
#include "io/json_reader.hpp"

using namespace gapsound;

namespace {

template <class F>
InputError refusal(F action) {
  try {
    action();
  } catch (const InputError& e) {
    return e;
  }
  FAIL("not refused");
  return InputError("", "", "", "");
}

const nlohmann::json kDocument = nlohmann::json::parse(
    R"({"speed": 6.5, "down": 2, "name": "x", "loud": true, "list": [1, "a"], "deep": {"a/b": "no"}})");

}  // namespace

TEST_CASE("values are read by type, missing optional ones are empty") {
  JsonReader reader("f.json", kDocument);
  CHECK(reader.number("speed", 0, 10) == 6.5);
  CHECK(reader.whole("down", 1, 4) == 2);
  CHECK(reader.text("name") == "x");
  CHECK(reader.flag("loud"));
  CHECK(reader.child("list").items().size() == 2);
  CHECK_FALSE(reader.maybeNumber("absent"));
  static_cast<void>(reader.child("deep"));
  CHECK_NOTHROW(reader.finish());
}

TEST_CASE("wrong types and ranges are told with path, value and what is allowed") {
  JsonReader reader("f.json", kDocument);
  const InputError range = refusal([&] { static_cast<void>(reader.number("speed", 0, 5)); });
  CHECK(std::string(range.what()) == "f.json: /speed: 6.5; allowed: a number 0 to 5");
  CHECK(refusal([&] { static_cast<void>(reader.number("name")); }).value() == "\"x\"");
  CHECK(refusal([&] { static_cast<void>(reader.whole("speed", 0, 9)); }).allowed() ==
        "a whole number 0 to 9");
  CHECK(refusal([&] { static_cast<void>(reader.text("absent")); }).value() == "missing");
  CHECK(refusal([&] { static_cast<void>(reader.child("list").items()[1].asNumber()); }).path() == "/list/1");
  CHECK(refusal([&] {
          static_cast<void>(reader.child("deep").word("a/b", {"yes", "maybe"}));
        }).path() == "/deep/a~1b");
  CHECK(refusal([&] { static_cast<void>(reader.child("name").items()); }).allowed() == "a list");
}

TEST_CASE("unknown keys are refused with the keys that were meant") {
  JsonReader reader("f.json", kDocument);
  for (const char* key : {"speed", "down", "name", "loud", "list"}) static_cast<void>(reader.child(key));
  const InputError error = refusal([&] { reader.finish(); });
  CHECK(error.path() == "/deep");
  CHECK(error.value() == "unknown key");
  CHECK(error.allowed().find("\"speed\"") != std::string::npos);
}

TEST_CASE("a broken document and a missing file have their own errors") {
  CHECK(refusal([] { static_cast<void>(parsedJson("f.json", "{\"a\": ")); }).allowed() == "complete JSON");
  CHECK_THROWS_AS(static_cast<void>(readJson("/nowhere/f.json")), Error);
}
