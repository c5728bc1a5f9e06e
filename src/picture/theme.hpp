#pragma once
#include <array>
#include <cstdint>
#include <string>
#include <vector>

#include "picture/styles.hpp"

namespace gapsound {

/// sRGB, alpha 0 = nothing is drawn.
struct Colour {
  std::uint8_t r = 0, g = 0, b = 0, a = 0;
  bool operator==(const Colour&) const = default;
};

/// sans for sentences, condensed for labels and figures.
enum class FontRole : std::uint8_t { sans, condensed };

struct Style {
  Colour stroke;  // lines and text
  Colour fill;
  double width = 1.0;        // of the stroke, page units
  std::vector<double> dash;  // on, off, ... in page units; empty: unbroken
  FontRole font = FontRole::sans;
  bool bold = false;
  bool tabular = false;  // figures of equal width
};

/// How everything looks. Plain values, read from assets/themes/NAME.json.
struct Theme {
  std::string name;
  std::array<Style, kStyles> styles;
  [[nodiscard]] const Style& operator[](StyleId id) const { return styles[static_cast<std::size_t>(id)]; }
};

}  // namespace gapsound
