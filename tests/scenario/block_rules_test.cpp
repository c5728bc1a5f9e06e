// The rule words of a scheme one by one, each on a front where it has to answer in a known way (common
// practice, no source).
#include <algorithm>

#include "looks.hpp"

using namespace gapsound;
using namespace gapsound::looks;

namespace {

using K = BlockKind;

const BlockJob& jobOf(const Setup& setup, const char* id) { return man(setup, id).block; }
std::string targetOf(const Setup& setup, const char* id) { return idOf(setup, jobOf(setup, id).target); }

Setup variant(const char* formation, const char* scheme, const char* name, const char* front,
              const char* shell = "quarters") {
  Scenario s = scenario(formation, scheme, front, shell);
  s.offense.variant = name;
  return resolved(s);
}

/// The library with one scheme's job list replaced.
Setup withJob(const char* scheme, const std::string& place, const BlockSteps& steps, const char* formation,
              const char* front) {
  Library changed = library();
  for (Scheme& each : changed.schemes) {
    if (each.id == scheme) each.jobs[place] = steps;
  }
  return resolve(scenario(formation, scheme, front), changed, model());
}

BlockStep step(BlockRule rule, const std::string& at = "") {
  BlockStep made;
  made.rule = rule;
  made.at = at;
  return made;
}

bool noted(const Setup& setup, const std::string& words) {
  return std::any_of(setup.notes.begin(), setup.notes.end(),
                     [&](const std::string& note) { return note.find(words) != std::string::npos; });
}

}  // namespace

TEST_CASE("trap: the first man past the guard is left, shown the way out and hit by the far guard") {
  const Setup setup = resolved("F01", "R08", "D01");
  CHECK(jobOf(setup, "LG").kind == K::kick);
  CHECK(targetOf(setup, "LG") == "DT");
  CHECK(jobOf(setup, "LG").pull == PullStyle::flat);
  CHECK(jobOf(setup, "RG").kind == K::climb);
  CHECK(jobOf(setup, "RG").show == Show::past);
  CHECK(targetOf(setup, "RT") == "S");
  CHECK(targetOf(setup, "RG") == "M");
  CHECK(targetOf(setup, "LT") == "W");
  CHECK(idOf(setup, setup.carrier) == "F");
  CHECK(jobOf(setup, "T").kind == K::fake);
  for (const Man& each : setup.men) {
    if (each.attacks && each.id != "LG") CHECK(idOf(setup, each.block.spares) == "DT");
  }
}

TEST_CASE("trap without a three: the trap is long, on the five, and the guard doubles the nose") {
  const Setup setup = resolved("F01", "R08", "D05");
  CHECK(targetOf(setup, "LG") == "DE");
  CHECK(targetOf(setup, "RG") == "NT");
  CHECK(targetOf(setup, "C") == "NT");
}

TEST_CASE("wham: the nose is left for the H, the centre climbs, with nobody to wham the centre has him") {
  const Setup setup = resolved("F03", "R09", "D01");
  CHECK(targetOf(setup, "H") == "NT");
  CHECK(jobOf(setup, "C").kind == K::climb);
  CHECK(targetOf(setup, "RT") == "DT");
  CHECK(idOf(setup, jobOf(setup, "C").spares) == "NT");
  const Setup alone = resolved("F13", "R09", "D04");
  CHECK(jobOf(alone, "C").kind == K::base);
  CHECK(targetOf(alone, "C") == "NT");
  CHECK(noted(alone, "there is no kicker"));
}

TEST_CASE("pin-pull: who has a man inside pins him, who is free pulls to the force") {
  const Setup setup = resolved("F01", "R11", "D01");
  CHECK(jobOf(setup, "RT").kind == K::down);
  CHECK(targetOf(setup, "RT") == "DT");
  CHECK(jobOf(setup, "RG").pull == PullStyle::open);
  CHECK(targetOf(setup, "RG") == "SS");
  CHECK(jobOf(setup, "RG").may_log);
  CHECK(jobOf(setup, "C").kind == K::back);
  CHECK(targetOf(setup, "F") == "S");
  const Setup under = resolved("F01", "R11", "D02");
  CHECK(targetOf(under, "Y") == "SE");
  CHECK(jobOf(under, "RT").pull == PullStyle::open);
  CHECK(targetOf(under, "RG") == "NT");
}

