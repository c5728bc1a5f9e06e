#include <doctest/doctest.h>

#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "program.hpp"

using namespace gapsound::testing;

namespace {

using Json = nlohmann::json;
using Words = std::vector<std::string>;

const std::string kPower = shipped("power-right-spill");
const std::string kCounter = shipped("counter-right-guard-and-h");

Words with(Words words, const Words& more) {
  words.insert(words.end(), more.begin(), more.end());
  return words;
}

/// The answer's text without what depends on the clock.
std::string numbersOf(const Words& words) {
  const auto outcome = run(with(words, {"--json"}));
  INFO(outcome.err);
  REQUIRE(outcome.code == 0);
  Json answer = Json::parse(outcome.out);
  answer.erase("reps_per_second");
  return answer.dump();
}

const std::vector<Words> kStudies = {{"reps", kPower, "-n", "16"},
                                     {"versus", kPower, "--b", "players.SS.fit_off=call", "-n", "8"},
                                     {"vary", kCounter, "--over", "players.SS.downhill_yps=4:8:2", "-n", "5"},
                                     {"vary", kCounter, "--over", "players.SS.downhill_yps=4:8:2", "--over",
                                      "players.SS.read_delay_s=0.4:0.8:0.2", "-n", "3"},
                                     {"matrix", "--formations", "F01", "--fronts", "D01,D03", "--schemes",
                                      "R01", "--level", "pro", "-n", "5"}};

/// Plays the parts of a study into the folder; their files.
Words partsOf(const Words& study, int parts, const ScratchFolder& folder) {
  Words files;
  for (int k = 1; k <= parts; ++k) {
    files.push_back(folder.path("part-" + std::to_string(k)));
    const auto outcome =
        run(with(study, {"--part", std::to_string(k) + "/" + std::to_string(parts), "-o", files.back()}));
    INFO(outcome.err);
    REQUIRE(outcome.code == 0);
    CHECK(outcome.out.empty());
  }
  return files;
}

void checkRefusal(const Outcome& outcome, int code, const Words& parts) {
  INFO(outcome.err);
  CHECK(outcome.code == code);
  CHECK(outcome.out.empty());
  CHECK(lines(outcome.err) == 1);
  for (const auto& part : parts) {
    INFO(part);
    CHECK(outcome.err.find(part) != std::string::npos);
  }
}

}  // namespace

TEST_CASE("a study gives the same numbers on one, two and eight threads and from seven parts") {
  for (const Words& study : kStudies) {
    INFO(study[0]);
    const auto one = numbersOf(with(study, {"--jobs", "1"}));
    CHECK(numbersOf(with(study, {"--jobs", "2"})) == one);
    CHECK(numbersOf(with(study, {"--jobs", "8"})) == one);
    const ScratchFolder folder;
    Words parts = partsOf(study, 7, folder);
    std::swap(parts[1], parts[5]);  // in any order
    CHECK(numbersOf(with({"gather"}, parts)) == one);
  }
}

TEST_CASE("a study killed three times and resumed gives the numbers of one that was left alone") {
  const ScratchFolder folder;
  const Words study = {"reps", kPower, "-n", "1200"};
  const Words resumed = with(study, {"--checkpoint", folder.path("log"), "--resume"});
  const Words on_two = with(resumed, {"--jobs", "2"});  // more may be done before the third kill
  std::uintmax_t size = 1000;                           // B, more than the log's head
  for (int kill = 0; kill < 3; ++kill) {
    INFO("kill " << kill << ", log of " << size << " bytes");
    CHECK(runUntilLarger(folder.path("log"), size + 1000, "KILL", on_two).code == 128 + 9);
    REQUIRE(std::filesystem::exists(folder.path("log")));
    size = std::filesystem::file_size(folder.path("log"));
  }
  CHECK(numbersOf(resumed) == numbersOf(study));
  CHECK(folder.names().empty());  // the log goes when the study is whole
}

TEST_CASE("an interrupted study answers from what it has and says how to go on") {
  const ScratchFolder folder;
  const Words study = {"reps", kPower, "-n", "40000", "--checkpoint", folder.path("log")};
  const Outcome outcome = runUntilLarger(folder.path("log"), 2000, "INT", with(study, {"--json"}));
  INFO(outcome.err);
  CHECK(outcome.err.find("--resume goes on") != std::string::npos);
  CHECK(outcome.code == 130);
  const int n = Json::parse(outcome.out)["n"];
  CHECK(n > 10);
  CHECK(n < 40000);
  const auto size = std::filesystem::file_size(folder.path("log"));
  const Outcome further = runUntilLarger(folder.path("log"), size, "KILL", with(study, {"--resume"}));
  CHECK(further.err.find("going on after " + std::to_string(n) + " of 40000 reps") != std::string::npos);
}

