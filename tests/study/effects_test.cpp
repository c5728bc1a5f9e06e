#include <doctest/doctest.h>

#include "looks.hpp"
#include "study/effect_sides.hpp"

using namespace gapsound;

namespace {

EffectSides& sides() {
  static EffectSides all(looks::library(), looks::model());
  return all;
}

void checkItem(const std::string& item) {
  for (const Effect& effect : effectList()) {
    if (effect.item != item || !effect.shown || effect.costly || effect.demand == Demand::reported) continue;
    const EffectResult r = sides().judged(effect);
    CAPTURE(effect.words);
    CAPTURE(effect.look);
    CAPTURE(r.paired.difference);
    CAPTURE(r.paired.p_value);
    CHECK(r.holds);
  }
}

Summary gains(double yards) {
  Summary s;
  s.yards = yards;
  return s;
}

std::vector<Summary> shifted(double by) {
  std::vector<Summary> reps;
  for (int k = 0; k < 200; ++k) reps.push_back(gains(k % 7 + by * (k % 2 == 0 ? 0.9 : 1.1)));
  return reps;
}

}  // namespace

TEST_CASE("every effect names men its look has, and its sides differ") {
  for (const Effect& effect : effectList()) {
    CAPTURE(effect.words);
    CAPTURE(effect.look);
    CHECK_NOTHROW((void)resolve(sides().side(effect.look, effect.a), looks::library(), looks::model()));
    CHECK_NOTHROW((void)resolve(sides().side(effect.look, effect.b), looks::library(), looks::model()));
    CHECK(effect.a.size() + effect.b.size() > 0);
  }
}

TEST_CASE("the cast of power from the I: its end, its first backer, both safeties") {
  const Setup& setup = sides().resolved("P1");
  const Cast cast = castOf(setup);
  const auto id = [&](int k) {
    return k == kNobody ? std::string("-") : setup.men[static_cast<std::size_t>(k)].id;
  };
  CHECK(id(cast.end) == "SE");
  CHECK(id(cast.first_backer) == "S");
  CHECK(id(cast.safety) == "SS");
  CHECK(id(cast.back_safety) == "FS");
}

TEST_CASE("an effect holds by its size and its certainty together") {
  Effect effect{"x", "", "P1", {}, {}, Measure::yards, Demand::more, 0.4, 0.001, 200};
  CHECK(judge(effect, 1, shifted(0.0), shifted(0.5)).holds);
  CHECK_FALSE(judge(effect, 1, shifted(0.0), shifted(0.3)).holds);
  CHECK_FALSE(judge(effect, 1, shifted(0.5), shifted(0.0)).holds);
  effect.demand = Demand::bounded;
  CHECK(judge(effect, 1, shifted(0.0), shifted(0.3)).holds);
  CHECK_FALSE(judge(effect, 1, shifted(0.0), shifted(0.5)).holds);
  effect.demand = Demand::reported;
  CHECK(judge(effect, 1, shifted(0.5), shifted(0.0)).holds);
}

TEST_CASE("long: a, a fast safety costs with an early read on counter and not with a sound one on power") {
  checkItem("a");
}
TEST_CASE("long: b, a safety who reads late costs on power") { checkItem("b"); }
TEST_CASE("long: c, over the top of a kicked end costs, and both on the call costs more") { checkItem("c"); }
TEST_CASE("long: d, a safety on his call behind a wide scrape costs") { checkItem("d"); }
TEST_CASE("long: e, spill and box send the ball to different sides") { checkItem("e"); }
TEST_CASE("long: f, a first backer to whom all comes late costs on power") { checkItem("f"); }
TEST_CASE("long: g, a back-side safety who flows gives up more long runs") { checkItem("g"); }
