#pragma once
#include <string>

#include "io/assets.hpp"
#include "io/library.hpp"
#include "io/model_file.hpp"
#include "io/scenario_file.hpp"
#include "scenario/resolve.hpp"

namespace gapsound::looks {

inline const Model& model() {
  static const Model read = readModel(assetPath("model.json"));
  return read;
}
inline const Library& library() {
  static const Library read = readLibrary(assetPath(""));
  return read;
}
inline Setup shipped(const std::string& name) {
  return resolve(readScenario(std::string(GAPSOUND_ROOT) + "/scenarios/" + name + ".json"), library(),
                 model());
}

}  // namespace gapsound::looks
