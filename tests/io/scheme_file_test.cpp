// Schemes as files: what the schema allows, and a coach's own variant by editing JSON alone.
#include <doctest/doctest.h>
#include <unistd.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>
#include <string>

#include "base/error.hpp"
#include "io/assets.hpp"
#include "io/atomic_file.hpp"
#include "io/changes.hpp"
#include "io/library.hpp"
#include "schema_check.hpp"

using namespace gapsound;

namespace {

using Json = nlohmann::json;
namespace fs = std::filesystem;

Json shipped() { return Json::parse(readWhole(assetPath("library/schemes.json"))); }

bool accepts(const Json& document) { return passesSchema(document, "schemes"); }

/// A copy of the shipped assets with this schemes.json; removed at the end.
class OwnAssets {
 public:
  explicit OwnAssets(const Json& schemes)
      : dir_(fs::temp_directory_path() / ("gapsound-own-schemes-" + std::to_string(getpid()))) {
    fs::remove_all(dir_);
    fs::create_directories(dir_);
    fs::copy(assetPath("library"), dir_ / "library", fs::copy_options::recursive);
    std::ofstream(dir_ / "library" / "schemes.json") << schemes.dump();
  }
  ~OwnAssets() { fs::remove_all(dir_); }
  OwnAssets(const OwnAssets&) = delete;
  OwnAssets& operator=(const OwnAssets&) = delete;
  [[nodiscard]] Library library() const { return readLibrary(dir_.string()); }

 private:
  fs::path dir_;
};

bool loads(const Json& document) {
  try {
    static_cast<void>(OwnAssets(document).library());
    return true;
  } catch (const InputError&) {
    return false;
  }
}

Json& power(Json& document) { return document["schemes"][0]; }

}  // namespace

TEST_CASE("the schema accepts the shipped schemes") { CHECK(accepts(shipped())); }

TEST_CASE("schema and loader refuse the same bad schemes") {
  const std::vector<std::string> bad = {
      "schemes.0.jobs.C=[\"bakc\"]",
      "schemes.0.jobs.C=[\"climb b7\"]",
      "schemes.0.jobs.C=back",
      "schemes.0.jobs.C=[{\"at\":\"b1\"}]",
      "schemes.0.jobs.C=[{\"do\":\"wrap\",\"pull\":\"long\"}]",
      "schemes.0.jobs.C=[{\"do\":\"wrap\",\"depth\":9}]",
      "schemes.0.jobs.C=[{\"do\":\"climb\",\"show\":\"off\"}]",
      "schemes.0.reserves=[\"nose\"]",
      "schemes.0.reserves=[{\"man\":\"edge\"}]",
      "schemes.0.carriers=T",
      "schemes.0.paths.gun={\"mesh\":[0],\"mesh_s\":1}",
      "schemes.0.paths.gun={\"mesh\":[0,-4]}",
      "schemes.0.aim_x=wide",
      "schemes.0.patient=1",
      "schemes.0.snaps={\"gun\":\"shotgun\"}",
      "schemes.0.read={\"man\":\"edge\",\"keeps_if\":\"waits\",\"keep_aim_x\":2}",
      "schemes.0.variants.own={\"aim\":2}",
      "schemes.0.line=5"};
  for (const auto& change : bad) {
    INFO(change);
    Json document = shipped();
    applyChanges(document, {{change}, {}});
    CHECK_FALSE(accepts(document));
    CHECK_FALSE(loads(document));
  }
}

TEST_CASE("a coach's own variant is JSON and nothing else") {
  Json document = shipped();
  power(document)["variants"]["fold"] = {
      {"jobs", {{"PST", {"down", {{"do", "lead"}, {"at", "b2"}, {"delay_s", 0.2}}}}}},
      {"parts", {{"kicker", {"H", "F"}}}},
      {"aim_x", 1.9}};
  CHECK(accepts(document));
  const Library library = OwnAssets(document).library();
  const Scheme* scheme = findScheme(library, "power");
  REQUIRE(scheme != nullptr);
  const auto names = variantNames(*scheme);
  CHECK(std::find(names.begin(), names.end(), "fold") != names.end());
  CHECK(scheme->variants.at("fold").jobs.at("PST").size() == 2);
  CHECK(scheme->variants.at("fold").parts.at("kicker").front() == "H");
}

TEST_CASE("a misspelt rule word is answered with the nearest known ones") {
  Json document = shipped();
  power(document)["jobs"]["C"] = {"combo_uot"};
  try {
    static_cast<void>(OwnAssets(document).library());
    FAIL("not refused");
  } catch (const InputError& error) {
    CHECK(error.path() == "/schemes/0/jobs/C/0");
    CHECK(error.allowed().find("combo_out") != std::string::npos);
  }
}