TEST_CASE("pull is off while a man nobody else has is on the puller") {
  const Setup setup = withJob("R11", "PST", {step(BlockRule::pull), step(BlockRule::cover)}, "F13", "D04");
  CHECK(jobOf(setup, "RT").pull == PullStyle::none);
  CHECK(targetOf(setup, "RT") == "SE");
}

TEST_CASE("toss crack: the receiver cracks the nearest free man inside, never a corner who is out there") {
  const Setup setup = resolved("F08", "R12", "D01", "cover 3 sky");
  CHECK(jobOf(setup, "Z").kind == K::crack);
  const int cracked = jobOf(setup, "Z").target;
  REQUIRE(cracked != kNobody);
  CHECK(setup.men[static_cast<std::size_t>(cracked)].group != Group::corner);
  CHECK(setup.run.toss_s > 0.0);
  CHECK(setup.run.toss_s < setup.run.mesh_s);
  const Setup wide = resolved("F01", "R12", "D01");
  CHECK(jobOf(wide, "Z").kind != K::none);
}

TEST_CASE("fan takes a man far enough outside and nobody else") {
  BlockStep fan = step(BlockRule::fan);
  fan.from = 0.3;
  const Setup setup = withJob("R08", "PSTE", {fan, step(BlockRule::climb)}, "F01", "D01");
  CHECK(jobOf(setup, "Y").kind == K::fan);
  CHECK(targetOf(setup, "Y") == "SE");
  fan.from = 0.9;
  CHECK(jobOf(withJob("R08", "PSTE", {fan, step(BlockRule::climb)}, "F01", "D01"), "Y").kind == K::climb);
}

TEST_CASE("dart: the tackle sets and walls the five out, the far tackle wraps, the end behind is left") {
  const Setup setup = resolved("F13", "R13", "D04");
  CHECK(jobOf(setup, "RT").kind == K::wall);
  CHECK(jobOf(setup, "RT").show == Show::pass_set);
  CHECK(targetOf(setup, "RT") == "SE");
  CHECK(targetOf(setup, "LT") == "M");
  CHECK(jobOf(setup, "LT").pull == PullStyle::skip);
  for (const Man& each : setup.men) {
    if (each.attacks) CHECK(idOf(setup, each.block.target) != "WE");
  }
}

TEST_CASE("wedge: centre and guards are on one man, the others squeeze the next man inside") {
  const Setup setup = resolved("F01", "R18", "D02");
  for (const char* id : {"LG", "C", "RG"}) CHECK(targetOf(setup, id) == "NT");
  CHECK(targetOf(setup, "LT") == "DT");
  CHECK(targetOf(setup, "Y") == "SE");
  CHECK(idOf(setup, setup.carrier) == "Q");
  CHECK(setup.carrier == setup.passer);
}

TEST_CASE("power read: end and first backer are left, the end man of the line arcs to the force") {
  const Setup setup = resolved("F06", "R15", "D03");
  CHECK(jobOf(setup, "Y").kind == K::arc);
  CHECK(targetOf(setup, "Y") == "SS");
  CHECK(targetOf(setup, "LG") == "M");
  CHECK(idOf(setup, setup.read.who) == "SE");
  CHECK(setup.read.keeps_if_wide);
  for (const Man& each : setup.men) {
    if (each.attacks) CHECK(idOf(setup, each.block.target) != "SE");
  }
}

TEST_CASE("zone read: the end away from the run is left and read, the tackle goes inside him") {
  const Setup setup = resolved("F13", "R14", "D04");
  CHECK(idOf(setup, setup.read.who) == "WE");
  CHECK(jobOf(setup, "LT").kind == K::climb);
  CHECK(targetOf(setup, "LT") == "W");
  CHECK(setup.read.keep_aim_x < 0.0);
  for (const Man& each : setup.men) {
    if (each.attacks) CHECK(idOf(setup, each.block.spares) == "WE");
  }
  const Setup lock = variant("F13", "R14", "lock", "D04");
  CHECK(targetOf(lock, "LT") == "WE");
  CHECK(idOf(lock, lock.read.who) == "W");
}

