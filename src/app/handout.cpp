#include "app/handout.hpp"

#include <fmt/format.h>

#include <filesystem>

#include "base/error.hpp"
#include "io/theme_file.hpp"
#include "painters/outputs.hpp"

namespace gapsound {
namespace {

bool isFilm(const std::string& file) {
  const std::string ending = std::filesystem::path(file).extension().string();
  return ending == ".mp4" || ending == ".gif";
}

ClipScript scriptFor(const Rep& rep, const RepPtr& held, const std::string& difference) {
  if (!held) return clipOf(rep.tape);
  return clipOf(held->tape, "held", rep.tape, "now", difference);
}

}  // namespace

std::string writeHandout(const RepPtr& rep, const RepPtr& held, const std::string& difference,
                         const std::string& file) {
  try {
    if (isFilm(file)) {
      writeClip(scriptFor(*rep, held, difference), shippedTheme("evening"), file);
    } else {
      writeStrip(rep->tape, shippedTheme("paper"), file);
    }
  } catch (const Error& error) {
    return error.what();
  }
  return file + " written";
}

std::string handoutName(const std::string& look_file, std::uint64_t seed, const std::string& ending) {
  const std::string stem = look_file.empty() ? "new-look" : std::filesystem::path(look_file).stem().string();
  return fmt::format("{}-rep-{}{}", stem, seed, ending);
}

}  // namespace gapsound
