#include <doctest/doctest.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <functional>
#include <nlohmann/json.hpp>

#include "base/error.hpp"
#include "io/json_reader.hpp"
#include "io/library.hpp"

using namespace gapsound;
namespace fs = std::filesystem;

namespace {

const std::string kAssets = GAPSOUND_ROOT "/assets";

/// A copy of the library with one file changed.
class Changed {
 public:
  Changed(const std::string& name, const std::function<void(nlohmann::json&)>& change)
      : folder_(fs::temp_directory_path() /
                ("library-test-" + std::to_string(getpid()) + "-" + std::to_string(count_++))) {
    fs::create_directories(folder_);
    fs::copy(kAssets + "/library", folder_ / "library", fs::copy_options::recursive);
    auto document = readJson(kAssets + "/library/" + name);
    change(document);
    std::ofstream(folder_ / "library" / name) << document;
  }
  ~Changed() { fs::remove_all(folder_); }

  [[nodiscard]] InputError refusal() const {
    try {
      static_cast<void>(readLibrary(folder_.string()));
    } catch (const InputError& e) {
      return e;
    }
    FAIL("not refused");
    return InputError("", "", "", "");
  }

 private:
  static inline int count_ = 0;
  fs::path folder_;
};

}  // namespace

TEST_CASE("the shipped library is whole") {
  const Library library = readLibrary(kAssets);
  CHECK(library.formations.size() == 17);
  CHECK(library.fronts.size() == 12);
  CHECK(library.shells.size() == 8);
  for (const char* id : {"R01", "R02", "R03", "R04"}) CHECK(findScheme(library, id) != nullptr);
  for (const Formation& formation : library.formations) CHECK(formation.men.size() == 11);
  for (const Front& front : library.fronts) CHECK(findFormation(library, front.drawn_against) != nullptr);
  CHECK(findShell(library, "2-READ / palms")->id == "2-read");
  CHECK(variantNames(*findScheme(library, "power")).front() == "base");
  CHECK(movementNames(*findFront(library, "D06")).size() == 4);
  CHECK(findFront(library, "D00") == nullptr);
}

TEST_CASE("a bad library entry is told by file, path, value and what is allowed") {
  const InputError technique =
      Changed("fronts.json", [](auto& d) { d["fronts"][0]["men"][0]["tech"] = "11+"; }).refusal();
  CHECK(technique.path() == "/fronts/0/men/0/tech");
  CHECK(technique.file().find("fronts.json") != std::string::npos);
  CHECK(Changed("fronts.json", [](auto& d) { d["fronts"][0]["men"].erase(0); }).refusal().path() ==
        "/fronts/0/men");
  CHECK(Changed("formations.json", [](auto& d) { d["formations"][0]["men"]["K"] = 1; }).refusal().path() ==
        "/formations/0/men/K");
  CHECK(
      Changed("schemes.json", [](auto& d) { d["schemes"][0]["jobs"]["C"][0] = "tickle"; }).refusal().path() ==
      "/schemes/0/jobs/C/0");
  CHECK(Changed("schemes.json", [](auto& d) { d["schemes"][0]["jobs"]["C"][0] = "climb b9"; })
            .refusal()
            .path() == "/schemes/0/jobs/C/0");
  CHECK(Changed("bodies.json", [](auto& d) { d["groups"]["guard"]["tau"] = 9; }).refusal().path() ==
        "/groups/guard/tau");
  CHECK(Changed("fits.json", [](auto& d) { d["by_end"]["spill"]["kicked"]["first"] = "over top"; })
            .refusal()
            .path() == "/by_end/spill/kicked/first");
  CHECK(Changed("shells.json", [](auto& d) { d["shells"][0]["colour"] = "red"; }).refusal().value() ==
        "unknown key");
  CHECK(Changed("calls.json", [](auto& d) { d["mix"]["slant_share"] = 2; }).refusal().allowed() ==
        "a number 0 to 1");
}
