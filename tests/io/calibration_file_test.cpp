#include "io/calibration_file.hpp"

#include <doctest/doctest.h>
#include <unistd.h>

#include <cstdio>
#include <filesystem>
#include <nlohmann/json.hpp>

#include "base/error.hpp"
#include "io/assets.hpp"
#include "io/atomic_file.hpp"

using namespace gapsound;

namespace {

/// Path of the refusal of a changed set, "" when it is accepted.
std::string refusalOf(const nlohmann::json& document) {
  const auto file =
      (std::filesystem::temp_directory_path() / ("gapsound-set-" + std::to_string(getpid()) + ".json"))
          .string();
  writeAtomically(file, document.dump());
  std::string path;
  try {
    static_cast<void>(readCalibrationSet(file));
  } catch (const InputError& e) {
    path = e.path();
  }
  std::remove(file.c_str());
  return path;
}

}  // namespace

TEST_CASE("a wrong calibration set is refused at the place where it is wrong") {
  auto document = nlohmann::json::parse(readWhole(assetPath("calibration.json")));
  CHECK(refusalOf(document).empty());
  SUBCASE("a kind of run that is none") {
    document["looks"][2]["kind"] = "option";
    CHECK(refusalOf(document) == "/looks/2/kind");
  }
  SUBCASE("a half that is none") {
    document["looks"][0]["half"] = "both";
    CHECK(refusalOf(document) == "/looks/0/half");
  }
  SUBCASE("a share above one") {
    document["box"]["7"] = 38;
    CHECK(refusalOf(document) == "/box/7");
  }
  SUBCASE("an unknown key") {
    document["looks"][0]["weight"] = 2;
    CHECK(refusalOf(document) == "/looks/0/weight");
  }
}
