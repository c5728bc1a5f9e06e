#include "painters/outputs.hpp"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>

#include "../picture/made_up_tape.hpp"
#include "base/error.hpp"
#include "io/theme_file.hpp"
#include "painters/cairo_painter.hpp"
#include "painters/film.hpp"

using namespace gapsound;
namespace fs = std::filesystem;

namespace {

/// A folder of its own with a blank and an umlaut in its name; gone afterwards.
class Folder {
 public:
  Folder() {
    std::string name = (fs::temp_directory_path() / "gapsound bögen XXXXXX").string();
    REQUIRE(mkdtemp(name.data()) != nullptr);
    path_ = name;
  }
  ~Folder() { fs::remove_all(path_); }
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;
  [[nodiscard]] std::string file(const std::string& name) const { return (path_ / name).string(); }
  [[nodiscard]] std::size_t size() const {
    return static_cast<std::size_t>(std::distance(fs::directory_iterator(path_), fs::directory_iterator()));
  }

 private:
  fs::path path_;
};

std::string contentOf(const std::string& file) {
  std::ifstream in(file, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
}

/// What a program prints; its arguments are ours, so a shell may be used here.
std::string printed(const std::string& command) {
  std::string text;
  FILE* pipe = popen(command.c_str(), "r");
  REQUIRE(pipe != nullptr);
  for (int byte = fgetc(pipe); byte != EOF; byte = fgetc(pipe)) text += static_cast<char>(byte);
  REQUIRE(pclose(pipe) == 0);
  return text;
}

std::string probe(const std::string& file, const std::string& entries) {
  return printed(
      fmt::format("ffprobe -v error -count_frames -select_streams v -show_entries stream={} -of "
                  "default=noprint_wrappers=1 '{}'",
                  entries, file));
}

ClipScript shortClip() {
  Tape tape = made_up::tape();
  tape.record.frames.resize(160);
  return clipOf(tape);
}

ExitCode codeOf(const std::function<void()>& act, std::string& message) {
  try {
    act();
  } catch (const Error& e) {
    message = e.what();
    return e.code();
  }
  return ExitCode::fine;
}

const Theme& paper() {
  static const Theme theme = shippedTheme("paper");
  return theme;
}

}  // namespace

TEST_CASE("a page's PDF is vector on one sheet, its words are text, and it is the same every time") {
  const Folder folder;
  const std::string file = folder.file("strip.pdf");
  writeStrip(made_up::tape(), paper(), file);
  const std::string text = printed("pdftotext -layout '" + file + "' -");
  for (const char* word : {"Power right", "0.00 s", "LG", "SE", "NT", "FS", "medical staff"}) {
    INFO(word);
    CHECK(text.find(word) != std::string::npos);
  }
  CHECK(printed("pdfimages -list '" + file + "' | tail -n +3") == "");
  const std::string facts = printed("pdfinfo '" + file + "'");
  CHECK(facts.find("Pages:           1") != std::string::npos);
  CHECK(facts.find("792 x 612 pts (letter)") != std::string::npos);
  writeStrip(made_up::tape(), paper(), folder.file("again.pdf"));
  CHECK(contentOf(file) == contentOf(folder.file("again.pdf")));
}

TEST_CASE("a PDF comes on A4 as well, one sheet a page") {
  const Folder folder;
  const DisplayList page = stripPage(made_up::tape(), momentsForStrip(made_up::tape()), handoutStrip());
  writePdf({page, page}, paper(), folder.file("two.pdf"), Paper::a4);
  const std::string facts = printed("pdfinfo '" + folder.file("two.pdf") + "'");
  CHECK(facts.find("Pages:           2") != std::string::npos);
  CHECK(facts.find("(A4)") != std::string::npos);
}

TEST_CASE("both fonts of the themes are in the page, none in their stead") {
  const Folder folder;
  writeStrip(made_up::tape(), paper(), folder.file("strip.pdf"));
  const std::string fonts = printed("pdffonts '" + folder.file("strip.pdf") + "' | tail -n +3");
  CHECK(fonts.find("Inter") != std::string::npos);
  CHECK(fonts.find("RobotoCondensed") != std::string::npos);
  CHECK(fonts.find("DejaVu") == std::string::npos);
}

TEST_CASE("pictures are as large as asked and the same bytes every time") {
  const Folder folder;
  const ChartData data{"Title", "Finding.", "x", "y", {{"", {1, 2, 3}, {1, 3, 2}, {}, {}}}, {}, ""};
  writeChart(data, paper(), folder.file("a.png"));
  writeChart(data, paper(), folder.file("b.png"));
  CHECK(contentOf(folder.file("a.png")) == contentOf(folder.file("b.png")));
  CHECK(probe(folder.file("a.png"), "width,height") == "width=1280\nheight=720\n");
  writeChart(data, paper(), folder.file("a.svg"));
  CHECK(contentOf(folder.file("a.svg")).find("<svg") != std::string::npos);
}

TEST_CASE("an SVG is the same bytes whatever was drawn before it in the same program") {
  const Folder folder;
  for (const char* name : {"a.svg", "between.png", "b.svg"})
    writeStrip(made_up::tape(), paper(), folder.file(name));
  const std::string first = contentOf(folder.file("a.svg"));
  CHECK(first.find("<svg") != std::string::npos);
  CHECK(first == contentOf(folder.file("b.svg")));
}

TEST_CASE("an MP4 plays on any phone: H.264, yuv420p, its index in front, every frame there") {
  const Folder folder;
  const ClipScript script = shortClip();
  const std::string file = folder.file("clip.mp4");
  writeClip(script, paper(), file);
  const std::string facts = probe(file, "codec_name,pix_fmt,nb_read_frames,r_frame_rate,width,height");
  CHECK(facts.find("codec_name=h264") != std::string::npos);
  CHECK(facts.find("pix_fmt=yuv420p") != std::string::npos);
  CHECK(facts.find("r_frame_rate=25/1") != std::string::npos);
  CHECK(facts.find("width=1280\nheight=720") != std::string::npos);
  CHECK(facts.find(fmt::format("nb_read_frames={}", framesOf(script).size())) != std::string::npos);
  const std::string content = contentOf(file);
  CHECK(content.find("moov") < content.find("mdat"));
  CHECK(content.size() < 5'000'000);
  writeClip(script, paper(), folder.file("again.mp4"));
  CHECK(content == contentOf(folder.file("again.mp4")));
  CHECK(folder.size() == 2);
}

TEST_CASE("a GIF has every second frame and the same bytes every time") {
  const Folder folder;
  const ClipScript script = shortClip();
  writeClip(script, paper(), folder.file("clip.gif"));
  const std::string facts = probe(folder.file("clip.gif"), "codec_name,nb_read_frames,width");
  CHECK(facts.find("codec_name=gif") != std::string::npos);
  CHECK(facts.find("width=960") != std::string::npos);
  CHECK(facts.find(fmt::format("nb_read_frames={}", (framesOf(script).size() + 1) / 2)) != std::string::npos);
  CHECK(contentOf(folder.file("clip.gif")).size() < 3'000'000);
  writeClip(script, paper(), folder.file("again.gif"));
  CHECK(contentOf(folder.file("clip.gif")) == contentOf(folder.file("again.gif")));
  CHECK(folder.size() == 2);
}

TEST_CASE("an ending nobody knows is refused with the ones that are known") {
  std::string message;
  CHECK(codeOf([] { writeStrip(made_up::tape(), paper(), "strip.bmp"); }, message) == ExitCode::badInput);
  CHECK(message.find(".bmp; allowed: .png, .svg, .pdf") != std::string::npos);
  CHECK(codeOf([] { writeClip(shortClip(), paper(), "clip.avi"); }, message) == ExitCode::badInput);
  CHECK(message.find(".mp4, .gif") != std::string::npos);
}

TEST_CASE("a folder that is not there is said before any work, for pages and films") {
  std::string message;
  CHECK(codeOf([] { writeStrip(made_up::tape(), paper(), "/no-such-folder/strip.png"); }, message) ==
        ExitCode::noAccess);
  CHECK(message.find("/no-such-folder/strip.png") != std::string::npos);
  CHECK(codeOf([] { writeClip(shortClip(), paper(), "/no-such-folder/clip.mp4"); }, message) ==
        ExitCode::noAccess);
  CHECK(message.find("/no-such-folder/clip.mp4") != std::string::npos);
}

TEST_CASE("without ffmpeg a film is refused in one line and nothing is left behind") {
  const Folder folder;
  const std::string path = std::getenv("PATH");
  setenv("PATH", "/no-such-folder", 1);
  std::string message;
  const ExitCode code = codeOf([&] { writeClip(shortClip(), paper(), folder.file("clip.mp4")); }, message);
  setenv("PATH", path.c_str(), 1);
  CHECK(code == ExitCode::noAccess);
  CHECK(message.find("ffmpeg") != std::string::npos);
  CHECK(folder.size() == 0);
}

TEST_CASE("an ffmpeg that gives up midway leaves the old film in place") {
  const Folder folder, programs;
  const std::string file = folder.file("clip.mp4");
  std::ofstream(file) << "old";
  std::ofstream(programs.file("ffmpeg")) << "#!/bin/sh\nhead -c 1000 >/dev/null\necho 'Error closing file "
                                            ".gapsound-x/film.mp4: no room' >&2\nexit 1\n";
  fs::permissions(programs.file("ffmpeg"), fs::perms::owner_all);
  const std::string path = std::getenv("PATH");
  setenv("PATH", (fs::path(programs.file("ffmpeg")).parent_path().string() + ":" + path).c_str(), 1);
  std::string message;
  const ExitCode code = codeOf([&] { writeClip(shortClip(), paper(), file); }, message);
  setenv("PATH", path.c_str(), 1);
  CHECK(code == ExitCode::noAccess);
  CHECK(message == file + ": cannot be written: ffmpeg: no room");
  CHECK(contentOf(file) == "old");
  CHECK(folder.size() == 1);
}

TEST_CASE("a missing font is named in one line, and nothing is drawn in another") {
  REQUIRE(fs::exists(GAPSOUND_PROGRAM));
  const Folder folder;
  std::ofstream(folder.file("fonts.conf")) << "<fontconfig><dir>/no-such-folder</dir></fontconfig>";
  const std::string look = fs::path(GAPSOUND_ROOT) / "scenarios/power-right-spill.json";
  const std::string said =
      printed(fmt::format("FONTCONFIG_FILE='{}' '{}' strip '{}' -o '{}' 2>&1; echo exit $?",
                          folder.file("fonts.conf"), GAPSOUND_PROGRAM, look, folder.file("strip.png")));
  CHECK(said.find("font \"Inter\" is not installed; packages fonts-inter") != std::string::npos);
  CHECK(said.find("exit 4") != std::string::npos);
  CHECK_FALSE(fs::exists(folder.file("strip.png")));
}
