#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <filesystem>

#include "app/handout.hpp"
#include "app/landmarks.hpp"
#include "bench.hpp"
#include "io/atomic_file.hpp"
#include "io/scenario_file.hpp"
#include "study/fit_choice.hpp"

using namespace gapsound;
using bench::Bench;

namespace {

double settingOf(const Desk& desk, const std::string& man, std::optional<double> ManSettings::*setting) {
  const auto& players = desk.document().scenario().players;
  const auto found = players.find(man);
  return found == players.end() ? std::nan("") : (found->second.*setting).value_or(std::nan(""));
}

const char* const kToSafety = "tab,tab,tab,tab,tab,tab,tab,tab";

}  // namespace

TEST_CASE("space plays and stops, arrows step, the ladder scrubs") {
  Bench b;
  b.act("space");
  CHECK(b.desk.playback.playing());
  for (int i = 0; i < 30; ++i) b.frame(1.0 / 60.0);
  CHECK(b.desk.playback.time() == doctest::Approx(0.5));
  b.act("space,right,right,shift+right");
  CHECK(b.desk.playback.time() == doctest::Approx(0.5 + 2.0 / 60.0 + 0.1));
  const PageRect ladder = b.layout().ladder;
  const Vec2 from{ladder.x + 300.0, ladder.middle().y + 10.0};
  b.take(dragEvents(from, from + Vec2{200.0, 0.0}));
  const double wanted = ladderTime(b.desk.rep()->tape, ladderLook(b.desk, b.layout()), from.x + 200.0);
  CHECK(b.desk.playback.time() == doctest::Approx(wanted).epsilon(0.01));
  CHECK_FALSE(b.desk.playback.playing());
}

TEST_CASE(
    "a man is picked by key and by click, his speed typed in gives another rep and undo takes it back") {
  Bench b;
  b.act(kToSafety);
  CHECK(b.desk.view.selected == "SS");
  const auto before = b.desk.rep()->tape.record.hash;
  b.act("m,Downhill,type 9,Read delay,type 0.5");
  CHECK(settingOf(b.desk, "SS", &ManSettings::downhill_yps) == 9.0);
  CHECK(settingOf(b.desk, "SS", &ManSettings::read_delay_s) == 0.5);
  CHECK(b.desk.rep()->tape.record.hash != before);
  CHECK(b.desk.document().unsaved());
  b.act("ctrl+z,ctrl+z");
  CHECK(b.desk.rep()->tape.record.hash == before);
  CHECK_FALSE(b.desk.document().unsaved());
  b.act("ctrl+y");
  CHECK(settingOf(b.desk, "SS", &ManSettings::downhill_yps) == 9.0);
  b.act("m");
  b.take(clickEvents(b.man("W", b.layout())));
  CHECK(b.desk.view.selected == "W");
}

TEST_CASE("a value that is not allowed is refused in the words of the command line and changes nothing") {
  Bench b;
  b.act(kToSafety);
  b.act("m,Downhill,type 40");
  CHECK(std::isnan(settingOf(b.desk, "SS", &ManSettings::downhill_yps)));
  CHECK(b.desk.notice().find("/players/SS/downhill_yps") != std::string::npos);
  CHECK_FALSE(b.desk.document().unsaved());
}

TEST_CASE(
    "a man dragged snaps to a technique, freely he stays where he is put, one undo takes the drag back") {
  Bench b;
  const PageLayout layout = b.layout();
  const Vec2 from = b.man("DT", layout);
  const double yard = fieldPlace(b.desk, layout).camera.scale_x;
  b.take(dragEvents(from, from + Vec2{0.45 * yard, 0.0}));
  const double x = settingOf(b.desk, "DT", &ManSettings::x);
  const auto landmarks = landmarksOf(b.desk.rep()->tape.setup, library());
  CHECK(std::any_of(landmarks.begin(), landmarks.end(), [&](const Landmark& mark) { return mark.x == x; }));
  CHECK(b.desk.playback.time() == 0.0);
  b.act("ctrl+z");
  CHECK(std::isnan(settingOf(b.desk, "DT", &ManSettings::x)));
  b.act("g");
  const Vec2 safety = b.man("W", layout);
  b.take(dragEvents(safety, safety + Vec2{1.23 * yard, -1.7 * yard}));
  const Vec2 spot{settingOf(b.desk, "W", &ManSettings::x), settingOf(b.desk, "W", &ManSettings::y)};
  const Vec2 wanted = fieldPlace(b.desk, layout).camera.fromPage(safety + Vec2{1.23 * yard, -1.7 * yard});
  CHECK(distance(spot, wanted) < 0.1);
}

