#include "painters/film.hpp"

#include <fmt/format.h>

#include <cerrno>
#include <cmath>
#include <cstdlib>
#include <cstring>
#include <filesystem>

#include "base/error.hpp"
#include "io/atomic_file.hpp"
#include "painters/cairo_painter.hpp"
#include "painters/encoder.hpp"

namespace gapsound {
namespace {

namespace fs = std::filesystem;
using Words = std::vector<std::string>;

constexpr double kGifScale = 0.75;

/// A folder beside the wanted file, where ffmpeg works; it goes away with everything not moved out.
class Workshop {
 public:
  explicit Workshop(const fs::path& wanted) : wanted_(wanted) {
    const fs::path beside = wanted.has_parent_path() ? wanted.parent_path() : fs::path(".");
    folder_ = (beside / ".gapsound-XXXXXX").string();
    if (mkdtemp(folder_.data()) == nullptr) refuse(std::strerror(errno));
  }
  ~Workshop() {
    std::error_code ignored;
    fs::remove_all(folder_, ignored);
  }
  Workshop(const Workshop&) = delete;
  Workshop& operator=(const Workshop&) = delete;
  /// As ffmpeg must be given it: never an option, never another protocol.
  [[nodiscard]] std::string nameOf(const std::string& part) const { return "file:" + folder_ + "/" + part; }
  void deliver(const std::string& part) const {
    std::error_code failed;
    fs::rename(fs::path(folder_) / part, wanted_, failed);
    if (failed) refuse(failed.message());
  }

 private:
  [[noreturn]] void refuse(const std::string& why) const {
    throw Error(ExitCode::noAccess, wanted_.string() + ": cannot be written: " + why);
  }

  fs::path wanted_;
  std::string folder_;
};

struct Raster {
  int width = 0, height = 0, every = 1;
};

int even(double pixels) { return 2 * static_cast<int>(std::lround(0.5 * pixels)); }

Words inputWords(const Reel& film, const Raster& raster) {
  return {"-loglevel",
          "error",
          "-y",
          "-f",
          "rawvideo",
          "-pixel_format",
          "bgr0",
          "-video_size",
          fmt::format("{}x{}", raster.width, raster.height),
          "-framerate",
          fmt::format("{}/{}", film.fps, raster.every),
          "-i",
          "pipe:0"};
}

Words operator+(Words a, const Words& b) {
  a.insert(a.end(), b.begin(), b.end());
  return a;
}

void encode(const Reel& film, const Theme& theme, const fs::path& file, const Raster& raster,
            const Words& words) {
  FramePainter painter(raster.width, raster.height, theme);
  Encoder encoder(file.string(), words);
  for (int i = 0; i < film.frames; i += raster.every) {
    encoder.feed(painter.paint(film.page(i)));
    if (film.progress) film.progress(static_cast<double>(i + raster.every) / film.frames);
  }
  encoder.finish();
}

void writeMp4(const Reel& film, const Theme& theme, const fs::path& file) {
  const Raster raster{even(film.width), even(film.height), 1};
  const Workshop workshop(file);
  // A fixed number of threads: the encoder's choices depend on it, and the bytes must not on the machine.
  const Words output{"-c:v",     "libx264",   "-preset",  "veryfast",  "-crf",      "20",
                     "-threads", "2",         "-pix_fmt", "yuv420p",   "-movflags", "+faststart",
                     "-fflags",  "+bitexact", "-flags:v", "+bitexact", "-f",        "mp4"};
  encode(film, theme, file, raster, inputWords(film, raster) + output + Words{workshop.nameOf("film.mp4")});
  workshop.deliver("film.mp4");
}

/// Two rounds, first the colours and then the pictures: one round would hold every frame in memory.
void writeGif(const Reel& film, const Theme& theme, const fs::path& file) {
  const Raster raster{even(kGifScale * film.width), even(kGifScale * film.height), 2};
  const Workshop workshop(file);
  const std::string palette = workshop.nameOf("palette.png");
  const Words input = inputWords(film, raster);
  encode(film, theme, file, raster,
         input + Words{"-vf", "palettegen=stats_mode=diff", "-update", "1", "-frames:v", "1", "-f", "image2",
                       palette});
  encode(film, theme, file, raster,
         input + Words{"-i", palette, "-lavfi", "[0:v][1:v]paletteuse=dither=none:diff_mode=rectangle",
                       "-fflags", "+bitexact", "-f", "gif", workshop.nameOf("film.gif")});
  workshop.deliver("film.gif");
}

}  // namespace

void writeFilm(const Reel& film, const Theme& theme, const std::string& file) {
  const fs::path path(file);
  const std::string ending = path.extension().string();
  if (ending != ".mp4" && ending != ".gif") {
    throw InputError(file, "ending", ending.empty() ? "none" : ending, ".mp4, .gif");
  }
  requireWritable(file);
  ending == ".mp4" ? writeMp4(film, theme, path) : writeGif(film, theme, path);
}

}  // namespace gapsound
