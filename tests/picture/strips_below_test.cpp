#include <doctest/doctest.h>

#include "made_up_tape.hpp"
#include "picture/ladder.hpp"
#include "picture/ledger.hpp"
#include "shapes.hpp"

using namespace gapsound;
using namespace gapsound::made_up;

namespace {

const LedgerLook kLedger{{0.0, 500.0, 1280.0, 84.0}, 15.0, 1.0};

Camera camera() { return fieldCamera({0.0, 0.0, 1280.0, 500.0}, {-12.0, -6.0}, {12.0, 10.0}); }

std::vector<Rect> cellsOf(const Panel& panel) {
  std::vector<Rect> cells;
  for (const Rect& rect : all<Rect>(panel)) cells.push_back(rect);
  return cells;
}

}  // namespace

TEST_CASE("a ledger cell stands under its lane and says owner, cause, width and margin") {
  const Panel panel = ledgerPanel(setup(), {lanes().back()}, camera(), kLedger);
  const auto cells = cellsOf(panel);
  REQUIRE(cells.size() == 1);
  const double lane_x = camera().toPage({3.3, 1.0}).x;
  CHECK(0.5 * (cells[0].low.x + cells[0].high.x) == doctest::Approx(lane_x));
  CHECK(cells[0].style == StyleId::cell_open);
  std::vector<std::string> words;
  for (const Label& label : all<Label>(panel)) words.push_back(label.text);
  CHECK(words == std::vector<std::string>{"C+  2.2 yd", "M absent", "+0.35 s"});
}

TEST_CASE("cells keep the order of their lanes and never overlap, however close the lanes are") {
  std::vector<Lane> crowded;
  for (int i = 0; i < 6; ++i) {
    Lane lane = lanes().back();
    lane.left = 9.0 + 0.3 * i, lane.right = lane.left + 1.3;
    crowded.push_back(lane);
  }
  const auto cells = cellsOf(ledgerPanel(setup(), crowded, camera(), kLedger));
  REQUIRE(cells.size() == 6);
  for (std::size_t i = 1; i < cells.size(); ++i) CHECK(cells[i].low.x > cells[i - 1].high.x);
  CHECK(cells.front().low.x >= 0.0);
  CHECK(cells.back().high.x <= 1280.0);
}

TEST_CASE("lanes too narrow to run through get no cell") {
  std::vector<Lane> narrow{lanes().back()};
  narrow[0].right = narrow[0].left + 1.1;
  CHECK(cellsOf(ledgerPanel(setup(), narrow, camera(), kLedger)).empty());
}

TEST_CASE("where the strip is too short the lanes with the best margin keep their cells") {
  LedgerLook thin = kLedger;
  thin.box.width = 220.0;
  thin.box.x = 530.0;
  const Panel panel = ledgerPanel(setup(), lanes(), camera(), thin);
  CHECK(cellsOf(panel).size() == 2);
  CHECK(count<Rect>(panel, StyleId::cell_closed) == 0);
}

TEST_CASE("the ladder puts what a defender saw, decided and did on the row of his level") {
  const auto ticks = ladderTicks(tape());
  const auto has = [&](int row, int man, LadderKind kind) {
    for (const LadderTick& tick : ticks) {
      if (tick.row == row && tick.man == man && tick.kind == kind) return true;
    }
    return false;
  };
  CHECK(has(2, 16, LadderKind::saw));
  CHECK(has(2, 16, LadderKind::decided));
  CHECK(has(2, 16, LadderKind::did));
  CHECK(has(3, 19, LadderKind::decided));
  CHECK(has(1, 14, LadderKind::did));  // engaged by a blocker: his line, though the blocker is named first
  CHECK(has(0, kBack, LadderKind::ball));
}

TEST_CASE("the ladder's words name the man and the matter") {
  for (const LadderTick& tick : ladderTicks(tape())) {
    if (tick.man == 14) CHECK(tick.words == "SE meets H");
    if (tick.man == 16 && tick.kind == LadderKind::saw) CHECK(tick.words == "M reads his key");
  }
}

TEST_CASE("a place on the ladder and its time are the same thing both ways") {
  const LadderLook look{{0.0, 600.0, 1280.0, 120.0}, 14.0, kNobody};
  for (const LadderTick& tick : ladderTicks(tape())) {
    CHECK(ladderTime(tape(), look, ladderPoint(tape(), look, tick).x) == doctest::Approx(tick.t));
  }
  CHECK(ladderTime(tape(), look, -50.0) == 0.0);
  CHECK(ladderTime(tape(), look, 5000.0) == doctest::Approx(4.0));
}

TEST_CASE("the play head stands at the time shown") {
  const LadderLook look{{0.0, 600.0, 1280.0, 120.0}, 14.0, kNobody};
  const auto heads = all<Line>(ladderPanel(tape(), 2.0, look), StyleId::play_head);
  REQUIRE(heads.size() == 1);
  CHECK(ladderTime(tape(), look, heads[0].a.x) == doctest::Approx(2.0));
}
