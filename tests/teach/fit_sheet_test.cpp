#include "teach/fit_sheet.hpp"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include "analysis/cast.hpp"
#include "pages.hpp"
#include "study/statistics.hpp"
#include "teach/caution.hpp"

using namespace gapsound;
using namespace gapsound::pages;

namespace {

constexpr int kReps = 30;

FitSheet sheetOf(const std::string& scenario) {
  return fitSheetOf(setupOf(scenario), library().phrases, model(), 1, kReps, 2);
}

const FitSheet& power() {
  static const FitSheet sheet = sheetOf("power-right-spill");
  return sheet;
}

}  // namespace

TEST_CASE("a fit sheet has its picture, every defender, three levels and the caution, and nothing overlaps") {
  for (const bool large : {false, true}) {
    for (const Paper paper : {Paper::letter, Paper::a4}) {
      const LaidPage page = fitSheetPage(power(), {paper, large});
      checkLaidOut(page);
      const std::string words = wordsOf(page.list);
      for (const FitRow& row : power().rows) CHECK(has(words, row.man + " "));
      CHECK(has(words, power().title));
      CHECK(has(words, "Level 2 reads the end"));
      CHECK(has(words, "Level 3 reads the first backer"));
      CHECK(has(words, "medical staff"));
      CHECK(page.list.width == sheetSize(paper).x);
    }
  }
}

TEST_CASE("every shipped kind of run makes a sheet that is laid out, type large or not") {
  for (const char* name : {"counter-left-wing", "zone-left-h-back", "counter-left-stack-box"}) {
    INFO(name);
    const FitSheet sheet = sheetOf(name);
    checkLaidOut(fitSheetPage(sheet, {Paper::letter, false}));
    checkLaidOut(fitSheetPage(sheet, {Paper::a4, true}));
  }
}

TEST_CASE("a large sheet is set larger") {
  const auto largest = [](const LaidPage& page) {
    double size = 0.0;
    for (const Shape& shape : page.list.panels.front().shapes)
      if (const auto* label = std::get_if<Label>(&shape); label != nullptr && label->style == StyleId::text)
        size = std::max(size, label->size);
    return size;
  };
  CHECK(largest(fitSheetPage(power(), {Paper::letter, true})) > 1.15 * largest(fitSheetPage(power(), {})));
}

TEST_CASE("what a sheet counts is so on the tapes") {
  const FitSheet& sheet = power();
  const Setup setup = setupOf("power-right-spill");
  const int end = castOf(setup).end, first = castOf(setup).first_backer;
  std::vector<double> yards;
  std::array<int, kEndStates> seen{};
  for (int seed = 1; seed <= kReps; ++seed) {
    const Tape tape = playTape(setup, model(), static_cast<std::uint64_t>(seed));
    yards.push_back(tape.record.yards);
    const int decided = tape.record.line_tick >= 0 ? tape.record.line_tick : tape.record.end_tick;
    int last = -1;
    for (const Event& event : tape.record.events)
      if (event.what == Happening::end_state && event.man == first && event.tick <= decided)
        last = event.code;
    if (last >= 0) ++seen[static_cast<std::size_t>(last)];
  }
  CHECK(sheet.gains.mean == doctest::Approx(meanOf(yards)));
  REQUIRE_FALSE(sheet.levels[1].empty());
  const std::string& id = setup.men[static_cast<std::size_t>(end)].id;
  for (const IfThen& read : sheet.levels[1]) {
    int matching = 0;
    for (std::size_t e = 1; e < seen.size(); ++e)
      if (read.seen == id + " " + library().phrases.ends[e]) matching += read.count == seen[e] ? 1 : 0;
    INFO(read.seen);
    CHECK(matching == 1);
  }
}

TEST_CASE("what a level does on a sheet is what the library tells it to do") {
  const FitSheet& sheet = power();
  const Setup setup = setupOf("power-right-spill");
  const auto kicked = static_cast<std::size_t>(EndState::kicked);
  const auto words = library().phrases.fits[static_cast<std::size_t>(setup.fits.first_backer[0][kicked])];
  for (const IfThen& read : sheet.levels[1])
    if (has(read.seen, "kicked out")) CHECK(read.does.front() == "S: " + words);
}

TEST_CASE("the picture is a rep without alignment spread, its gain nearest to their median") {
  Setup plain = setupOf("power-right-spill");
  plain.mix = {};
  std::vector<double> yards;
  for (int seed = 1; seed <= 40; ++seed)
    yards.push_back(playTape(plain, model(), static_cast<std::uint64_t>(seed)).record.yards);
  const double off = std::abs(power().drawn.record.yards - medianOf(yards));
  for (const double gain : yards) CHECK(off <= std::abs(gain - medianOf(yards)) + 1e-12);
  CHECK(has(wordsOf(fitSheetPage(power(), {}).list), fmt::format("seed {}", power().drawn.seed)));
}

TEST_CASE("a master sheet has a row for every run and a column for every call") {
  MasterSheet master{"Week", kReps, {"Power", "Counter"}, {"Over", "Bear"}, {}};
  const MasterCell cell = masterCellOf(setupOf("power-right-spill"), power().gains);
  master.cells = {{cell, cell}, {cell, cell}};
  const LaidPage page = masterSheetPage(master, {});
  checkLaidOut(page);
  const std::string words = wordsOf(page.list);
  for (const char* part : {"Power", "Counter", "Over", "Bear", "SE spills", "medical staff"})
    CHECK(has(words, part));
  CHECK(has(words, fmt::format("{:.1f} yd", power().gains.mean)));
}

TEST_CASE("long: the costliest mistakes of a sheet are what the failure table says of the same reps") {
  const Setup setup = setupOf("power-right-spill");
  const auto faults = costlyFaultsOf(setup, model(), 1, 60, 2);
  REQUIRE_FALSE(faults.empty());
  CHECK(faults.size() <= 3);
  for (std::size_t i = 1; i < faults.size(); ++i) CHECK(faults[i - 1].loss >= faults[i].loss);
  FitSheet sheet = power();
  sheet.faults = faults;
  const LaidPage page = fitSheetPage(sheet, {});
  checkLaidOut(page);
  const std::string words = wordsOf(page.list);
  CHECK(has(words, "What costs most"));
  // The first one again, on the call, with and without the mistake, seed by seed after those it was picked
  // on.
  std::vector<Setup> sides(2, setup);
  for (Setup& side : sides)
    for (Man& man : side.men) man.fit.off_the_man_in_front = false;
  for (const FaultFacts& facts : faultTable())
    for (Man& man : sides[1].men)
      if (man.faults.empty() && faults[0].words.rfind(man.id + " " + std::string(facts.words), 0) == 0)
        man.faults.push_back({facts.kind, facts.usual});
  const auto reps = playAll(sides, model(), 25, 60, 2);
  CHECK(faults[0].loss == doctest::Approx(meanOf(yardsOf(reps[1])) - meanOf(yardsOf(reps[0]))));
}
