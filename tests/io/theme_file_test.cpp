#include "io/theme_file.hpp"

#include <doctest/doctest.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <regex>

#include "base/error.hpp"
#include "io/assets.hpp"
#include "io/atomic_file.hpp"

using namespace gapsound;

namespace {

bool sameLine(const Style& a, const Style& b) { return a.dash == b.dash; }

std::string messageAfter(const std::string& pattern, const std::string& replacement) {
  const std::string shipped = readWhole(assetPath("themes/paper.json"));
  const std::string changed =
      std::regex_replace(shipped, std::regex(pattern), replacement, std::regex_constants::format_first_only);
  REQUIRE(changed != shipped);
  std::string file = (std::filesystem::temp_directory_path() / "gapsound-theme-XXXXXX").string();
  REQUIRE(mkstemp(file.data()) >= 0);
  std::ofstream(file) << changed;
  std::string message = "accepted";
  try {
    static_cast<void>(readTheme(file));
  } catch (const InputError& e) {
    message = e.path() + ": " + e.value() + "; allowed: " + e.allowed();
  }
  std::filesystem::remove(file);
  return message;
}

}  // namespace

TEST_CASE("both shipped themes are read, under their own names") {
  CHECK(shippedTheme("paper").name == "paper");
  CHECK(shippedTheme("evening").name == "evening");
  CHECK_THROWS_AS(static_cast<void>(shippedTheme("neon")), InputError);
}

TEST_CASE("lanes and their cells tell their state by line as well as by colour") {
  for (const char* name : {"paper", "evening"}) {
    const Theme theme = shippedTheme(name);
    const StyleId groups[2][3] = {{StyleId::lane_open, StyleId::lane_contested, StyleId::lane_closed},
                                  {StyleId::cell_open, StyleId::cell_contested, StyleId::cell_closed}};
    for (const auto& [open, contested, closed] : groups) {
      CHECK_FALSE(sameLine(theme[open], theme[contested]));
      CHECK_FALSE(sameLine(theme[contested], theme[closed]));
      CHECK_FALSE(sameLine(theme[open], theme[closed]));
      CHECK_FALSE(theme[open].stroke == theme[contested].stroke);
      CHECK_FALSE(theme[contested].stroke == theme[closed].stroke);
    }
    CHECK_FALSE(sameLine(theme[StyleId::curve], theme[StyleId::curve_2]));
  }
}

TEST_CASE("the accent belongs to the ball alone") {
  for (const char* name : {"paper", "evening"}) {
    const Theme theme = shippedTheme(name);
    const Colour accent = theme[StyleId::ball].fill;
    for (std::size_t i = 0; i < kStyles; ++i) {
      const auto id = static_cast<StyleId>(i);
      if (id == StyleId::ball || id == StyleId::trail_ball || id == StyleId::tick_ball) continue;
      INFO(name << " " << kStyleNames[i]);
      CHECK_FALSE(theme[id].stroke == accent);
      CHECK_FALSE(theme[id].fill == accent);
    }
  }
}

TEST_CASE("a fault in a theme is named with its path and what is allowed") {
  CHECK(messageAfter("#16181c", "#16181") == "/colours/ink: \"#16181\"; allowed: #rrggbb or #rrggbbaa");
  CHECK(messageAfter("#16181c", "#16181g") == "/colours/ink: \"#16181g\"; allowed: #rrggbb or #rrggbbaa");
  CHECK(messageAfter("\"ball\":", "\"boll\":") == "/styles/ball: missing; allowed: a value is needed here");
  CHECK(messageAfter("\"ball\":", "\"ball\": {}, \"boll\":").find("/styles/boll: unknown key") == 0);
  CHECK(messageAfter("\"stroke\": \"hair\"", "\"stroke\": \"hare\"")
            .find("/styles/yard_line/stroke: \"hare\"") == 0);
  CHECK(messageAfter("\"width\": 0.8", "\"width\": -1") ==
        "/styles/yard_line/width: -1; allowed: a number 0 to 40");
  CHECK(messageAfter("\"width\": 0.8", "\"weight\": 1").find("/styles/yard_line/weight: unknown key") == 0);
  CHECK(messageAfter("\"dash\": \\[12, 5\\]", "\"dash\": [12]") ==
        "/styles/to_gain/dash: [12]; allowed: up to four pairs of lengths: on, off");
  CHECK(messageAfter("\"dash\": \\[12, 5\\]", "\"dash\": [12, 0]").find("/styles/to_gain/dash/1: 0") == 0);
  CHECK(messageAfter("\"font\": \"condensed\"", "\"font\": \"serif\"")
            .find("/styles/yard_number/font: \"serif\"") == 0);
  CHECK(messageAfter("\"gapsound_theme\": 1", "\"gapsound_theme\": 2").find("/gapsound_theme: 2") == 0);
  CHECK(messageAfter("\\}\\s*$", "").find("broken at byte") != std::string::npos);
}
