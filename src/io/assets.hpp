#pragma once
#include <string>

namespace gapsound {

/// Path of a file in the assets folder, "library/fits.json". The folder is the one named by the
/// environment variable GAPSOUND_ASSETS, else ../share/gapsound/assets beside the program, else the
/// source tree's. Not checked for existence.
[[nodiscard]] std::string assetPath(const std::string& relative);
/// The folder of shipped scenarios, beside the assets folder.
[[nodiscard]] std::string scenarioFolder();

}  // namespace gapsound
