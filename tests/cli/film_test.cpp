#include <doctest/doctest.h>

#include <fstream>
#include <nlohmann/json.hpp>
#include <sstream>

#include "program.hpp"

using namespace gapsound::testing;

namespace {

std::string frameFile() { return std::string(GAPSOUND_ROOT) + "/scenarios/film-power-right.csv"; }

std::vector<std::string> frameLines() {
  std::ifstream in(frameFile());
  std::vector<std::string> all;
  for (std::string line; std::getline(in, line);) all.push_back(line);
  return all;
}

std::string textOf(const std::vector<std::string>& all) {
  std::string text;
  for (const auto& line : all) text += line + "\n";
  return text;
}

/// The shipped frame with cell `column` of line `line` (1 is the header) replaced.
std::string changed(std::size_t line, std::size_t column, const std::string& value) {
  auto all = frameLines();
  std::vector<std::string> cells;
  std::stringstream stream(all[line - 1]);
  for (std::string cell; std::getline(stream, cell, ',');) cells.push_back(cell);
  cells[column] = value;
  all[line - 1].clear();
  for (std::size_t k = 0; k < cells.size(); ++k) all[line - 1] += (k ? "," : "") + cells[k];
  return textOf(all);
}

Outcome film(const std::string& file, const std::string& out, std::vector<std::string> more = {}) {
  std::vector<std::string> arguments = {"film",     file, "-o",           out,   "--line", "38",
                                        "--attack", "-x", "--since-snap", "1.45"};
  arguments.insert(arguments.end(), more.begin(), more.end());
  return run(arguments);
}

struct BadFrame {
  const char* what;
  std::string text;
  const char* line;
  const char* column;
  const char* shown;
};

std::vector<BadFrame> badFrames() {
  auto short_one = frameLines();
  short_one.pop_back();
  return {{"21 men", textOf(short_one), "line 22", "column side", "10 on defense"},
          {"a man twice", changed(5, 0, "71"), "line 5", "column id", "every man once"},
          {"not a number", changed(7, 3, "nan"), "line 7", "column x", "nan"},
          {"an endless number", changed(7, 4, "inf"), "line 7", "column y", "inf"},
          {"words for a number", changed(9, 5, "fast"), "line 9", "column speed", "fast"},
          {"beyond the end line", changed(12, 3, "120.4"), "line 12", "column x", "0 to 120"},
          {"beyond the sideline", changed(12, 4, "-0.3"), "line 12", "column y", "0 to 53.34"},
          {"faster than anybody", changed(3, 5, "19"), "line 3", "column speed", "0 to 13"},
          {"no position", changed(4, 2, "GOALIE"), "line 4", "column position", "GOALIE"},
          {"two balls", changed(3, 7, "1"), "line 23", "column ball", "2 are marked"},
          {"no ball", changed(12, 7, "0"), "line 23", "column ball", "0 are marked"},
          {"nobody's side", changed(4, 1, ""), "line 4", "column side", "offense or defense"},
          {"moves nowhere", changed(4, 6, ""), "line 4", "column direction", "angle"}};
}

}  // namespace

TEST_CASE("film: a frame becomes a scenario that every verb plays") {
  const ScratchFolder scratch;
  const std::string out = scratch.path("film.json");
  const Outcome written = film(frameFile(), out, {"--level", "pro", "--json"});
  REQUIRE(written.code == 0);
  CHECK(nlohmann::json::parse(written.out)["written"] == out);
  const Outcome rep = run({"rep", out, "--json"});
  REQUIRE(rep.code == 0);
  CHECK(nlohmann::json::parse(rep.out)["t_handoff"].get<double>() == doctest::Approx(1.45));
  CHECK(run({"reps", out, "-n", "20", "--json"}).code == 0);
  CHECK(run({"vary", out, "-n", "20", "--over", "players.FS.depth_yd=8:12:4", "--json"}).code == 0);
  const Outcome moved = run({"versus", out, "--b", "players.FS.depth_yd=7", "-n", "40", "--json"});
  REQUIRE(moved.code == 0);
  CHECK(nlohmann::json::parse(moved.out)["n"] == 40);
}

