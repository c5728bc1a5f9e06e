#include "teach/script.hpp"

#include <doctest/doctest.h>

#include <map>

#include "pages.hpp"

using namespace gapsound;
using namespace gapsound::pages;

namespace {

PracticeDay dayOf(const char* name, double minutes, const char* contact, double other = 0.0) {
  return {name, 10, minutes, contact, other};
}

const std::vector<ScriptRun> kRuns{
    {"Power", "1", {"a1", "b1"}, 0.6}, {"Counter", "2", {"a2", "b2"}, 0.3}, {"Zone", "3", {"a3", "b3"}, 0.1}};

}  // namespace

TEST_CASE(
    "a script gives each run its share, every run before any twice, and says what to see in the call that is "
    "on") {
  const auto scripts = scriptsOf({dayOf("Tuesday", 12, "thud")}, kRuns, {"A", "B"});
  REQUIRE(scripts.size() == 1);
  const auto& rows = scripts[0].rows;
  REQUIRE(rows.size() == 10);
  std::map<std::string, int> counts;
  for (const ScriptRow& row : rows) {
    ++counts[row.run];
    CHECK(row.contact == "thud");
    CHECK(row.intent[0] == (row.call == "A" ? 'a' : 'b'));
    CHECK(row.intent[1] == row.card[0]);
  }
  CHECK(counts["Power"] == 6);
  CHECK(counts["Counter"] == 3);
  CHECK(counts["Zone"] == 1);
  CHECK(rows[0].run == "Power");
  CHECK(rows[1].run == "Counter");
  CHECK(rows[2].run == "Zone");
  CHECK(rows[0].card == "1R");
  CHECK(rows[3].card == "1L");
  CHECK(rows[0].call != rows[3].call);
  CHECK(rows[5].minute == doctest::Approx(6.0));
}

// School federation task force, "Recommendations and guidelines for minimizing head impact exposure and
// concussion risk in football", 2014: full contact on two or three days, at most 30 minutes a day and 60 to
// 90 a week in season.
TEST_CASE("the contact of a week is held against the task force's figures") {
  CHECK(contactWarnings({dayOf("Tuesday", 12, "thud", 18), dayOf("Wednesday", 14, "live", 16),
                         dayOf("Thursday", 30, "live")})
            .empty());
  const auto day = contactWarnings({dayOf("Tuesday", 12, "thud", 19)});
  REQUIRE(day.size() == 1);
  CHECK(has(day[0], "Tuesday has 31 minutes"));
  const auto week = contactWarnings(
      {dayOf("a", 30, "live"), dayOf("b", 30, "live"), dayOf("c", 30, "live"), dayOf("d", 1, "thud")});
  REQUIRE(week.size() == 2);
  CHECK(has(week[0], "91 minutes"));
  CHECK(has(week[1], "4 days"));
  for (const char* free : {"air", "bag", "control"}) CHECK(fullContact(dayOf("x", 60, free)) == 0.0);
}

TEST_CASE("a day's script is a page with its minutes and the week's warnings") {
  const auto pages =
      scriptPages(scriptsOf({dayOf("Tuesday", 40, "live"), dayOf("Thursday", 8, "air")}, kRuns, {"A", "B"}),
                  Paper::letter);
  REQUIRE(pages.size() == 2);
  for (const LaidPage& page : pages) {
    checkLaidOut(page);
    CHECK(has(wordsOf(page.list), "Warning: Tuesday has 40 minutes"));
    CHECK(has(wordsOf(page.list), "medical staff"));
  }
}
