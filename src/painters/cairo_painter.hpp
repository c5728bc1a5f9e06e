#pragma once
#include <cstdint>
#include <memory>
#include <span>
#include <string>
#include <vector>

#include "picture/display_list.hpp"
#include "picture/paper.hpp"
#include "picture/theme.hpp"

namespace gapsound {

/// Writers of a page. The file appears whole or not at all; same list, same bytes. No display needed.
/// All throw Error(noAccess) when a font is missing or the file cannot be written.
/// `scale`: pixels per page unit, (0, 8].
void writePng(const DisplayList& list, const Theme& theme, const std::string& file, double scale = 1.0);
/// The PNG itself; `what` stands for the file in messages.
[[nodiscard]] std::string pngBytes(const DisplayList& list, const Theme& theme, const std::string& what,
                                   double scale = 1.0);
/// A finished picture as PNG: rows from the top, 4 bytes a pixel (blue, green, red, unused).
void writePixels(std::span<std::uint8_t> pixels, int width, int height, const std::string& file);
/// The SVG document itself; `what` stands for the file in messages.
[[nodiscard]] std::string svgText(const DisplayList& list, const Theme& theme, const std::string& what);
void writeSvg(const DisplayList& list, const Theme& theme, const std::string& file);
/// One sheet of paper per list, fitted and centred, upright or lying as the list is.
[[nodiscard]] std::string pdfBytes(const std::vector<DisplayList>& pages, const Theme& theme,
                                   const std::string& what, Paper paper = Paper::letter);
void writePdf(const std::vector<DisplayList>& pages, const Theme& theme, const std::string& file,
              Paper paper = Paper::letter);
/// By the ending of the file: .png, .svg or .pdf; InputError for any other.
void writePicture(const DisplayList& list, const Theme& theme, const std::string& file);

/// Paints one frame after another into the same raw picture (4 bytes a pixel: blue, green, red, unused).
class FramePainter {
 public:
  /// Pixels, both even, as films ask for.
  FramePainter(int width, int height, const Theme& theme);
  ~FramePainter();
  /// Lists are scaled to the width. The bytes are valid until the next call.
  std::span<const std::uint8_t> paint(const DisplayList& list);

 private:
  struct Parts;
  std::unique_ptr<Parts> parts_;
};

}  // namespace gapsound