TEST_CASE("a held rep stays while one thing is changed, and a sentence says what differs") {
  Bench b;
  b.act(kToSafety);
  b.act("h");
  CHECK(b.desk.held() == b.desk.rep());
  CHECK(b.desk.difference().empty());
  b.act("m,Read delay,type 0.4");
  CHECK(b.desk.held() != b.desk.rep());
  CHECK(b.desk.difference().rfind("SS Read delay 0.40 s: ", 0) == 0);
  CHECK(b.desk.difference().find("It ends") != std::string::npos);
  b.act("h");
  CHECK(b.desk.view.holding == Holding::beside);
  b.act("shift+h");
  CHECK(b.desk.held() == nullptr);
}

TEST_CASE("front, call and level are picked from the library by searching") {
  Bench b;
  b.act("l,Title,type Ours on Friday");
  CHECK(b.desk.document().scenario().title == "Ours on Friday");
  CHECK(b.desk.view.selected.empty());
  b.act("Front,type under");
  CHECK(b.desk.document().scenario().defense.front == "D02");
  b.act("l,c,Structure box");
  CHECK(b.desk.document().scenario().defense.structure == "box");
  b.act("Backers call");
  CHECK(b.desk.document().scenario().defense.fit_off[1] == FitOff::call);
}

TEST_CASE("typical, best and worst rep of the defense are a key away") {
  Bench b;
  b.desk.settle(true);
  const Readout readout = *b.desk.readout();
  CHECK(readout.done());
  b.act("w");
  const double worst = b.desk.rep()->tape.record.yards;
  b.act("b");
  const double best = b.desk.rep()->tape.record.yards;
  b.act("t");
  CHECK(b.desk.document().seed() == readout.typical_seed);
  CHECK(best < b.desk.rep()->tape.record.yards);
  CHECK(worst > b.desk.rep()->tape.record.yards);
}

TEST_CASE("seeking to a moment shows what straight play shows") {
  Bench b;
  b.desk.settle(true);
  b.act("k");
  std::vector<std::uint64_t> played;
  const int frames = static_cast<int>(b.desk.playback.length() * 60.0);
  for (int tick = 0; tick <= frames; ++tick) {
    played.push_back(hashOf(stagePage(b.desk, b.layout())));
    b.desk.playback.stepFrames(1);
  }
  for (int tick = frames; tick >= 0; tick -= 7) {
    b.desk.playback.seek(tick / 60.0);
    CHECK(hashOf(stagePage(b.desk, b.layout())) == played[static_cast<std::size_t>(tick)]);
  }
}

TEST_CASE("a file that does not load says why and leaves the open one untouched") {
  Bench b;
  const std::string bad = (std::filesystem::temp_directory_path() / "gapsound-bad.json").string();
  writeAtomically(
      bad,
      R"({"gapsound": 1, "title": "x", "offense": {"formation": "F99", "scheme": "R01"}, "defense": {"front": "D01"}})");
  b.act(kToSafety);
  b.act("m,Downhill,type 8");
  const std::string text = b.desk.document().text();
  b.desk.open(bad);
  CHECK(b.desk.document().text() == text);
  CHECK(b.desk.notice().rfind(bad + ": /offense/formation: ", 0) == 0);
  b.desk.open("/no/such/file.json");
  CHECK(b.desk.notice().find("/no/such/file.json") != std::string::npos);
  std::filesystem::remove(bad);
}

TEST_CASE("leaving unsaved work asks, saving and dropping both go on") {
  const auto folder = std::filesystem::temp_directory_path() / "gapsound-leaving";
  std::filesystem::remove_all(folder);
  Bench b(bench::kCounter, StateFolder(folder.string()));
  b.act(kToSafety);
  b.act("m,Downhill,type 8");
  b.act("ctrl+q");
  REQUIRE(b.desk.leaving());
  CHECK_FALSE(b.desk.quits());
  b.act("stay here");
  CHECK_FALSE(b.desk.leaving());
  const std::string file = (folder / "mine.json").string();
  CHECK(b.desk.saveAs(file));
  CHECK(readScenario(file).players.at("SS").downhill_yps == 8.0);
  b.act("Downhill,type 7,ctrl+q,drop the changes");
  CHECK(b.desk.quits());
  CHECK(readScenario(file).players.at("SS").downhill_yps == 8.0);
  std::filesystem::remove_all(folder);
}

TEST_CASE("every size keeps its field, ledger, ladder and rail on the screen") {
  for (const auto& size : {std::pair{800, 600}, std::pair{1280, 720}, std::pair{2560, 1440}}) {
    const int width = size.first;
    Bench b(bench::kCounter, StateFolder(""), width, size.second);
    b.act("l,m");
    for (const auto& place : b.places()) {
      const auto& box = place.second;
      INFO(place.first << " at " << width);
      CHECK(box.x >= 0.0);
      CHECK(box.right() <= width);
    }
    const PageLayout layout = layoutOf(width, size.second, true, true, false);
    CHECK(layout.field.width > 200.0);
    CHECK(layout.field.height > 200.0);
    CHECK(layout.ladder.bottom() <= layout.rail.y + 1.0);
  }
}

