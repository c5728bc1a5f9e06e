#include "painters/window/fonts.hpp"

#include <fontconfig/fontconfig.h>
#include <ft2build.h>
#include FT_FREETYPE_H

#include <cmath>
#include <memory>
#include <string>

#include "base/error.hpp"

namespace gapsound {
namespace {

constexpr std::array kEms{12.0, 14.0, 16.0, 19.0, 24.0, 34.0};  // page units
constexpr std::array<ImWchar, 9> kLetters{0x20, 0xFF, 0x2013, 0x2014, 0x2026, 0x2026, 0x2190, 0x2193, 0};

struct FaceName {
  const char* family;
  int weight;
};
constexpr std::array<FaceName, 4> kFaces{{{"Inter", FC_WEIGHT_REGULAR},
                                          {"Inter", FC_WEIGHT_BOLD},
                                          {"Roboto Condensed", FC_WEIGHT_REGULAR},
                                          {"Roboto Condensed", FC_WEIGHT_BOLD}}};

using Pattern = std::unique_ptr<FcPattern, decltype(&FcPatternDestroy)>;

std::string textIn(FcPattern* pattern, const char* object) {
  FcChar8* text = nullptr;
  if (FcPatternGetString(pattern, object, 0, &text) != FcResultMatch) return {};
  return reinterpret_cast<const char*>(text);
}

std::string fileOf(const FaceName& face) {
  const Pattern wanted(FcPatternCreate(), FcPatternDestroy);
  FcPatternAddString(wanted.get(), FC_FAMILY, reinterpret_cast<const FcChar8*>(face.family));
  FcPatternAddInteger(wanted.get(), FC_WEIGHT, face.weight);
  FcPatternAddInteger(wanted.get(), FC_SLANT, FC_SLANT_ROMAN);
  FcConfigSubstitute(nullptr, wanted.get(), FcMatchPattern);
  FcDefaultSubstitute(wanted.get());
  FcResult result = FcResultNoMatch;
  const Pattern found(FcFontMatch(nullptr, wanted.get(), &result), FcPatternDestroy);
  if (!found || textIn(found.get(), FC_FAMILY).rfind(face.family, 0) != 0) {
    throw Error(ExitCode::noAccess,
                std::string("font \"") + face.family +
                    "\" is not installed; packages fonts-inter and fonts-roboto-unhinted");
  }
  return textIn(found.get(), FC_FILE);
}

double heightPerEm(const std::string& file) {
  FT_Library library = nullptr;
  FT_Face face = nullptr;
  double height = 1.2;
  if (FT_Init_FreeType(&library) != 0) return height;
  if (FT_New_Face(library, file.c_str(), 0, &face) == 0) {
    height = static_cast<double>(face->ascender - face->descender) / face->units_per_EM;
    FT_Done_Face(face);
  }
  FT_Done_FreeType(library);
  return height;
}

std::size_t indexOf(FontRole role, bool bold) {
  return (role == FontRole::condensed ? 2U : 0U) + (bold ? 1U : 0U);
}

}  // namespace

void FontShelf::addFace(std::size_t index, double scale) {
  const std::string file = fileOf(kFaces[index]);
  Face face{heightPerEm(file), {}};
  ImFontConfig config;
  config.OversampleH = 2;
  config.PixelSnapH = true;
  for (const double size : kEms) {
    const double em = std::round(size * scale);
    ImFont* font = ImGui::GetIO().Fonts->AddFontFromFileTTF(
        file.c_str(), static_cast<float>(em * face.height_per_em), &config, kLetters.data());
    face.cuts.push_back({em, font});
  }
  faces_[index] = face;
}

void FontShelf::fill(double scale) {
  ImGui::GetIO().Fonts->Clear();
  for (std::size_t index = 0; index < faces_.size(); ++index) addFace(index, scale);
}

FontShelf::Choice FontShelf::choose(FontRole role, bool bold, double em) const {
  const Face& face = faces_[indexOf(role, bold)];
  const Cut* best = &face.cuts.back();
  for (auto cut = face.cuts.rbegin(); cut != face.cuts.rend(); ++cut) {
    if (cut->em + 0.25 >= em) best = &*cut;
  }
  return {best->font, static_cast<float>(em * face.height_per_em)};
}

}  // namespace gapsound
