#include <doctest/doctest.h>

#include <string>
#include <vector>

#include "analysis/lanes.hpp"
#include "drawn.hpp"

// Twelve pictures drawn on paper, with every lane's name, width and owner worked out there. Shoulders are 0.8
// yd across and chests 0.4 deep, so a man square to the line takes 0.8 yd of it and one turned sideways 0.4;
// blockers stand at 1.35, 2.75 and 4.4 yd from the center on the right and 1.35 and 2.75 on the left, which
// makes A to 1.35, B to 2.75, C to 4.4 and D to 6.4 on the right, C to 4.75 on the left, the alley beyond.
// The lane outside the last man is four yards wide. Owners by call: SE D+, DT B+, NT A-, WE C-, S C+, M A+, W
// B-, SS alley+.

using namespace gapsound;
using doctest::Approx;

namespace {

/// A lane as read off the paper: the men who bound it ("" the open field), its name, width and owner.
struct Drawn {
  const char *left, *right;
  const char* gap;
  double width;
  const char* owner;
};

std::string idOf(const Setup& setup, int man) {
  return man == kNobody ? "" : setup.men[static_cast<std::size_t>(man)].id;
}

void checkLanes(const Setup& setup, const std::vector<Lane>& lanes, const std::vector<Drawn>& drawn) {
  REQUIRE(lanes.size() == drawn.size());
  for (std::size_t k = 0; k < lanes.size(); ++k) {
    CAPTURE(k);
    CHECK(idOf(setup, lanes[k].left_man) == drawn[k].left);
    CHECK(idOf(setup, lanes[k].right_man) == drawn[k].right);
    CHECK(lanes[k].gap == drawn[k].gap);
    CHECK(lanes[k].width() == Approx(drawn[k].width).epsilon(1e-9));
    CHECK(idOf(setup, lanes[k].owner) == drawn[k].owner);
  }
}

using Moves = std::initializer_list<drawn::Moved>;

void checkPicture(Moves moves, const std::vector<Drawn>& drawn) {
  const Setup setup = drawn::power();
  checkLanes(setup, lanesAt(setup, drawn::picture(setup, "T", moves)), drawn);
}

/// The tackle doubled, the end kicked out, the rest of the line on their men.
const Moves kDoubleAndKick = {{"DT", {1.6, 1.4}, {0, -1}, "RG"}, {"RG", {1.3, 0.7}, {0, 1}, "DT"},
                              {"RT", {2.1, 0.7}, {0, 1}, "DT"},  {"SE", {4.9, 0.6}, {0, -1}, "F"},
                              {"F", {4.3, -0.1}, {0, 1}, "SE"},  {"C", {-0.5, 0.4}, {0, 1}, "NT"},
                              {"LT", {-2.6, 0.1}, {0, 1}, "WE"}};

}  // namespace

TEST_CASE("picture 1: the front at the snap") {
  checkPicture({}, {{"", "WE", "alley-", 4.0, ""},
                    {"WE", "NT", "B-", 1.95, "W"},  // -2.75 to -0.8
                    {"NT", "DT", "A+", 1.35, "M"},  // 0.0 to 1.35
                    {"DT", "SE", "C+", 2.25, "S"},  // 2.15 to 4.4
                    {"SE", "", "alley+", 4.0, "SS"}});
}

TEST_CASE("picture 2: the tackle doubled and the end kicked out") {
  checkPicture(kDoubleAndKick, {{"", "WE", "alley-", 4.0, ""},
                                {"LT", "C", "B-", 1.3, "W"},   // -2.2 to -0.9
                                {"NT", "RG", "A+", 0.9, "M"},  // 0.0 to 0.9
                                {"RT", "F", "C+", 1.4, "S"},   // 2.5 to 3.9
                                {"SE", "", "alley+", 4.0, "SS"}});
}

TEST_CASE("picture 3: the end squeezes until the door is shut") {
  checkPicture({{"DT", {1.6, 1.4}, {0, -1}, "RG"},
                {"RG", {1.3, 0.7}, {0, 1}, "DT"},
                {"RT", {2.1, 0.7}, {0, 1}, "DT"},
                {"SE", {3.0, 0.6}, {0, -1}, "F"},  // 0.1 yd of daylight to the tackle is no lane
                {"F", {3.3, -0.1}, {0, 1}, "SE"}},
               {{"", "WE", "alley-", 4.0, ""},
                {"WE", "NT", "B-", 1.95, "W"},
                {"NT", "RG", "A+", 0.9, "M"},
                {"F", "", "D+", 4.0, "SE"}});  // 3.7 to 7.7: the edge he was called to and left
}

TEST_CASE("picture 4: the nose slants across the center") {
  checkPicture({{"NT", {0.7, 0.8}, {0, -1}, "C"}, {"C", {0.3, 0.4}, {0, 1}, "NT"}},
               {{"", "WE", "alley-", 4.0, ""},
                {"WE", "C", "B-", 2.65, "W"},   // -2.75 to -0.1, its middle past the guard
                {"DT", "SE", "C+", 2.25, "S"},  // a quarter yard between nose and tackle is no lane
                {"SE", "", "alley+", 4.0, "SS"}});
}