TEST_CASE("film: other spellings, another angle, the ball on a row of its own") {
  const ScratchFolder scratch;
  REQUIRE(film(frameFile(), scratch.path("a.json")).code == 0);
  auto all = frameLines();
  all[0] = "nr,team,pos,X,Y,s,dir,carrier,o";
  for (std::size_t k = 1; k < all.size(); ++k) {
    std::vector<std::string> cells;
    std::stringstream stream(all[k]);
    for (std::string cell; std::getline(stream, cell, ',');) cells.push_back(cell);
    cells[1] = cells[1] == "offense" ? "green" : "grey";
    for (const std::size_t angle : {std::size_t{6}, std::size_t{8}}) {
      const double ccw_from_x = 90.0 - std::stod(cells[angle]);
      cells[angle] = std::to_string(ccw_from_x < -180.0 ? ccw_from_x + 360.0 : ccw_from_x);
    }
    cells[7] = "0";
    all[k].clear();
    for (std::size_t c = 0; c < cells.size(); ++c) all[k] += (c ? "," : "") + cells[c];
  }
  all.push_back("ball,,,42.0,30.9,,,,");
  const std::string file = scratch.file("other.csv", textOf(all));
  const std::string columns = "id=nr,side=team,position=pos,speed=s,direction=dir,ball=carrier,facing=o";
  const Outcome other =
      film(file, scratch.path("b.json"), {"--turn", "ccw", "--zero", "x", "--columns", columns});
  CHECK(other.err == "");
  REQUIRE(other.code == 0);
  const auto a = nlohmann::json::parse(run({"rep", scratch.path("a.json"), "--json"}).out);
  const auto b = nlohmann::json::parse(run({"rep", scratch.path("b.json"), "--json"}).out);
  CHECK(a["hash"] == b["hash"]);
}

TEST_CASE("film: with formation, scheme and front named the men are those of the look") {
  const ScratchFolder scratch;
  const std::string out = scratch.path("film.json");
  REQUIRE(
      film(frameFile(), out, {"--level", "pro", "--formation", "F02", "--scheme", "R01", "--front", "D05"})
          .code == 0);
  std::ifstream in(out);
  const auto document = nlohmann::json::parse(in);
  for (const char* id :
       {"SS", "FS", "CR", "CL", "OLB", "OLB2", "DE", "DE2", "NT", "M", "W", "Y", "F", "T", "Q"})
    CHECK(document["start"]["men"].contains(id));
  CHECK(run({"rep", out}).code == 0);
}

TEST_CASE("film: a bad frame is refused with line and column, and nothing is written") {
  for (const BadFrame& bad : badFrames()) {
    INFO(bad.what);
    const ScratchFolder scratch;
    const std::string file = scratch.file("bad.csv", bad.text);
    const Outcome refused = film(file, scratch.path("film.json"));
    INFO(refused.err);
    CHECK(refused.code == 3);
    CHECK(lines(refused.err) == 1);
    for (const std::string part : {bad.line, bad.column, bad.shown})
      CHECK(refused.err.find(part) != std::string::npos);
    CHECK(scratch.names() == std::vector<std::string>{"bad.csv"});
  }
}

TEST_CASE("film: the wrong way round and unknown columns are refused") {
  const ScratchFolder scratch;
  const Outcome wrong =
      run({"film", frameFile(), "-o", scratch.path("f.json"), "--line", "38", "--attack", "+x"});
  CHECK(wrong.code == 3);
  CHECK(wrong.err.find("--attack") != std::string::npos);
  const Outcome columns = film(frameFile(), scratch.path("f.json"), {"--columns", "sped=s"});
  CHECK(columns.code == 3);
  CHECK(columns.err.find("speed") != std::string::npos);
  CHECK(scratch.names().empty());
}

TEST_CASE("a start set by hand is checked: men, ball, places") {
  const ScratchFolder scratch;
  const std::string out = scratch.path("film.json");
  REQUIRE(film(frameFile(), out).code == 0);
  const auto refused = [&](const std::string& set, const std::string& part) {
    INFO(set);
    const Outcome outcome = run({"rep", out, "--set", set});
    INFO(outcome.err);
    CHECK(outcome.code == 3);
    CHECK(outcome.err.find(part) != std::string::npos);
  };
  refused("start.ball=XX", "/start/ball");
  refused("start.ball=SS", "a man who attacks");
  refused("start.men.SS.y=400", "/start/men/SS/y");
  refused("start.men.SS.vx=30", "13 yd/s");
  refused("start.men.QQ={\"x\":3,\"y\":-9,\"group\":\"back\"}", "22 men");
  refused("start.men.QQ={\"x\":3,\"y\":-9}", "/start/men/QQ/group");
  refused("start.men.LT.block=kik", "kick");
  refused("start.men.LT.on=ZZ", "/start/men/LT/on");
  refused("start.men.M.role=boss", "/start/men/M/role");
  refused("players.ZZ.mass_kg=90", "/players/ZZ");
  CHECK(run({"rep", out, "--set", "start.men.RG.block=kick", "--set", "start.men.RG.on=SE"}).code == 0);
}