TEST_CASE("the smallest window at the largest type still shows every word of the rail") {
  Bench b(bench::kCounter, StateFolder(""), 800, 600, 2.0);
  b.frame();
  for (const char* name : {"play", "Hold", "Man", "Study", "Files", "Meeting", "Help"}) {
    INFO(name);
    REQUIRE(b.places().count(name) == 1);
    CHECK(b.places().at(name).right() <= 800.0);
    CHECK(b.places().at(name).bottom() <= 600.0);
  }
}

TEST_CASE("asked, the tape stops where a man decides, a click says how far off the guess is") {
  Bench b;
  b.act(kToSafety);
  b.act("q,space");
  for (int i = 0; i < 200 && b.desk.playback.playing(); ++i) b.frame(1.0 / 60.0);
  b.frame();
  REQUIRE(b.desk.view.question);
  const PutQuestion question = *b.desk.view.question;
  CHECK(b.desk.rep()->tape.setup.men[static_cast<std::size_t>(question.man)].id == "SS");
  CHECK(b.desk.playback.time() == question.t);
  const Vec2 truth = fitSpot(*b.desk.rep(), question.man);
  b.take(clickEvents(fieldPlace(b.desk, b.layout()).camera.toPage(truth)));
  REQUIRE(b.desk.view.question->guess);
  const std::string verdict = questionWords(*b.desk.rep(), *b.desk.view.question);
  INFO(verdict);
  // A click falls on a whole pixel, a tenth of a yard.
  CHECK((verdict.starts_with("0.0 yd") || verdict.starts_with("0.1 yd") || verdict.find(" is right.") == 1));
  CHECK(b.desk.view.selected == "SS");
  b.act("space");
  CHECK_FALSE(b.desk.view.question);
}

TEST_CASE("a question has letters where another place costs in this very rep, and says what it costs") {
  Bench b("power-right-spill.json");
  b.act("home,q");
  int lettered = 0;
  for (int asked = 0; asked < 60 && lettered < 3; ++asked) {
    b.act("space");
    for (int i = 0; i < 400 && b.desk.playback.playing(); ++i) b.frame(1.0 / 60.0);
    b.frame();
    if (!b.desk.view.question || asked % 12 == 11) {
      b.act("page_down,home");
      continue;
    }
    const PutQuestion question = *b.desk.view.question;
    const std::string& id = b.desk.rep()->tape.setup.men[static_cast<std::size_t>(question.man)].id;
    const Vec2 at = b.man(id, b.layout());
    const PageRect field = b.layout().field;
    CHECK((field.x < at.x && at.x < field.right() && field.y < at.y && at.y < field.bottom()));
    if (question.places.empty()) continue;
    ++lettered;
    const double own = b.desk.rep()->tape.record.yards;
    const auto rights = std::count_if(question.places.begin(), question.places.end(),
                                      [](const LetteredPlace& place) { return place.right; });
    CHECK(rights == 1);
    for (const LetteredPlace& place : question.places) {
      if (!place.right) CHECK(place.yards >= std::min(own, kLongestCounted) + 1.0);
      PutQuestion answered = question;
      answered.guess = guessAt(question, place.place + Vec2{0.1, -0.1});
      CHECK(*answered.guess == place.place);
      const std::string words = questionWords(*b.desk.rep(), answered);
      CHECK(words.starts_with(place.right ? std::string(1, place.letter) + " is right." : "No: with "));
    }
  }
  CHECK(lettered > 0);
}

TEST_CASE("a held look is compared on the same luck when another rep is chosen") {
  Bench b;
  b.act(kToSafety);
  b.act("h,m,Downhill,type 9,Read delay,type 0.5");
  CHECK(b.desk.changedSinceHeld() == "SS Downhill 9.0 yd/s, SS Read delay 0.50 s");
  b.act("m,page_down");
  CHECK(b.desk.rep()->tape.seed == 2);
  CHECK(b.desk.held()->tape.seed == 2);
  CHECK(b.desk.held()->scenario.players.empty());
}

