#include "io/model_file.hpp"

#include <doctest/doctest.h>
#include <unistd.h>

#include <algorithm>
#include <cstdio>
#include <filesystem>
#include <nlohmann/json.hpp>

#include "base/error.hpp"
#include "io/assets.hpp"
#include "io/atomic_file.hpp"

using namespace gapsound;

namespace {

nlohmann::json shippedModel() { return nlohmann::json::parse(readWhole(assetPath("model.json"))); }

/// Path of the refusal of a changed model file, "" when it is accepted.
std::string refusalOf(const nlohmann::json& document) {
  const auto file =
      (std::filesystem::temp_directory_path() / ("gapsound-model-" + std::to_string(getpid()) + ".json"))
          .string();
  writeAtomically(file, document.dump());
  std::string path;
  try {
    static_cast<void>(readModel(file));
  } catch (const InputError& e) {
    path = e.path();
  }
  std::remove(file.c_str());
  return path;
}

}  // namespace

TEST_CASE("the shipped constants are complete") {
  const auto model = readModel(assetPath("model.json"));
  const auto document = shippedModel();
  for (const ModelField& field : kModelFields) {
    INFO(field.name);
    CHECK(model.*field.value == document["constants"][std::string(field.name)]["value"].get<double>());
  }
}

TEST_CASE("a wrong model file is refused at the place where it is wrong") {
  const std::string first(kModelFields.front().name);
  auto document = shippedModel();
  CHECK(refusalOf(document).empty());
  SUBCASE("missing") {
    document["constants"].erase(first);
    CHECK(refusalOf(document) == "/constants/" + first);
  }
  SUBCASE("unknown") {
    document["constants"]["no_such_constant"] = document["constants"][first];
    CHECK(refusalOf(document) == "/constants/no_such_constant");
  }
  SUBCASE("outside its range") {
    document["constants"][first]["value"] = 1e9;
    CHECK(refusalOf(document) == "/constants/" + first + "/value");
  }
  SUBCASE("without a source") {
    document["constants"][first].erase("source");
    CHECK(refusalOf(document) == "/constants/" + first + "/source");
  }
}

TEST_CASE("other values are written into the file's own layout") {
  const std::string before = readWhole(assetPath("model.json"));
  const std::string name(kModelFields.back().name);
  const ConstantRange range = constantRanges(assetPath("model.json")).at(name);
  const double value = 0.5 * (range.low + range.high) + 0.001;
  const std::string after = withValues(before, {{name, value}});
  auto document = nlohmann::json::parse(before);
  document["constants"][name]["value"] = value;
  CHECK(nlohmann::json::parse(after) == document);
  CHECK(std::count(after.begin(), after.end(), '\n') == std::count(before.begin(), before.end(), '\n'));
  CHECK(withValues(before, {}) == before);
  CHECK_THROWS_AS(static_cast<void>(withValues(before, {{"no_such_constant", 1.0}})), InputError);
}
