#pragma once
#include <algorithm>
#include <filesystem>
#include <string>
#include <vector>

#include "../shipped.hpp"
#include "io/changes.hpp"
#include "io/scenario_file.hpp"
#include "scenario/resolve.hpp"
#include "sim/play.hpp"

/// The shipped looks, resolved.
namespace gapsound::looks {

/// Stems of the scenarios in scenarios/, plans left out, in alphabetical order.
inline std::vector<std::string> names() {
  std::vector<std::string> found;
  for (const auto& entry : std::filesystem::directory_iterator(GAPSOUND_ROOT "/scenarios"))
    if (entry.path().extension() == ".json" && entry.path().filename().string().rfind("plan-", 0) != 0)
      found.push_back(entry.path().stem().string());
  std::sort(found.begin(), found.end());
  return found;
}

inline std::string fileOf(const std::string& name) { return GAPSOUND_ROOT "/scenarios/" + name + ".json"; }
inline Setup setupOf(const std::string& name, const std::vector<std::string>& sets = {}) {
  return resolve(readScenario(fileOf(name), Changes{sets, {}}), library(), model());
}

}  // namespace gapsound::looks
