#include "io/defense_file.hpp"

#include <doctest/doctest.h>
#include <unistd.h>

#include <filesystem>
#include <functional>

#include "base/error.hpp"
#include "io/assets.hpp"
#include "io/atomic_file.hpp"
#include "io/library.hpp"
#include "io/model_file.hpp"
#include "io/plan_file.hpp"
#include "io/scenario_file.hpp"
#include "scenario/resolve.hpp"
#include "schema_check.hpp"

using namespace gapsound;
namespace fs = std::filesystem;

namespace {

using Json = nlohmann::json;

/// A folder with a defense in it and a scenario that names it.
class Folder {
 public:
  Folder() : path_(fs::temp_directory_path() / ("gapsound-defense-" + std::to_string(::getpid()))) {
    fs::create_directories(path_ / "ours");
  }
  ~Folder() { fs::remove_all(path_); }
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;
  std::string write(const std::string& name, const std::string& text) const {
    writeAtomically((path_ / name).string(), text);
    return (path_ / name).string();
  }
  [[nodiscard]] std::string at(const std::string& name) const { return (path_ / name).string(); }

 private:
  fs::path path_;
};

const char* const kOurs = R"({"gapsound": 1, "title": "ours", "front": "D05", "shell": "cover 3 sky",
  "call": {"structure": "box", "movement": "none", "mix": {"slant_share": 0.5}}, "fit_off": {"level3": "call"}})";

std::string lookWith(const std::string& defense) {
  return R"({"gapsound": 1, "title": "look", "offense": {"formation": "F01", "scheme": "R01"}, "defense": )" +
         defense + "}";
}

bool accepts(const Json& document) { return passesSchema(document, "defense"); }

InputError refusal(const std::function<void()>& work) {
  try {
    work();
  } catch (const InputError& error) {
    return error;
  }
  FAIL("not refused");
  return InputError("", "", "", "");
}

}  // namespace

TEST_CASE("a defense in a file of its own is the defense of every scenario that names it") {
  const Folder folder;
  folder.write("ours/base.json", kOurs);
  const auto file = folder.write("look.json", lookWith(R"({"file": "ours/base.json"})"));
  const Scenario s = readScenario(file);
  CHECK(s.defense.front == "D05");
  CHECK(s.defense.shell == "cover 3 sky");
  CHECK(s.defense.structure == "box");
  CHECK(s.defense.mix->slant_share == 0.5);
  CHECK(s.defense.fit_off[2] == FitOff::call);
}

TEST_CASE("what the scenario and the command line say goes over the file, key by key") {
  const Folder folder;
  folder.write("ours/base.json", kOurs);
  const auto file =
      folder.write("look.json", lookWith(R"({"file": "ours/base.json", "call": {"movement": "other"}})"));
  const Scenario s = readScenario(file, {{"defense.shell=quarters", "defense.structure=spill"}, {}});
  CHECK(s.defense.front == "D05");
  CHECK(s.defense.shell == "quarters");
  CHECK(s.defense.structure == "spill");
  CHECK(s.defense.movement == "other");
  CHECK(s.defense.mix->slant_share == 0.5);
}

TEST_CASE("saved, the file stays named and only what differs is written, exported, all of it is") {
  const Folder folder;
  folder.write("ours/base.json", kOurs);
  Scenario s = readScenario(folder.write("look.json", lookWith(R"({"file": "ours/base.json"})")));
  s.defense.structure = "spill";
  s.source = folder.at("ours/other.json");  // saved elsewhere
  const auto saved = Json::parse(toFile(s));
  CHECK(saved["defense"] == Json::parse(R"({"file": "base.json", "call": {"structure": "spill"}})"));
  writeAtomically(s.source, toFile(s));
  CHECK(toJson(readScenario(s.source)) == toJson(s));
  CHECK(Json::parse(toJson(s))["defense"]["front"] == "D05");
  CHECK_FALSE(Json::parse(toJson(s))["defense"].contains("file"));
}

TEST_CASE("a fault in the defense's file is told of that file, one in the scenario of the scenario") {
  const Folder folder;
  const auto look = [&](const char* defense) { return folder.write("look.json", lookWith(defense)); };
  folder.write("ours/base.json", R"({"gapsound": 1, "front": "D05", "call": {"structure": "spil"}})");
  const auto named = look(R"({"file": "ours/base.json"})");
  const InputError wrong = refusal([&] { static_cast<void>(readScenario(named)); });
  CHECK(wrong.file() == folder.at("ours/base.json"));
  CHECK(wrong.path() == "/call/structure");
  folder.write("ours/base.json", R"({"gapsound": 1, "front": "D05", "tempo": 1})");
  CHECK(refusal([&] { static_cast<void>(readScenario(named)); }).path() == "/tempo");
  folder.write("ours/base.json", kOurs);
  const InputError own = refusal([&] {
    static_cast<void>(readScenario(look(R"({"file": "ours/base.json", "call": {"key": "both"}})")));
  });
  CHECK(own.file() == folder.at("look.json"));
  CHECK(own.path() == "/defense/call/key");
  CHECK_THROWS_AS(static_cast<void>(readScenario(look(R"({"file": "nowhere.json"})"))), Error);
  CHECK(refusal([&] { static_cast<void>(readScenario(look(R"({"file": ""})"))); }).path() == "/defense/file");
}

TEST_CASE("an unknown front of the file is told of that file with the nearest one") {
  const Folder folder;
  folder.write("ours/base.json", R"({"gapsound": 1, "front": "D55"})");
  const Scenario s = readScenario(folder.write("look.json", lookWith(R"({"file": "ours/base.json"})")));
  const Library library = readLibrary(assetPath(""));
  const Model model = readModel(assetPath("model.json"));
  const InputError e = refusal([&] { static_cast<void>(resolve(s, library, model)); });
  CHECK(e.file() == folder.at("ours/base.json"));
  CHECK(e.path() == "/front");
  CHECK(e.allowed().find("D05") != std::string::npos);
}

TEST_CASE("a call of a plan may be a file, too") {
  const Folder folder;
  folder.write("ours/base.json", kOurs);
  const auto plan = readPlan(folder.write("plan.json", R"({"gapsound": 1, "title": "week",
    "runs": [{"formation": "F01", "scheme": "R01"}],
    "calls": [{"file": "ours/base.json", "name": "Base"}, {"file": "ours/base.json", "shell": "quarters"}]})"));
  CHECK(plan.calls[0].name == "Base");
  CHECK(plan.calls[0].defense.front == "D05");
  CHECK(plan.calls[1].defense.shell == "quarters");
}

TEST_CASE("the schema of defenses accepts the shipped ones and refuses what the loader refuses") {
  for (const auto& entry : fs::directory_iterator(std::string(GAPSOUND_ROOT) + "/scenarios/defenses")) {
    INFO(entry.path().string());
    CHECK(accepts(Json::parse(readWhole(entry.path().string()))));
    CHECK_NOTHROW(static_cast<void>(readDefenseFile(entry.path().string())));
  }
  const Folder folder;
  CHECK(accepts(Json::parse(kOurs)));
  for (const char* change : {"gapsound=2", "front=null", "front=7", "tempo=1", "call.structure=spil",
                             "fit_off=nobody", "call.mix={\"slant_share\":2}", "title=4"}) {
    INFO(change);
    auto document = Json::parse(kOurs);
    applyChanges(document, {{change}, {}});
    CHECK_FALSE(accepts(document));
    const auto file = folder.write("bad.json", document.dump());
    CHECK_THROWS_AS(static_cast<void>(readDefenseFile(file)), InputError);
  }
}
