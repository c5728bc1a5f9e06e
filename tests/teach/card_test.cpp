#include "teach/card.hpp"

#include <doctest/doctest.h>

#include "pages.hpp"
#include "picture/diagram.hpp"
#include "scenario/assignments.hpp"
#include "scenario/mirror.hpp"
#include "study/reps.hpp"
#include "teach/caution.hpp"

using namespace gapsound;
using namespace gapsound::pages;

namespace {

Tape plainTape(const std::string& scenario) {
  Setup setup = setupOf(scenario);
  setup.mix = {};
  return playTape(setup, model(), 3);
}

ScoutCard cardOf(const std::string& scenario) {
  return scoutCardOf(plainTape(scenario), "7R", "Their power", "Over");
}

}  // namespace

TEST_CASE("cards come one, two or four to a page, each with number, play, call, movers and its caution") {
  const std::vector<ScoutCard> cards(5, cardOf("power-right-spill"));
  for (const int to_a_page : {1, 2, 4}) {
    const auto pages = cardPages(cards, {Paper::letter, to_a_page});
    CHECK(static_cast<int>(pages.size()) == (5 + to_a_page - 1) / to_a_page);
    for (const LaidPage& page : pages) {
      checkLaidOut(page);
      const std::string words = wordsOf(page.list);
      for (const char* part : {"7R", "Their power", "Over", "LG: skip pull, wrap S", "F: kick SE",
                               "Contact level", "medical staff"}) {
        INFO(part);
        CHECK(has(words, part));
      }
    }
  }
  checkLaidOut(cardPages(cards, {Paper::a4, 1}).front());
}

TEST_CASE("a card says of a mover what his job is against our call") {
  const ScoutCard card = cardOf("counter-right-guard-and-h");
  for (const Assignment& job : assignmentsOf(card.drawn.setup)) {
    if (job.pull.empty()) continue;
    INFO(job.player);
    bool said = false;
    for (const std::string& line : card.movers)
      said =
          said || line.rfind(job.player + ": " + job.pull + " pull, " + job.block + " " + job.target, 0) == 0;
    CHECK(said);
  }
}

TEST_CASE("a card's defenders are dots with names and its paths end where the blocker met his man") {
  const ScoutCard card = cardOf("power-right-spill");
  const DisplayList page = cardPages({card}, {}).front().list;
  const std::string words = wordsOf(page);
  for (int man = kOffense; man < kMen; ++man)
    CHECK(has(words, card.drawn.setup.men[static_cast<std::size_t>(man)].id));
  int dots = 0;
  for (const Panel& panel : page.panels)
    for (const Shape& shape : panel.shapes)
      if (const auto* disc = std::get_if<Disc>(&shape)) dots += disc->style == StyleId::dot ? 1 : 0;
  CHECK(dots == 11);
  for (int man = 0; man < kOffense; ++man) {
    const BlockPath path = blockPathOf(card.drawn, man);
    if (path.bars.empty()) continue;
    const Vec2 landing = path.points[path.bars.front()];
    double nearest = 99.0;
    for (int other = kOffense; other < kMen; ++other)
      for (const Frame& frame : card.drawn.record.frames)
        if (distance(frame.men[static_cast<std::size_t>(man)].pos, landing) < 0.05)
          nearest = std::min(nearest, distance(frame.men[static_cast<std::size_t>(other)].pos, landing));
    INFO(card.drawn.setup.men[static_cast<std::size_t>(man)].id);
    CHECK(nearest < 1.5);
  }
}

TEST_CASE("wide and deep men are drawn closer, in the order they stand") {
  double before = -1.0;
  for (double x = 0.0; x < 27.0; x += 0.5) {
    CHECK(drawnAt({x, 0.0}).x > before);
    CHECK(drawnAt({-x, 0.0}).x == doctest::Approx(-drawnAt({x, 0.0}).x));
    before = drawnAt({x, 0.0}).x;
  }
  CHECK(drawnAt({36.0, 0.0}).x < 10.3);  // from a hash mark to the far sideline: still on the card
  CHECK(drawnAt({4.4, -1.0}) == Vec2{4.4, -1.0});
  CHECK(drawnAt({0.0, 12.0}).y < 10.0);
}