TEST_CASE("a part that was killed is finished with resume and is the same file, a whole one is left alone") {
  const ScratchFolder folder;
  const Words study = {"reps", kPower, "-n", "1200", "--part", "2/2", "-o"};
  const Words cut = with(study, {folder.path("cut"), "--resume"});
  CHECK(runUntilLarger(folder.path("cut.partial"), 2000, "KILL", cut).code == 128 + 9);
  REQUIRE(run(cut).code == 0);
  REQUIRE(run(with(study, {folder.path("whole")})).code == 0);
  CHECK(shell("cmp " + folder.path("cut") + " " + folder.path("whole")).code == 0);
  const auto again = run(cut);
  CHECK(again.code == 0);
  CHECK(again.err.find("is there already") != std::string::npos);
  CHECK(folder.names() == Words{"cut", "whole"});
}

TEST_CASE("parts that do not make a study are refused") {
  const ScratchFolder folder, other;
  const Words study = {"reps", kPower, "-n", "12"};
  const Words parts = partsOf(study, 3, folder);
  checkRefusal(run({"gather", parts[0], parts[1]}), 3, {"no part 3/3"});
  checkRefusal(run({"gather", parts[0], parts[1], parts[1], parts[2]}), 3, {parts[1], "every part once"});
  checkRefusal(run({"gather", parts[0], kPower}), 3, {kPower, "allowed: "});
  const Words others = partsOf({"reps", kPower, "-n", "12", "--seed", "5"}, 3, other);
  checkRefusal(run({"gather", parts[0], others[1], parts[2]}), 3, {others[1], "of another study"});
  const auto size = std::filesystem::file_size(parts[1]);
  std::filesystem::resize_file(parts[1], size - 9);
  checkRefusal(run(with({"gather"}, parts)), 3,
               {parts[1], "part 2/3 with 3 of 4 reps", "--part 2/3 --resume"});
  checkRefusal(run({"gather", folder.path("none")}), 4, {"cannot be read"});
}

TEST_CASE("parts of a file that has changed since are refused") {
  const ScratchFolder folder;
  const auto look = folder.file("look.json", [] {
    std::ifstream in(kPower);
    return std::string(std::istreambuf_iterator<char>(in), {});
  }());
  const Words parts = partsOf({"reps", look, "-n", "4"}, 2, folder);
  Json changed = Json::parse(std::ifstream(look));
  changed["players"]["SS"]["depth_yd"] = 12;
  std::ofstream(look) << changed;
  checkRefusal(run(with({"gather"}, parts)), 3, {"has changed since"});
}

TEST_CASE("bad options of studies") {
  checkRefusal(run({"vary", kPower, "--over", "players.SS.shoes=1:3:1"}), 3,
               {"/players/SS/shoes", "unknown key"});
  checkRefusal(run({"vary", kPower, "--over", "players.SZ.depth_yd=1:3:1"}), 3, {"/players/SZ", "nearest"});
  checkRefusal(run({"vary", kPower, "--over", "players.SS.depth_yd=9:3:1"}), 3, {"HI >= LO"});
  checkRefusal(run({"vary", kPower, "--over", "players.SS.depth_yd=3:9:0"}), 3, {"STEP > 0"});
  checkRefusal(run({"vary", kPower, "--over", "players.SS.depth_yd=1:10.99:0.01", "--over",
                    "players.SS.mass_kg=60:159.9:0.1"}),
               3, {"--over", "1000000 cells", "at most 10000"});
  checkRefusal(run({"vary", kPower, "--over", "players.SS.depth_yd=8:9:1", "--limit", "speed=3"}), 3,
               {"--limit", "mean"});
  checkRefusal(run({"vary", kPower, "--over", "players.SS.depth_yd=8:9:1", "--limit", "mean=much"}), 3,
               {"--limit", "much"});
  checkRefusal(run({"reps", kPower, "--part", "0/3", "-o", "/tmp/x"}), 3, {"--part", "0/3", "K/N"});
  checkRefusal(run({"reps", kPower, "--part", "4/3", "-o", "/tmp/x"}), 3, {"--part", "4/3"});
  checkRefusal(run({"reps", kPower, "--part", "1/3"}), 2, {"--part"});
  checkRefusal(run({"reps", kPower, "--part", "1/3", "-o", "/tmp/x", "--until-width", "1"}), 2,
               {"--until-width"});
  checkRefusal(run({"matrix", "--fronts", "D01", "--schemes", "R01"}), 3, {"--formations"});
  checkRefusal(run({"matrix", "--formations", "F01", "--fronts", "D99", "--schemes", "R01"}), 3,
               {"/defense/front", "D99", "D01"});
  checkRefusal(run({"matrix", shipped("plan-river-week"), "--fronts", "D01"}), 3, {"lists beside a plan"});
  checkRefusal(run({"reps", kPower, "--roster", "/nowhere.csv"}), 4, {"/nowhere.csv"});
}