TEST_CASE("read plays move a quarterback under centre back to pistol, a sneak moves him up") {
  const Setup read = resolved("F01", "R14", "D01");
  CHECK(man(read, "Q").spot.y == -4.0);
  CHECK(noted(read, "pistol"));
  CHECK(distance(man(read, "F").spot, man(read, "Q").spot) > 1.0);
  CHECK(read.snap_flight_s > 0.0);
  const Setup sneak = resolved("F13", "R18", "D04");
  CHECK(man(sneak, "Q").spot.y == -1.3);
  CHECK(sneak.snap_flight_s == 0.0);
}

TEST_CASE("who stands in: fullback, H, wing behind the play, the other back, then the tight end") {
  CHECK(targetOf(resolved("F01", "R01", "D01"), "F") == "SE");
  const Setup h = resolved("F07", "R01", "D04");
  CHECK(targetOf(h, "H") == "SE");
  CHECK(noted(h, "no F: H is the kicker"));
  const Setup end = resolved("F06", "R01", "D03");
  CHECK(targetOf(end, "Y") == "SE");
  CHECK(noted(end, "no F: Y is the kicker"));
  const Setup tackle = resolved("F13", "R02", "D04");
  CHECK(jobOf(tackle, "LT").kind == K::wrap);
  CHECK(noted(tackle, "no H: LT is the wrapper"));
  const Setup back = resolved("F13", "R16", "D04");
  CHECK(jobOf(back, "T").kind == K::kick);
  CHECK(noted(resolved("F06", "R08", "D03"), "no F: T carries"));
}

TEST_CASE("variants of power and counter change the man they name and nothing else") {
  const Setup base = resolved("F01", "R01", "D08", "cover 1");
  const Setup tackle = variant("F01", "R01", "tackle pull", "D08", "cover 1");
  CHECK(jobOf(tackle, "LT").kind == K::wrap);
  CHECK(targetOf(tackle, "LG") == "DT2");
  CHECK(targetOf(tackle, "RT") == targetOf(base, "RT"));
  const Setup one_back = variant("F01", "R01", "one-back", "D01");
  CHECK(targetOf(one_back, "Y") == "SE");
  const Setup arc = variant("F01", "R01", "arc", "D01", "cover 3 sky");
  CHECK(targetOf(arc, "Y") == "SS");
  const Setup end = variant("F09", "R02", "tight end pulls", "D01");
  CHECK(jobOf(end, "U").kind == K::wrap);
  const Setup away = variant("F03", "R02", "back away", "D01");
  CHECK(away.carrier == away.passer);
  CHECK(jobOf(away, "T").kind == K::fake);
  const Setup read = variant("F03", "R02", "read end", "D01");
  CHECK(idOf(read, read.read.who) == "WE");
  CHECK(idOf(read, jobOf(read, "LT").target) == "W");
}

TEST_CASE("split zone: the H kicks, passes or inserts by variant") {
  CHECK(targetOf(resolved("F07", "R05", "D04"), "H") == "WE");
  const Setup arc = variant("F07", "R05", "arc", "D04");
  CHECK(jobOf(arc, "H").kind == K::arc);
  CHECK(targetOf(arc, "H") != "WE");
  const Setup insert = variant("F07", "R05", "insert", "D04");
  CHECK(targetOf(insert, "H") == "W");
  CHECK(targetOf(insert, "LT") == "WE");
}

TEST_CASE("every scheme has its variants: three for power and counter, two for the other runs") {
  for (const Scheme& scheme : library().schemes) {
    CAPTURE(scheme.id);
    const bool three = scheme.id == "R01" || scheme.id == "R02" || scheme.id == "R03";
    CHECK(scheme.variants.size() >= (three ? 3U : 2U));
  }
  CHECK(library().schemes.size() == 18);
}
