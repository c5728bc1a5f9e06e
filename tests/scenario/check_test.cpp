#include <algorithm>

#include "looks.hpp"
#include "scenario/check.hpp"

using namespace looks;

namespace {

std::string text(const std::vector<GapOwner>& gaps) {
  std::string out;
  for (const GapOwner& gap : gaps) {
    out += gap.gap + ":";
    for (const std::string& owner : gap.owners) out += owner + ",";
    out += " ";
  }
  return out;
}

std::size_t lineGaps(const Setup& setup) {
  std::size_t count = 0;
  for (const GapOwner& gap : gapsOf(setup)) count += gap.gap.size() == 2;
  return count;
}

}  // namespace

TEST_CASE("power from the I against 4-3 over: seven line gaps, the puller's and the fullback's") {
  CHECK(text(gapsOf(resolved("F01", "R01", "D01"))) ==
        "C-:WE, B-:W, A-:NT, A+:M, B+:DT, C+:S, D+:SE, pull+:W, lead+:SS, ");
  CHECK(concernsOf(resolved("F01", "R01", "D01")).empty());
}

TEST_CASE("attached blockers and one make the line gaps") {
  CHECK(lineGaps(resolved("F13", "R04", "D04")) == 6);
  CHECK(lineGaps(resolved("F01", "R04", "D01")) == 7);
  CHECK(lineGaps(resolved("F09", "R04", "D01")) == 8);
  CHECK(lineGaps(resolved("F10", "R04", "D03")) == 8);
  CHECK(lineGaps(resolved("F16", "R04", "D12")) == 9);
}

TEST_CASE("who has the extra gap of the wing: the nub corner") {
  for (const GapOwner& gap : gapsOf(resolved("F10", "R04", "D03"))) {
    if (gap.gap == "E+") CHECK(gap.owners == std::vector<std::string>{"CR"});
  }
}

TEST_CASE("a run to the left writes its extra gaps on the left") {
  Scenario s = scenario("F10", "R02", "D03");
  s.offense.direction = "left";
  const auto gaps = gapsOf(resolved(s));
  CHECK(gaps.back().gap.back() == '-');
  CHECK(gaps.back().gap.substr(0, 4) == "pull");
}

TEST_CASE("a backer sent deep leaves his gap to nobody, and the end nobody blocks is told") {
  const auto concerns = concernsOf(resolved("F13", "R01", "D04"));
  REQUIRE_FALSE(concerns.empty());
  CHECK(concerns.back() == "nobody blocks SE, the end man");
  const auto open = concernsOf(resolved("F01", "R04", "D10"));
  CHECK(std::find(open.begin(), open.end(), "nobody has B-") == open.end());
}