TEST_CASE("picture 5: the kicker turns sideways in the hole") {
  checkPicture({{"DT", {1.6, 1.4}, {0, -1}, "RG"},
                {"RG", {1.3, 0.7}, {0, 1}, "DT"},
                {"RT", {2.1, 0.7}, {0, 1}, "DT"},
                {"SE", {4.8, 0.6}, {0, -1}, "F"},
                {"F", {4.3, 0.2}, {1, 0}, "SE"}},
               {{"", "WE", "alley-", 4.0, ""},
                {"WE", "NT", "B-", 1.95, "W"},
                {"NT", "RG", "A+", 0.9, "M"},
                {"RT", "F", "C+", 1.6, "S"},  // 2.5 to 4.1
                {"SE", "", "alley+", 4.0, "SS"}});
}

TEST_CASE("picture 6: both tackles of the defense washed inside") {
  checkPicture({{"DT", {0.2, 1.0}, {0, -1}, "RG"},
                {"RG", {0.6, 0.7}, {0, 1}, "DT"},
                {"RT", {1.2, 0.8}},
                {"NT", {-1.4, 0.8}, {0, -1}, "C"},
                {"C", {-1.1, 0.4}, {0, 1}, "NT"}},
               {{"", "WE", "alley-", 4.0, ""},
                {"WE", "NT", "B-", 0.95, "W"},  // -2.75 to -1.8
                {"C", "DT", "A-", 0.5, "NT"},   // -0.7 to -0.2
                {"RT", "SE", "C+", 2.8, "S"},   // 1.6 to 4.4
                {"SE", "", "alley+", 4.0, "SS"}});
}

TEST_CASE("picture 7: the middle backer fills his gap") {
  checkPicture({{"M", {0.9, 1.5}, {0, -1}}}, {{"", "WE", "alley-", 4.0, ""},
                                              {"WE", "NT", "B-", 1.95, "W"},
                                              {"NT", "M", "A+", 0.5, "M"},  // 0.0 to 0.5
                                              {"DT", "SE", "C+", 2.25, "S"},
                                              {"SE", "", "alley+", 4.0, "SS"}});
}

TEST_CASE("picture 8: three yards downfield the second level makes the lanes") {
  checkPicture({{"T", {3.0, 3.0}},
                {"S", {1.8, 4.0}, {0, -1}},
                {"M", {0.2, 4.4}, {0, -1}, "Y"},
                {"Y", {0.6, 3.6}, {0, 1}, "M"},
                {"SS", {6.2, 4.9}, {0, -1}}},
               {{"", "W", "C-", 4.0, "WE"},    // -6.45 to -2.45
                {"W", "M", "A-", 1.45, "NT"},  // -1.65 to -0.2
                {"Y", "S", "A+", 0.4, "M"},    // 1.0 to 1.4
                {"S", "SS", "C+", 3.6, "S"},   // 2.2 to 5.8
                {"SS", "", "alley+", 4.0, "SS"}});
}

TEST_CASE("picture 9: the safety rolled down bounds the edge") {
  checkPicture({{"SS", {7.0, 1.0}, {0, -1}}}, {{"", "WE", "alley-", 4.0, ""},
                                               {"WE", "NT", "B-", 1.95, "W"},
                                               {"NT", "DT", "A+", 1.35, "M"},
                                               {"DT", "SE", "C+", 2.25, "S"},
                                               {"SE", "SS", "D+", 1.4, "SE"},  // 5.2 to 6.6
                                               {"SS", "", "alley+", 4.0, "SS"}});
}

TEST_CASE("picture 10: an end upfield leaves his side empty, a man ten yards out is no part of the front") {
  checkPicture({{"WE", {-3.4, -0.9}, {0, -1}}, {"SS", {9.6, 1.0}, {0, -1}}},
               {{"", "NT", "C-", 4.0, "WE"},  // -4.8 to -0.8
                {"NT", "DT", "A+", 1.35, "M"},
                {"DT", "SE", "C+", 2.25, "S"},
                {"SE", "", "alley+", 4.0, "SS"}});
}

TEST_CASE("picture 11: the second picture turned over, a run to the left") {
  const Setup right = drawn::power();
  Frame f = drawn::picture(right, "T", kDoubleAndKick);
  for (Pose& p : f.men) p.pos = mirrored(p.pos), p.face = mirrored(p.face);
  f.ball = mirrored(f.ball);
  const Setup left = mirrored(right);
  checkLanes(left, lanesAt(left, f),
             {{"", "SE", "alley-", 4.0, "SS"},
              {"F", "RT", "C-", 1.4, "S"},
              {"RG", "NT", "A-", 0.9, "M"},
              {"C", "LT", "B+", 1.3, "W"},
              {"WE", "", "alley+", 4.0, ""}});
}

TEST_CASE("picture 12: the outside backer goes over the top and hands the door to the middle one") {
  Tape tape{drawn::power(), 1, {}};
  tape.record.frames = {drawn::picture(tape.setup, "T", kDoubleAndKick)};
  tape.record.events = {{0, Happening::decides, drawn::man("S"), kNobody, static_cast<int>(Fit::over_top)},
                        {0, Happening::decides, drawn::man("M"), kNobody, static_cast<int>(Fit::inside)}};
  checkLanes(tape.setup, lanesAt(tape, 0),
             {{"", "WE", "alley-", 4.0, ""},
              {"LT", "C", "B-", 1.3, "W"},
              {"NT", "RG", "A+", 0.9, ""},
              {"RT", "F", "C+", 1.4, "M"},
              {"SE", "", "alley+", 4.0, "S"}});
}