TEST_CASE("the question about the safety in two clicks, a cell clicked plays its look") {
  Bench b;
  b.desk.view.study_reps = 12;
  b.act("s,How fast may the safety come?");
  b.desk.settle(true);
  b.act("right");
  REQUIRE(b.desk.study());
  CHECK(b.desk.study()->fault.empty());
  CHECK(b.desk.study()->done());
  CHECK(cellsOf(*b.desk.study()) == 7);
  CHECK(findingOf(*b.desk.study()).find("no pass threat") != std::string::npos);
  b.act("cell 6");
  CHECK(settingOf(b.desk, "SS", &ManSettings::downhill_yps) == 8.0);
  CHECK_FALSE(b.desk.view.study_page);
  CHECK(b.desk.playback.playing());
  b.act("ctrl+z");
  CHECK(std::isnan(settingOf(b.desk, "SS", &ManSettings::downhill_yps)));
}

TEST_CASE("two settings make a map, a study that cannot be played says why, a stopped one ends") {
  Bench b;
  b.desk.startStudy(StudyKind::sweep, {{"SS", "read", 0.5, 1.1, 0.3}, {"SS", "downhill", 4.0, 8.0, 2.0}}, 8);
  b.desk.settle(true);
  REQUIRE(b.desk.study());
  CHECK(cellsOf(*b.desk.study()) == 9);
  const Scenario look = lookOfCell(*b.desk.study(), 5);
  CHECK(look.players.at("SS").read_delay_s == 0.8);
  CHECK(look.players.at("SS").downhill_yps == 8.0);
  b.desk.startStudy(StudyKind::sweep, {{"SS", "downhill", 4.0, 80.0, 2.0}}, 8);
  b.desk.settle(true);
  CHECK(findingOf(*b.desk.study()).find("downhill_yps") != std::string::npos);
  b.desk.startStudy(StudyKind::sweep, {{"SS", "downhill", 3.0, 9.0, 0.25}}, 1000);
  b.desk.stopStudy();
  b.desk.settle(true);
  CHECK_FALSE((b.desk.study() && b.desk.study()->done()));
}

TEST_CASE("every mistake is ranked by what it costs, a bar clicked lays the mistake on the look") {
  Bench b;
  b.desk.view.study_reps = 2;
  b.act("s,What does each mistake cost?");
  b.desk.settle(true);
  b.act("right");
  REQUIRE(b.desk.study());
  const auto& faults = std::get<FaultResult>(b.desk.study()->result);
  REQUIRE(faults.rows.size() > 10);
  CHECK(faults.rows.front().loss.difference >= faults.rows.back().loss.difference);
  const Mistakes first = faults.rows.front().mistakes;
  b.act("cell 1");
  REQUIRE(b.desk.document().scenario().faults.size() == 1);
  const PlacedFault& placed = b.desk.document().scenario().faults.front();
  CHECK(placed.fault.kind == first.front().fault.kind);
  CHECK(placed.player == b.desk.rep()->tape.setup.men[static_cast<std::size_t>(first.front().man)].id);
}

TEST_CASE("fronts stand against every way the run is blocked, a pair clicked is the look") {
  Bench b;
  b.desk.view.study_reps = 2;
  b.act("s,Which front stands up?");
  b.desk.settle(true);
  b.act("right");
  REQUIRE(b.desk.study());
  const auto& matrix = std::get<MatrixResult>(b.desk.study()->result);
  CHECK(matrix.rows.size() >= 3);
  CHECK(matrix.columns.size() == variantNames(*findScheme(library(), "R02")).size());
  b.act("cell 1");
  CHECK(findFront(library(), b.desk.document().scenario().defense.front)->name ==
        b.desk.rep()->tape.setup.front);
  CHECK(matrix.rows.front().rfind(b.desk.document().scenario().defense.front, 0) == 0);
}

TEST_CASE("a strip of the rep shown is written beside the work, where it cannot be, the notice says so") {
  Bench b;
  const auto file = std::filesystem::temp_directory_path() / "gapsound-handout.png";
  std::filesystem::remove(file);
  b.desk.handOut(file.string());
  b.desk.settle(true);
  CHECK(b.desk.notice() == file.string() + " written");
  CHECK(std::filesystem::file_size(file) > 10000);
  std::filesystem::remove(file);
  b.desk.handOut("/no/such/folder/strip.png");
  b.desk.settle(true);
  CHECK(b.desk.notice().find("/no/such/folder") != std::string::npos);
  CHECK(handoutName("looks/mine.json", 7, ".mp4") == "mine-rep-7.mp4");
}

TEST_CASE("the keyboard walks into a card and changes a row") {
  Bench b;
  b.act(kToSafety);
  b.act("m,f6");
  CHECK(b.desk.view.in_cards);
  b.act("enter,type 0.55");
  CHECK(settingOf(b.desk, "SS", &ManSettings::read_delay_s) == 0.55);
  b.act("down,enter,type 7.5");
  CHECK(settingOf(b.desk, "SS", &ManSettings::downhill_yps) == 7.5);
  b.act("escape,space");
  CHECK_FALSE(b.desk.view.in_cards);
  CHECK(b.desk.playback.playing());
}
