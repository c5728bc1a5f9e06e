#include <doctest/doctest.h>
#include <sys/wait.h>

#include <cstdio>
#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>
#include <string>

#include "program.hpp"

using namespace gapsound::testing;
namespace fs = std::filesystem;

namespace {

const std::string kPlan = shipped("plan-river-week");

/// What a shell command prints; "" and a failed check when it fails.
std::string printed(const std::string& command) {
  std::string text;
  FILE* pipe = popen(command.c_str(), "r");
  REQUIRE(pipe != nullptr);
  for (int byte = fgetc(pipe); byte != EOF; byte = fgetc(pipe)) text += static_cast<char>(byte);
  INFO(command);
  CHECK(pclose(pipe) == 0);
  return text;
}

bool has(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

std::string contentOf(const std::string& file) {
  std::ifstream in(file, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
}

void checkVector(const std::string& pdf, int pages) {
  INFO(pdf);
  CHECK(printed("pdfimages -list '" + pdf + "' | tail -n +3").empty());
  CHECK(has(printed("pdfinfo '" + pdf + "'"), "Pages:           " + std::to_string(pages) + "\n"));
}

Outcome good(const std::vector<std::string>& arguments) {
  const Outcome outcome = run(arguments);
  INFO(outcome.err);
  REQUIRE(outcome.code == 0);
  return outcome;
}

/// A plan of one call and one or two runs that has something of everything.
std::string smallPlan(const ScratchFolder& scratch, const std::string& call = "Over", std::size_t runs = 2) {
  nlohmann::json plan = {
      {"gapsound", 1},
      {"title", "Small week"},
      {"level", "pro"},
      {"runs",
       {{{"name", "Power"},
         {"formation", "F01"},
         {"scheme", "R01"},
         {"share", 0.6},
         {"seen", 3},
         {"thin", true}},
        {{"name", "Zone"}, {"formation", "F01"}, {"scheme", "R04"}, {"share", 0.4}}}},
      {"calls", {{{"name", call}, {"front", "D01"}}}},
      {"practice", {{{"day", "Tuesday"}, {"reps", 6}, {"minutes", 35}, {"contact", "live"}}}}};
  while (plan["runs"].size() > runs) plan["runs"].erase(runs);
  return scratch.file("plan-small.json", plan.dump());
}

}  // namespace

TEST_CASE("a fit sheet is one vector page whose words can be found, the same every time") {
  const ScratchFolder scratch;
  for (const char* paper : {"letter", "a4"}) {
    const std::string file = scratch.path(std::string(paper) + ".pdf");
    good({"sheet", shipped("power-right-spill"), "-n", "20", "--no-faults", "--paper", paper, "-o", file});
    checkVector(file, 1);
    const std::string text = printed("pdftotext -layout '" + file + "' -");
    for (const char* word :
         {"SE", "NT", "overlap", "Level 1 reads", "Level 2 reads", "Level 3 reads", "LG", "medical"}) {
      INFO(word);
      CHECK(has(text, word));
    }
  }
  good({"sheet", shipped("power-right-spill"), "-n", "20", "--no-faults", "-o", scratch.path("again.pdf")});
  CHECK(contentOf(scratch.path("letter.pdf")) == contentOf(scratch.path("again.pdf")));
}

TEST_CASE("a front against a list of runs gives a master sheet and a page for each") {
  const ScratchFolder scratch;
  const std::string file = scratch.path("front.pdf");
  good({"sheet", shipped("power-right-spill"), "--schemes", "R01,R04,R10", "-n", "12", "--no-faults", "-o",
        file});
  checkVector(file, 4);
  const std::string text = printed("pdftotext -layout '" + file + "' -");
  for (const char* word : {"inside zone", "iso", "Runs against calls"}) CHECK(has(text, word));
}

TEST_CASE("a roster puts numbers on sheets, names only when asked for, and long ones are cut") {
  const ScratchFolder scratch;
  const std::string roster = scratch.file("ours.csv", "id,name,number\nSS,Alderwoodsmith,21\nM,Birch,52\n");
  const auto words = [&](const std::vector<std::string>& more) {
    std::vector<std::string> call{
        "sheet", shipped("power-right-spill"), "-n", "12", "--no-faults", "--roster", roster,
        "-o",    scratch.path("r.pdf")};
    call.insert(call.end(), more.begin(), more.end());
    good(call);
    return printed("pdftotext -layout '" + scratch.path("r.pdf") + "' -");
  };
  const std::string numbers = words({}), names = words({"--names"});
  CHECK((has(numbers, "SS 21") && has(numbers, "M 52")));
  CHECK_FALSE((has(numbers, "Alder") || has(numbers, "Birch")));
  CHECK((has(names, "Alderwoo.") && has(names, "Birch")));
  CHECK_FALSE(has(names, "Alderwoods"));
}

TEST_CASE("cards are vector, numbered, both ways") {
  const ScratchFolder scratch;
  good({"card", shipped("counter-left-wing"), "-o", scratch.path("c.pdf")});
  checkVector(scratch.path("c.pdf"), 2);
  const std::string text = printed("pdftotext -layout '" + scratch.path("c.pdf") + "' -");
  for (const char* word : {"1L", "1R", "Contact level", "NK", "turned over"}) CHECK(has(text, word));
}

TEST_CASE(
    "a verb of pages refuses another ending, an unknown run and schemes with a plan, and writes nothing") {
  const ScratchFolder scratch;
  const auto refused = [&](const std::vector<std::string>& arguments, const std::string& part) {
    const Outcome outcome = run(arguments);
    INFO(outcome.err);
    CHECK(outcome.code == 3);
    CHECK(lines(outcome.err) == 1);
    CHECK(has(outcome.err, part));
  };
  refused({"sheet", shipped("power-right-spill"), "-o", scratch.path("x.docx")}, ".docx; allowed: .pdf");
  refused({"card", kPlan, "--runs", "Veer", "-o", scratch.path("x.pdf")}, "--runs");
  refused({"sheet", kPlan, "--schemes", "R01", "-o", scratch.path("x.pdf")}, "--schemes");
  refused({"question", kPlan, "--man", "ROVER", "-o", scratch.path("x.pdf")}, "--man");
  refused({"week", kPlan, "--only", "sheetz", "-o", scratch.path("w")}, "--only");
  CHECK_FALSE(fs::exists(scratch.path("x.pdf")));
}

TEST_CASE("a week writes what it lists, warns of contact, and goes on where it was stopped") {
  const ScratchFolder scratch;
  const std::string plan = smallPlan(scratch), folder = scratch.path("week");
  const std::vector<std::string> call{
      "week", plan, "-o", folder, "-n", "6", "--only", "summary,matrix,sheets,cards", "--json"};
  const auto written = nlohmann::json::parse(good(call).out)["written"];
  REQUIRE(written.size() == 6);
  for (const auto& file : written) {
    INFO(file);
    const std::string name = file.get<std::string>();
    CHECK(fs::file_size(name) > 0);
    if (has(name, ".pdf")) CHECK(has(printed("pdfinfo '" + name + "'"), "Pages:"));
  }
  const std::string script = printed("pdftotext -layout '" + folder + "/cards/inside-run-script.pdf' -");
  CHECK(has(script, "Warning: Tuesday has 35 minutes of full contact"));
  CHECK(has(printed("pdftotext -layout '" + folder + "/summary.pdf' -"),
            "Thin data: Power was charted 3 times"));
  const auto before = fs::last_write_time(folder + "/sheets/over.pdf");
  fs::remove(folder + "/matrix.pdf");
  const Outcome again = good(call);
  CHECK(fs::exists(folder + "/matrix.pdf"));
  CHECK(fs::last_write_time(folder + "/sheets/over.pdf") == before);
  CHECK(has(again.err, "sheets/over.pdf, done before"));
}

TEST_CASE("long: a week killed at any moment and gone on with gives the same files, and every file opens") {
  const ScratchFolder scratch;
  const std::string plan = smallPlan(scratch, "Over", 1);
  const auto call = [&](const std::string& folder) {
    return std::vector<std::string>{"week", plan, "-o", scratch.path(folder), "-n", "24", "--json"};
  };
  const auto whole = nlohmann::json::parse(good(call("whole")).out)["written"];
  for (const double seconds : {0.5, 1.5, 3.0, 5.0})
    static_cast<void>(runFor(seconds, "KILL", call("killed")));
  const auto resumed = nlohmann::json::parse(good(call("killed")).out)["written"];
  REQUIRE(resumed.size() == whole.size());
  for (std::size_t k = 0; k < whole.size(); ++k) {
    const std::string file = whole[k].get<std::string>(), again = resumed[k].get<std::string>();
    INFO(file);
    CHECK(contentOf(file) == contentOf(again));
    const std::string ending = fs::path(file).extension().string();
    if (ending == ".pdf") CHECK(has(printed("pdfinfo '" + again + "'"), "Pages:"));
    if (ending == ".mp4")
      CHECK(has(printed("ffprobe -v error -show_entries stream=codec_name -of csv '" + again + "'"), "h264"));
    if (ending == ".html") CHECK(has(contentOf(again), "</html>"));
    if (ending == ".csv") CHECK(lines(contentOf(again)) > 1);
  }
}

TEST_CASE("long: correct finds the shipped leak, its level and its cost, and draws it") {
  const ScratchFolder scratch;
  const std::string places = std::string(GAPSOUND_ROOT) + "/scenarios/leak-power-right.csv";
  const auto answer = nlohmann::json::parse(good({"correct", shipped("power-right-spill"), "--seen", places,
                                                  "--gain", "5", "-o", scratch.path("c.mp4"), "--json"})
                                                .out);
  // The picture is of a rep with the end kicked out by a yard and a half, seed 70001.
  CHECK(answer["cause"]["player"] == "SE");
  CHECK(answer["cause"]["kind"] == "kicked_out");
  CHECK(answer["cause"]["weight"] > 0.5);
  CHECK(answer["level"] == 1);
  CHECK(answer["sentence"].get<std::string>().rfind("Level 1 failed first: SE", 0) == 0);
  CHECK(answer["cost"] ==
        doctest::Approx(answer["mean_with"].get<double>() - answer["mean_sound"].get<double>()));
  CHECK(has(printed("ffprobe -v error -show_entries stream=codec_name -of csv '" +
                    answer["written"].get<std::string>() + "'"),
            "h264"));
}

TEST_CASE("correct without anything seen, or with a man nobody knows, says so in a line") {
  for (const std::vector<std::string>& more :
       {std::vector<std::string>{}, {"--saw", "ZZ.x=3"}, {"--seen", "nowhere.csv"}}) {
    std::vector<std::string> call{"correct", shipped("power-right-spill")};
    call.insert(call.end(), more.begin(), more.end());
    const Outcome outcome = run(call);
    CHECK((outcome.code == 3 || outcome.code == 4));
    CHECK(lines(outcome.err) == 1);
  }
}

TEST_CASE("a call's name cannot put a file outside the week's folder, and a link out of it is refused") {
  const ScratchFolder scratch;
  const std::string plan = smallPlan(scratch, "../../escape");
  good({"week", plan, "-o", scratch.path("week"), "-n", "6", "--only", "cards"});
  CHECK(fs::exists(scratch.path("week/cards/escape.pdf")));
  fs::create_directory(scratch.path("elsewhere"));
  fs::create_directory(scratch.path("linked"));
  fs::create_directory_symlink(scratch.path("elsewhere"), scratch.path("linked/cards"));
  const Outcome outcome = run({"week", plan, "-o", scratch.path("linked"), "-n", "6", "--only", "cards"});
  CHECK(outcome.code == 3);
  CHECK(has(outcome.err, "a place inside"));
  CHECK(fs::is_empty(scratch.path("elsewhere")));
}

TEST_CASE("long: a quiz in a browser asks every question, marks the answer and tells the score") {
  const ScratchFolder scratch;
  const std::string page = scratch.path("quiz.html");
  good({"question", shipped("power-right-one-back"), "--man", "S", "--quiz", "2", "-o", page});
  const std::string content = contentOf(page);
  CHECK_FALSE(has(content, "src=\"http"));
  CHECK_FALSE(has(content, "href=\"http"));
  // The same page with a player who always finds the right letter, and one who never does.
  const auto driven = [&](const std::string& choose) {
    const std::string script =
        "<script>let steps = 0; while (!document.getElementById('score') && steps++ < 50) {"
        "const right = quiz.questions[at].right;"
        "const all = [...document.querySelectorAll('.choices button')];"
        "const pick = all.find(b => " +
        choose +
        ");"
        "pick.click(); document.getElementById('next').click(); }</script></body>";
    std::string copy = content;
    copy.replace(copy.rfind("</body>"), 7, script);
    const std::string file = scratch.file("driven.html", copy);
    return printed("chromium --headless --no-sandbox --disable-gpu --user-data-dir='" +
                   scratch.path("profile") + "' --virtual-time-budget=2000 --dump-dom 'file://" + file +
                   "' 2>/dev/null");
  };
  const std::string all_right = driven("b.textContent === right"), none = driven("b.textContent !== right");
  std::size_t questions = 0;
  for (std::size_t at = content.find("\"ask\""); at != std::string::npos;
       at = content.find("\"ask\"", at + 1))
    ++questions;
  REQUIRE(questions >= 1);
  const std::string of = " of " + std::to_string(questions) + " right</p>";
  CHECK(has(all_right, std::to_string(questions) + of));
  CHECK(has(none, ">0" + of));
}
