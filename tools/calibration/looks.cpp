#include "looks.hpp"

#include <fmt/core.h>
#include <fnmatch.h>

#include <algorithm>
#include <filesystem>

#include "base/error.hpp"
#include "io/library.hpp"
#include "io/scenario_file.hpp"
#include "scenario/resolve.hpp"

using namespace gapsound;

namespace calibration {
namespace {

CardLook madeLook(const char* formation, const char* front, const char* scheme, const char* direction,
                  const char* structure, const char* shell) {
  CardLook look;
  look.name =
      std::string(formation) + " " + front + " " + scheme + " " + direction + " " + structure + " " + shell;
  look.shipped = false;
  look.scenario.source = look.name;
  look.scenario.title = look.name;
  look.scenario.level = Level::pro;
  look.scenario.offense.formation = formation;
  look.scenario.offense.scheme = scheme;
  look.scenario.offense.direction = direction;
  look.scenario.defense.front = front;
  look.scenario.defense.shell = shell;
  look.scenario.defense.structure = structure;
  return look;
}

std::vector<CardLook> madeLooks() {
  return {madeLook("F01", "D03", "R01", "right", "spill", "quarters"),
          madeLook("F03", "D01", "R02", "left", "spill", "quarters"),
          madeLook("F07", "D04", "R03", "right", "box", "2-read"),
          madeLook("F10", "D01", "R01", "right", "spill", "cover 3 sky"),
          madeLook("F13", "D06", "R04", "right", "spill", "quarters"),
          madeLook("F10", "D03", "R04", "left", "spill", "cover 1"),
          madeLook("F01", "D03", "R03", "left", "spill", "quarters"),
          madeLook("F03", "D06", "R01", "left", "box", "quarters"),
          madeLook("F07", "D03", "R02", "right", "spill", "cover 3 sky"),
          madeLook("F13", "D03", "R03", "left", "box", "quarters")};
}

}  // namespace

std::vector<CardLook> looksFor(const Options& options) {
  std::vector<CardLook> looks;
  std::vector<std::filesystem::path> files;
  for (const auto& entry : std::filesystem::directory_iterator(options.scenarios))
    if (entry.path().extension() == ".json") files.push_back(entry.path());
  std::sort(files.begin(), files.end());
  for (const auto& file : files) {
    if (file.stem().string().starts_with("plan-")) continue;
    const Scenario scenario = readScenario(file.string());
    if (std::find(scenario.tags.begin(), scenario.tags.end(), "sound") != scenario.tags.end())
      looks.push_back({file.stem().string(), scenario, true});
  }
  for (CardLook& look : madeLooks()) looks.push_back(std::move(look));
  std::erase_if(
      looks, [&](const CardLook& look) { return fnmatch(options.looks.c_str(), look.name.c_str(), 0) != 0; });
  return looks;
}

std::optional<Setup> resolvedOrTold(const CardLook& look, const Ground& ground) {
  try {
    return resolve(look.scenario, ground.library, ground.model);
  } catch (const InputError& error) {
    fmt::print(stderr, "left out: {}\n", error.what());
    return {};
  }
}

}  // namespace calibration
