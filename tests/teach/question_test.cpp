#include "teach/question.hpp"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>

#include "pages.hpp"
#include "study/statistics.hpp"

using namespace gapsound;
using namespace gapsound::pages;

namespace {

int manOf(const Setup& setup, const std::string& id) {
  for (int man = kOffense; man < kMen; ++man)
    if (setup.men[static_cast<std::size_t>(man)].id == id) return man;
  return kNobody;
}

/// Choices of the first backer against power, judged on few reps.
const std::vector<FitChoice>& choices() {
  static const Setup setup = setupOf("power-right-spill");
  static const std::vector<FitChoice> found = choicesOf(setup, manOf(setup, "S"), model(), 1, 120, 2);
  return found;
}

/// A choice whose margins are set by hand, so that the page does not depend on the model's tuning.
FitChoice madeClear() {
  FitChoice choice = choices().front();
  choice.right.place = {3.0, 2.0};
  choice.others.resize(1);
  choice.others[0].place = {6.0, 2.0};
  choice.others[0].difference = 1.5, choice.others[0].ci = {0.5, 2.5};
  return choice;
}

}  // namespace

TEST_CASE("what a choice says of a deed is so on the tapes of its judging seeds") {
  const Setup setup = setupOf("power-right-spill");
  REQUIRE_FALSE(choices().empty());
  const FitChoice& choice = choices().front();
  REQUIRE(choice.end.has_value());
  std::vector<double> right, other;
  for (std::uint64_t seed = 41; seed <= 120; ++seed) {
    const Tape tape = playTape(setup, model(), seed);
    const int decided = tape.record.line_tick >= 0 ? tape.record.line_tick : tape.record.end_tick;
    int last = 0;
    for (const Event& event : tape.record.events)
      if (event.what == Happening::end_state && event.man == choice.man && event.tick <= decided)
        last = event.code;
    if (last != static_cast<int>(*choice.end)) continue;
    right.push_back(std::min(tape.record.yards, kLongestCounted));
    const Setup changed = withDeed(setup, choice, choice.others.back().deed);
    other.push_back(std::min(playTape(changed, model(), seed).record.yards, kLongestCounted));
  }
  CHECK(choice.n == static_cast<int>(right.size()));
  CHECK(choice.right.mean == doctest::Approx(meanOf(right)));
  CHECK(choice.others.back().difference == doctest::Approx(meanOf(other) - meanOf(right)));
}

TEST_CASE("a place is offered only when it costs clearly more, and nothing is asked when another is better") {
  FitChoice choice = madeClear();
  CHECK(choice.clear(kClearMargin));
  choice.others[0].ci.low = -0.1;
  CHECK_FALSE(choice.clear(kClearMargin));
  choice = madeClear();
  choice.others[0].difference = 0.4;
  CHECK_FALSE(choice.clear(kClearMargin));
  choice = madeClear();
  choice.others[0].place = choice.right.place;
  CHECK_FALSE(choice.clear(kClearMargin));
  choice = madeClear();
  choice.others.insert(choice.others.begin(), choice.others[0]);
  choice.others[0].difference = -1.0;
  CHECK_FALSE(choice.clear(kClearMargin));
}

TEST_CASE("a question hides names, marks the man, and its second page tells answer, reason and figures") {
  const Setup setup = setupOf("power-right-spill");
  const FitQuestion question = questionOf(setup, madeClear(), "Over", library().phrases, model());
  REQUIRE(question.answers.size() == 2);
  CHECK(question.answers[0].option.place.x < question.answers[1].option.place.x);
  const auto pages = questionPages(question, 1, Paper::letter);
  REQUIRE(pages.size() == 2);
  for (const LaidPage& page : pages) checkLaidOut(page);
  const auto labels = [](const LaidPage& page, const std::string& text) {
    int count = 0;
    for (const Panel& panel : page.list.panels)
      for (const Shape& shape : panel.shapes)
        if (const auto* label = std::get_if<Label>(&shape)) count += label->text == text ? 1 : 0;
    return count;
  };
  for (const char* id : {"SE", "NT", "SS", "LG"}) CHECK(labels(pages[0], id) == 0);
  CHECK(labels(pages[1], "NT") == 1);
  CHECK(has(wordsOf(pages[0].list), "You are S, ringed. The call is Over."));
  CHECK(labels(pages[0], "A") == 1);
  const std::string reason = wordsOf(pages[1].list);
  CHECK(has(reason, "A: SE is kicked out, so "));
  CHECK(has(reason, "1.5 yd more (0.5 to 2.5)"));
  CHECK(has(reason, fmt::format("On {} reps", question.choice.n)));
}
