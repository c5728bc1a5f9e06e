#include "io/charting_file.hpp"

#include <doctest/doctest.h>
#include <fmt/format.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>

#include "base/error.hpp"
#include "io/assets.hpp"
#include "io/library.hpp"

using namespace gapsound;

namespace {

const Library& shippedLibrary() {
  static const Library library = readLibrary(assetPath(""));
  return library;
}

Charting chartingOf(const std::string& content, const ChartingWords& words = {}) {
  const std::string file =
      (std::filesystem::temp_directory_path() / fmt::format("gapsound-charting-{}.csv", getpid())).string();
  std::ofstream(file, std::ios::binary) << content;
  const Charting charting = readCharting(file, words, shippedLibrary());
  std::filesystem::remove(file);
  return charting;
}

}  // namespace

TEST_CASE("a breakdown is read with columns in any order and the spellings staffs use") {
  const Charting charting =
      chartingOf("GAIN/LOSS;HASH MARK;WAY;SCHEME;SET;DN\n4,5;L;R;power;F01;1\n-2;M;L;iso;21 I strong;2\n");
  CHECK(charting.unreadable.empty());
  REQUIRE(charting.runs.size() == 2);
  CHECK(charting.runs[0].offense.scheme == "R01");
  CHECK(charting.runs[0].gain == doctest::Approx(4.5));
  CHECK(charting.runs[0].hash == "left_hash");
  CHECK(charting.runs[1].offense.formation == "F01");
  CHECK(charting.runs[1].offense.direction == "left");
}

TEST_CASE("no row is lost: runs, passes and unreadable ones add up, each unreadable with line and reason") {
  const Charting charting = chartingOf(
      "formation,play,side,gain,type\nF01,power,right,4,run\nF99,power,right,4,run\nF01,flea,right,4,run\n"
      "F01,power,up,4,run\nF01,power,right,many,run\nF01,power,right,,run\nF01,power,,4,run\nF13,,,9,pass\n");
  CHECK(charting.rows == 8);
  CHECK(charting.runs.size() == 1);
  CHECK(charting.passes == 1);
  REQUIRE(charting.unreadable.size() == 6);
  CHECK(charting.unreadable[0].row == 2);
  CHECK(charting.unreadable[0].why.find("line 3, column formation: F99; allowed:") != std::string::npos);
  CHECK(charting.unreadable[4].why.find("a number") != std::string::npos);
}

TEST_CASE("the staff's own words for columns, formations and runs are taken") {
  const ChartingWords words{{{"play", "WHAT"}}, {{"F04", "TREY"}, {"R02", "Chicken"}}};
  const Charting charting = chartingOf("form,WHAT,dir,yds\ntrey,chicken,l,7\n", words);
  REQUIRE(charting.runs.size() == 1);
  CHECK(charting.runs[0].offense.formation == "F04");
  CHECK(charting.runs[0].offense.scheme == "R02");
}

TEST_CASE("a table without a needed column is refused with the ones it has") {
  CHECK_THROWS_WITH_AS(chartingOf("formation,play,side\nF01,power,right\n"),
                       doctest::Contains("no column gain"), InputError);
  CHECK_THROWS_AS((void)wordPair("formation", "--columns"), InputError);
  CHECK(wordPair("formation=Their set", "--columns") ==
        std::pair<std::string, std::string>("formation", "Their set"));
}

TEST_CASE("charted snaps become runs with shares, mean gain, usual hash and a mark where data is thin") {
  OffensePlan power, iso;
  power.formation = iso.formation = "F01";
  power.scheme = "R01", iso.scheme = "R10", iso.direction = "left";
  std::vector<ChartedRun> charted;
  for (int i = 0; i < 9; ++i)
    charted.push_back({power, i < 6 ? "left_hash" : "middle", static_cast<double>(i)});
  charted.push_back({iso, "", 2.0});
  const auto runs = runsFrom(charted, shippedLibrary());
  REQUIRE(runs.size() == 2);
  CHECK(runs[0].share == doctest::Approx(0.9));
  CHECK(runs[0].seen == 9);
  CHECK(runs[0].gain == doctest::Approx(4.0));
  CHECK(runs[0].field.spot == "left_hash");
  CHECK_FALSE(runs[0].thin);
  CHECK(runs[1].thin);
  CHECK(runs[1].name == "iso left from 21 I strong");
}
