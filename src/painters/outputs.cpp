#include "painters/outputs.hpp"

#include "painters/cairo_painter.hpp"
#include "painters/film.hpp"

namespace gapsound {

void writeStrip(const Tape& tape, const Theme& theme, const std::string& file) {
  writePicture(stripPage(tape, momentsForStrip(tape), handoutStrip()), theme, file);
}

void writeJudgingStrip(const Tape& tape, const Theme& theme, const std::string& file, int n) {
  writePicture(stripPage(tape, evenFrames(tape, n), judgingStrip()), theme, file);
}

void writeClip(const ClipScript& script, const Theme& theme, const std::string& file,
               const std::function<void(double)>& progress) {
  const std::vector<ClipFrame> frames = framesOf(script);
  const auto page = [&](int i) { return clipPage(script, frames[static_cast<std::size_t>(i)]); };
  writeFilm({static_cast<int>(frames.size()), script.fps, script.width, script.height, page, progress}, theme,
            file);
}

void writeChart(const ChartData& data, const Theme& theme, const std::string& file) {
  writePicture(chartPage(data), theme, file);
}

void writeBars(const BarData& data, const Theme& theme, const std::string& file) {
  writePicture(barPage(data), theme, file);
}

}  // namespace gapsound
