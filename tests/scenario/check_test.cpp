#include <algorithm>

#include "looks.hpp"
#include "scenario/check.hpp"

using namespace gapsound;
using namespace gapsound::looks;

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

TEST_CASE("a quarterback who may run makes one gap more, on the side he runs to") {
  CHECK(gapsOf(resolved("F13", "R14", "D04")).size() == gapsOf(resolved("F13", "R04", "D04")).size() + 1);
  CHECK(gapsOf(resolved("F13", "R14", "D04")).back().gap == "quarterback-");
  CHECK(gapsOf(resolved("F04", "R15", "D03")).back().gap == "quarterback+");
}

TEST_CASE("quarterback power: the back who leads is the quarterback's gap, so the count goes up by one") {
  const auto given = gapsOf(resolved("F01", "R01", "D01")), kept = gapsOf(resolved("F01", "R16", "D01"));
  CHECK(kept.size() == given.size() + 1);
  CHECK(kept.back().gap == "quarterback+");
  CHECK(kept.back().owners == std::vector<std::string>{"FS"});
}

TEST_CASE("the man the quarterback reads is not missed by the blockers") {
  for (const std::string& concern : concernsOf(resolved("F04", "R15", "D03")))
    CHECK(concern.find("nobody blocks") == std::string::npos);
}

TEST_CASE("split zone: the gap of the man who kicks out the back side is on the back side") {
  const auto gaps = gapsOf(resolved("F03", "R05", "D01"));
  CHECK(gaps.back().gap == "lead-");
}

TEST_CASE("every front has movements to call, and each leaves every gap of its own formation to somebody") {
  for (const Front& front : library().fronts) {
    CHECK(movementNames(front).size() > 1);
    for (const Movement& movement : front.movements) {
      CAPTURE(front.id);
      CAPTURE(movement.name);
      // Common practice, no source: the nose away from the end and the angle away from him leave the edge to
      // whoever folds.
      const bool folds = movement.name == "nose right" || movement.name == "angle left";
      Scenario s = scenario(front.drawn_against, "R04", front.id);
      s.defense.movement = movement.name;
      std::size_t open = 0;
      for (const GapOwner& gap : gapsOf(resolved(s))) open += gap.owners.empty();
      CHECK(open <= (folds ? 1U : 0U));
    }
  }
}
