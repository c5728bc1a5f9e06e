#include "cli/outputs.hpp"

#include "io/atomic_file.hpp"
#include "io/theme_file.hpp"
#include "painters/cairo_painter.hpp"

namespace gapsound {

void requireFiles(const OutputFiles& files) {
  for (const auto* file : {&files.csv, &files.png, &files.svg, &files.pdf})
    if (!file->empty()) requireWritable(*file);
}

void writeTable(const OutputFiles& files, const std::string& table) {
  if (!files.csv.empty()) writeAtomically(files.csv, table);
}

void writePictures(const OutputFiles& files, const DisplayList& page) {
  const Theme theme = shippedTheme("paper");
  if (!files.png.empty()) writePng(page, theme, files.png);
  if (!files.svg.empty()) writeSvg(page, theme, files.svg);
  if (!files.pdf.empty()) writePdf({page}, theme, files.pdf);
}

}  // namespace gapsound
