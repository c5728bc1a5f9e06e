#include "looks.hpp"

using namespace gapsound;
using namespace gapsound::looks;

namespace {

Scenario moving(const char* formation, const char* player, const char* kind, const char* front = "D01") {
  Scenario s = scenario(formation, "R04", front);
  s.offense.motion = MotionCall{player, kind};
  return s;
}

}  // namespace

TEST_CASE("fly motion: across the quarterback at speed, the defense where it was, and a fake after") {
  const Setup still = resolved("F06", "R04", "D03");
  const Setup fly = resolved(moving("F06", "A", "fly", "D03"));
  const Man& a = man(fly, "A");
  CHECK(a.spot.x < 0.0);  // he comes from the left
  CHECK(a.vel.x > 6.0);   // published for motion at the mesh: 6-8 yd/s (common practice)
  CHECK(a.vel.y <= 0.0);  // nobody moves forward at the snap
  CHECK(a.block.kind == BlockKind::fake);
  CHECK(a.block.fake_side == +1);
  for (std::size_t i = kOffense; i < kMen; ++i) CHECK(fly.men[i].spot == still.men[i].spot);
}

TEST_CASE("orbit motion goes behind the back, an H across ends up on the other side with his own job") {
  const Setup orbit = resolved(moving("F01", "Z", "orbit"));
  CHECK(man(orbit, "Z").spot.y < man(orbit, "T").spot.y);
  CHECK(man(orbit, "Z").vel.x < 0.0);
  Scenario s = scenario("F07", "R01", "D04");
  CHECK(man(resolved(s), "H").spot.x > 0.0);
  s.offense.motion = MotionCall{"H", "H across"};
  const Setup across = resolved(s);
  CHECK(man(across, "H").spot.x < 0.0);
  CHECK(man(across, "H").vel.x < 0.0);
  CHECK(man(across, "H").block.kind == BlockKind::kick);
}

TEST_CASE("a tight-end trade: strength flips, the front stays, the backers go over, seven stay on the line") {
  const Setup still = resolved("F01", "R04", "D01");
  const Setup trade = resolved(moving("F01", "Y", "trade"));
  CHECK(man(trade, "Y").spot.x == -man(still, "Y").spot.x);
  CHECK(man(trade, "X").spot.y < man(still, "X").spot.y);  // off the line, or Y is no receiver
  CHECK(man(trade, "Z").spot.y > man(still, "Z").spot.y);
  CHECK(man(trade, "DT").spot == man(still, "DT").spot);
  CHECK(man(trade, "M").spot.x == doctest::Approx(man(still, "M").spot.x - 0.7));
}

TEST_CASE("motions that cannot be are refused where they stand") {
  CHECK(refusal(moving("F01", "B", "fly")).path() == "/offense/motion/player");
  CHECK(refusal(moving("F01", "X", "fly")).path() == "/offense/motion/player");  // on the line
  CHECK(refusal(moving("F01", "RT", "fly")).path() == "/offense/motion/player");
  CHECK(refusal(moving("F09", "Y", "trade")).path() == "/offense/motion");  // both ends are taken
  CHECK(refusal(moving("F01", "Z", "flie")).path() == "/offense/motion/kind");
}

TEST_CASE("a motion is mirrored with the look") {
  for (const char* strength : {"right", "left"}) {
    Scenario s = moving("F06", "A", "fly", "D03");
    s.offense.strength = strength;
    Scenario other = s;
    other.offense.strength = s.offense.strength == "left" ? "right" : "left";
    other.offense.direction = "left";
    const Setup a = resolved(s), b = resolved(other);
    CHECK(man(a, "A").spot == mirrored(man(b, "A").spot));
    CHECK(man(a, "A").vel == mirrored(man(b, "A").vel));
    CHECK(man(a, "A").block.fake_side == man(b, "A").block.fake_side);
  }
}
