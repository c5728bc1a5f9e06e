#include <cstring>

#include "looks.hpp"
#include "scenario/look.hpp"
#include "scenario/mirror.hpp"

using namespace gapsound;
using namespace gapsound::looks;

namespace {

/// Same bits, a zero being a zero whatever its sign.
bool same(double a, double b) { return a == b; }

bool sameBlock(const BlockJob& a, const BlockJob& b) {
  return a.kind == b.kind && a.target == b.target && a.partner == b.partner && a.leaves == b.leaves &&
         a.climb_to == b.climb_to && a.pull == b.pull && same(a.pull_depth, b.pull_depth) &&
         same(a.delay_s, b.delay_s) && a.reads_kick == b.reads_kick && a.may_log == b.may_log &&
         a.show == b.show && a.spares == b.spares && a.fake_side == b.fake_side;
}

bool sameFit(const FitJob& a, const FitJob& b) {
  return a.level == b.level && a.gap == b.gap && same(a.gap_x, b.gap_x) && same(a.slant_x, b.slant_x) &&
         a.if_right == b.if_right && a.if_left == b.if_left && a.key == b.key && a.man_on == b.man_on &&
         same(a.read_delay_s, b.read_delay_s) && same(a.downhill_yps, b.downhill_yps);
}

void checkMirrored(const Scenario& s) {
  CAPTURE(s.offense.formation);
  CAPTURE(s.defense.front);
  const Setup image = mirrored(resolved(s));
  const Setup other = resolved(mirrored(s));
  CHECK(image.direction == other.direction);
  CHECK(same(image.run.aim_x, other.run.aim_x));
  CHECK(image.run.mesh == other.run.mesh);
  CHECK(image.run.steps == other.run.steps);
  CHECK(same(image.sideline_left, other.sideline_left));
  CHECK(image.passer == other.passer);
  CHECK(image.read.who == other.read.who);
  CHECK(same(image.read.keep_aim_x, other.read.keep_aim_x));
  CHECK(same(image.run.toss_s, other.run.toss_s));
  CHECK(image.carrier == other.carrier);
  for (std::size_t i = 0; i < kMen; ++i) {
    const Man& a = image.men[i];
    const Man& b = other.men[i];
    CAPTURE(a.id);
    CHECK(otherSide(a.id) == b.id);
    CHECK(a.stream == b.stream);
    CHECK(a.group == b.group);
    CHECK(a.spot == b.spot);
    CHECK(a.facing == b.facing);
    CHECK(sameBlock(a.block, b.block));
    CHECK(sameFit(a.fit, b.fit));
    CHECK(std::memcmp(&a.body, &b.body, sizeof(Body)) == 0);
    CHECK(a.faults.size() == b.faults.size());
  }
}

}  // namespace

TEST_CASE("the mirror image of a scenario resolves to the mirror image, to the last bit") {
  const std::pair<const char*, const char*> looks[] = {{"F01", "D01"}, {"F03", "D03"}, {"F07", "D06"},
                                                       {"F10", "D03"}, {"F13", "D04"}, {"F17", "D02"}};
  for (const auto& [formation, front] : looks) {
    for (const Scheme& scheme : library().schemes) {
      for (const char* strength : {"right", "left"}) {
        Scenario s = scenario(formation, scheme.id, front, "cover 3 sky");
        s.offense.strength = strength;
        s.field.spot = "left_hash";
        s.level = Level::pro;
        checkMirrored(s);
      }
    }
  }
}

TEST_CASE("settings, faults and movement are mirrored with the men they belong to") {
  Scenario s = scenario("F07", "R04", "D06");
  s.defense.movement = "slant right";
  s.players["CR"].x = 14.0;
  s.players["LT"].mass_kg = 120.0;
  s.players["M"].read_delay_s = 0.5;
  s.faults.push_back({"CL", {FaultKind::late_read, 0.4}});
  checkMirrored(s);
  CHECK(man(resolved(mirrored(s)), "CL").spot.x == -14.0);
  CHECK(man(resolved(mirrored(s)), "RT").body.mass_kg == 120.0);
}

TEST_CASE("mirroring twice changes nothing") {
  const Setup setup = resolved("F10", "R02", "D03");
  const Setup twice = mirrored(mirrored(setup));
  for (std::size_t i = 0; i < kMen; ++i) {
    CHECK(twice.men[i].spot == setup.men[i].spot);
    CHECK(twice.men[i].id == setup.men[i].id);
    CHECK(sameFit(twice.men[i].fit, setup.men[i].fit));
  }
}

TEST_CASE("names by side name the actual side in a run to the left") {
  Scenario s = scenario("F01", "R01", "D01");
  s.offense.direction = "left";
  const Setup setup = resolved(s);
  CHECK(setup.direction == -1);
  CHECK(man(setup, "LT").spot.x < 0.0);
  CHECK(man(setup, "CR").spot.x > 0.0);
  CHECK(man(setup, "Y").spot.x > 0.0);
  CHECK(idOf(setup, man(setup, "RG").block.target) == "W");
  CHECK(setup.men[0].id == "RT");
}
