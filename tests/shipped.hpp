#pragma once
#include "io/assets.hpp"
#include "io/library.hpp"
#include "io/model_file.hpp"

/// What the project ships, read once.
namespace gapsound::looks {

inline const Model& model() {
  static const Model shipped = readModel(assetPath("model.json"));
  return shipped;
}
inline const Library& library() {
  static const Library shipped = readLibrary(assetPath(""));
  return shipped;
}

}  // namespace gapsound::looks
