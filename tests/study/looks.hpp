#pragma once
#include <string>

#include "../shipped.hpp"
#include "io/scenario_file.hpp"
#include "scenario/resolve.hpp"

namespace gapsound::looks {

inline Setup shipped(const std::string& name) {
  return resolve(readScenario(std::string(GAPSOUND_ROOT) + "/scenarios/" + name + ".json"), library(),
                 model());
}

}  // namespace gapsound::looks
