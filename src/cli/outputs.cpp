#include "cli/outputs.hpp"

#include "io/atomic_file.hpp"
#include "io/theme_file.hpp"
#include "painters/cairo_painter.hpp"

namespace gapsound {

void requireFiles(const OutputFiles& files) {
  for (const auto* file : {&files.csv, &files.png, &files.svg, &files.pdf})
    if (!file->empty()) requireWritable(*file);
}

void writeFiles(const OutputFiles& files, const std::string& table,
                const std::function<DisplayList()>& page) {
  std::vector<FileContent> contents;
  if (!files.csv.empty()) contents.push_back({files.csv, table});
  if (!files.png.empty() || !files.svg.empty() || !files.pdf.empty()) {
    const Theme theme = shippedTheme("paper");
    const DisplayList drawn = page();
    if (!files.png.empty()) contents.push_back({files.png, pngBytes(drawn, theme, files.png)});
    if (!files.svg.empty()) contents.push_back({files.svg, svgText(drawn, theme, files.svg)});
    if (!files.pdf.empty()) contents.push_back({files.pdf, pdfBytes({drawn}, theme, files.pdf)});
  }
  writeAtomically(contents);
}

}  // namespace gapsound