TEST_CASE("a full disk is reported and costs nothing") {
  const ScratchFolder folder;
  const auto full = run({"reps", kPower, "-n", "40", "--checkpoint", "/dev/full"});
  CHECK(full.code == 0);
  CHECK(full.err.find("/dev/full: cannot be written: No space left on device; going on") !=
        std::string::npos);
  CHECK(full.out.find("40 reps") != std::string::npos);
  std::filesystem::create_symlink("/dev/full", folder.path("part.partial"));
  checkRefusal(run({"reps", kPower, "-n", "4", "--part", "1/2", "-o", folder.path("part")}), 4,
               {"No space left on device"});
  CHECK(folder.names() == Words{"part.partial"});
}

TEST_CASE("faults gives every mistake with what it costs and who repairs it") {
  const ScratchFolder folder;
  const auto outcome =
      run({"faults", kPower, "-n", "3", "--json", "--csv", folder.path("f.csv"), "--png",
           folder.path("f.png"), "--svg", folder.path("f.svg"), "--pdf", folder.path("f.pdf")});
  INFO(outcome.err);
  REQUIRE(outcome.code == 0);
  const Json answer = Json::parse(outcome.out);
  CHECK(answer["rows"].size() > 40);
  double last = 1e9;
  for (const auto& row : answer["rows"]) {
    for (const auto* key : {"player", "kind", "mean_fixed", "mean_called", "loss", "repaired_by"})
      CHECK(row.contains(key));
    CHECK(row["loss"].get<double>() <= last);
    CHECK(row["loss"].get<double>() ==
          doctest::Approx(row["mean_called"].get<double>() - answer["mean_called"].get<double>()));
    last = row["loss"];
  }
  CHECK(folder.names().size() == 4);
}

TEST_CASE("matrix gives every call against every run, the worst and a change that helps") {
  const auto outcome = run({"matrix", shipped("plan-river-week"), "-n", "2", "--json"});
  INFO(outcome.err);
  REQUIRE(outcome.code == 0);
  const Json answer = Json::parse(outcome.out);
  const std::size_t rows = answer["rows"].size(), columns = answer["columns"].size();
  CHECK(rows >= 2);
  CHECK(columns >= 2);
  REQUIRE(answer["cells"].size() == rows * columns);
  for (const auto& cell : answer["cells"]) {
    for (const auto* key :
         {"front", "scheme", "variant", "mean", "mean_ci", "stuffed", "ten_plus", "unsound_gap"})
      CHECK(cell.contains(key));
    CHECK(cell["mean"].get<double>() <= answer["worst"]["mean"].get<double>());
  }
  CHECK(answer["advice"].contains("saves_ci"));
}

TEST_CASE("a study stops once its interval is as narrow as asked for") {
  const Words study = {"reps", kPower, "--seed", "3", "-n", "3000", "--until-width", "6", "--json"};
  const auto outcome = run(study);
  REQUIRE(outcome.code == 0);
  const Json answer = Json::parse(outcome.out);
  CHECK(answer["n"].get<int>() % 64 == 0);
  CHECK(answer["n"].get<int>() < 3000);
  CHECK(answer["mean_ci"][1].get<double>() - answer["mean_ci"][0].get<double>() <= 6.0);
  CHECK(numbersOf({"reps", kPower, "--seed", "3", "-n", answer["n"].dump()})
            .find("\"mean\":" + answer["mean"].dump()) != std::string::npos);
}

TEST_CASE("a roster changes the men it names") {
  const ScratchFolder folder;
  const auto roster = folder.file("ours.csv", "id,lb,read_delay\nSS,210,1.2\nM,240,1.1\nS,230,1.3\n");
  CHECK(numbersOf({"reps", kPower, "-n", "20"}) !=
        numbersOf({"reps", kPower, "-n", "20", "--roster", roster}));
  CHECK(
      run({"reps", kPower, "-n", "2", "--roster", std::string(GAPSOUND_ROOT) + "/scenarios/roster-river.csv"})
          .code == 0);
}

TEST_CASE("GNU parallel plays the parts and gather joins them to the last bit") {
  const ScratchFolder folder;
  const std::string program = GAPSOUND_PROGRAM;
  const auto outcome = shell("parallel --will-cite -q -j 2 '" + program + "' vary '" + kCounter +
                             "' --over players.SS.downhill_yps=4:8:2 -n 6 --jobs 1 --part {}/4 -o '" +
                             folder.path("part-{}") + "' ::: 1 2 3 4");
  INFO(outcome.err);
  REQUIRE(outcome.code == 0);
  const Words parts = {folder.path("part-1"), folder.path("part-2"), folder.path("part-3"),
                       folder.path("part-4")};
  CHECK(numbersOf(with({"gather"}, parts)) ==
        numbersOf({"vary", kCounter, "--over", "players.SS.downhill_yps=4:8:2", "-n", "6"}));
}
