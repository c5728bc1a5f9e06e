#include "io/assets.hpp"

#include <cstdlib>
#include <filesystem>

namespace gapsound {
namespace {

std::filesystem::path assetFolder() {
  if (const char* named = std::getenv("GAPSOUND_ASSETS")) return named;
  std::error_code failed;
  const auto program = std::filesystem::read_symlink("/proc/self/exe", failed);
  if (!failed) {
    auto installed = program.parent_path().parent_path() / "share/gapsound/assets";
    if (std::filesystem::is_directory(installed, failed)) return installed;
  }
  return GAPSOUND_SOURCE_ASSETS;
}

}  // namespace

std::string assetPath(const std::string& relative) { return (assetFolder() / relative).string(); }

std::string scenarioFolder() { return (assetFolder().parent_path() / "scenarios").string(); }

}  // namespace gapsound
