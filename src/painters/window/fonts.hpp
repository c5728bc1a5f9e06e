#pragma once
#include <imgui.h>

#include <array>
#include <vector>

#include "picture/theme.hpp"

namespace gapsound {

/// The two families of the pictures, regular and bold, drawn into ImGui's atlas at several sizes.
class FontShelf {
 public:
  /// Fills the atlas of the current ImGui context. `scale` is pixels a page unit. Throws Error(noAccess)
  /// when a font is not installed.
  void fill(double scale);
  struct Choice {
    ImFont* font = nullptr;
    float size = 0.0F;  // what ImGui calls the size of a font, pixels
  };
  /// The font whose em is `em` pixels high.
  [[nodiscard]] Choice choose(FontRole role, bool bold, double em) const;

 private:
  struct Cut {
    double em = 0.0;
    ImFont* font = nullptr;
  };
  struct Face {
    double height_per_em = 1.2;  // ascender to descender
    std::vector<Cut> cuts;       // ascending
  };
  void addFace(std::size_t index, double scale);

  std::array<Face, 4> faces_;
};

}  // namespace gapsound
