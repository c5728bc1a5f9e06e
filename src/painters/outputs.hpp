#pragma once
#include <functional>
#include <string>

#include "picture/chart.hpp"
#include "picture/theme.hpp"
#include "teach/clip.hpp"
#include "teach/strip.hpp"

namespace gapsound {

// What a coach hands out, in one call each. The ending of the file says the kind: .png, .svg, .pdf for pages,
// .mp4, .gif for clips. Every file appears whole or not at all. All throw InputError for another ending and
// Error(noAccess) when the file cannot be written or a font or ffmpeg is missing.

/// 6 to 8 frames of the rep at the moments that mattered.
void writeStrip(const Tape& tape, const Theme& theme, const std::string& file);
/// n evenly spaced frames of the box, for judging whether the rep looks right.
void writeJudgingStrip(const Tape& tape, const Theme& theme, const std::string& file, int n = 12);
void writeClip(const ClipScript& script, const Theme& theme, const std::string& file,
               const std::function<void(double)>& progress = {});
void writeChart(const ChartData& data, const Theme& theme, const std::string& file);
void writeBars(const BarData& data, const Theme& theme, const std::string& file);

}  // namespace gapsound
