#pragma once
#include <functional>
#include <string>

#include "picture/display_list.hpp"
#include "picture/theme.hpp"

namespace gapsound {

/// A film as numbered pages, all of the same size.
struct Reel {
  int frames = 0;  // > 0
  int fps = 25;
  double width = 1280.0, height = 720.0;      // page units, even
  std::function<DisplayList(int)> page;       // called for 0 .. frames - 1, in order; for GIF in two rounds
  std::function<void(double)> progress = {};  // share painted, [0, 1]; may be empty
};

/// Encodes with the program ffmpeg, run without a shell. By the ending: .mp4 is H.264 in yuv420p with its
/// index in front, at the film's size; .gif has every second frame at three quarters of the size. The file
/// appears whole or not at all; same pages, same bytes. InputError for another ending, Error(noAccess)
/// when ffmpeg or a font is missing or the file cannot be written.
void writeFilm(const Reel& film, const Theme& theme, const std::string& file);

}  // namespace gapsound
