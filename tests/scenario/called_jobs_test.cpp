// Who is force by call, where a backer overlaps and a man's own job. Parts by coverage and by call: common
// practice, no source.
#include "looks.hpp"

using namespace gapsound;
using namespace gapsound::looks;

namespace {

using R = FitRole;

Scenario forced(const std::string& by, const std::string& front = "D01",
                const std::string& shell = "quarters", const std::string& formation = "F01") {
  Scenario s = scenario(formation, "R01", front, shell);
  s.defense.force = by;
  return s;
}

R onRight(const Setup& setup, const char* id) { return man(setup, id).fit.if_right; }

}  // namespace

TEST_CASE("force by safety, backer or corner: he is force, the alley is another's") {
  const Setup safety = resolved(forced("safety"));
  CHECK(onRight(safety, "SS") == R::force);
  CHECK(onRight(safety, "S") == R::first_backer);
  CHECK(man(safety, "FS").fit.if_left == R::force);
  const Setup backer = resolved(forced("backer"));
  CHECK(onRight(backer, "S") == R::force);
  CHECK(man(backer, "S").fit.gap == "force+");
  CHECK(onRight(backer, "SS") == R::alley);
  CHECK(onRight(backer, "M") == R::first_backer);
  CHECK(onRight(backer, "W") == R::overlap_backer);
  CHECK(man(backer, "S").fit.if_left == R::overlap_backer);
  CHECK(backer.notes.back() == "no backer to force on the left: there it is as the shell has it");
  const Setup corner = resolved(forced("corner"));
  CHECK(onRight(corner, "CR") == R::force);
  CHECK(man(corner, "CL").fit.if_left == R::force);
  CHECK(onRight(corner, "SS") == R::alley);
}

TEST_CASE("an overhang whose force a safety is called to takes his alley") {
  CHECK(onRight(resolved("F13", "R01", "D04"), "NK") == R::force);
  const Setup setup = resolved(forced("safety", "D04", "quarters", "F13"));
  CHECK(onRight(setup, "SS") == R::force);
  CHECK(onRight(setup, "NK") == R::alley);
}

TEST_CASE("force can differ by side") {
  Scenario s = scenario("F01", "R01", "D01");
  s.defense.force_left = "corner";
  s.defense.force_right = "backer";
  const Setup setup = resolved(s);
  CHECK(onRight(setup, "S") == R::force);
  CHECK(man(setup, "CL").fit.if_left == R::force);
  CHECK(man(setup, "S").fit.if_left == R::overlap_backer);
  Scenario left = s;
  left.offense.direction = "left";
  CHECK(onRight(resolved(left), "S") == R::force);
}

TEST_CASE("a force who is not there is refused where the file names him") {
  const InputError man = refusal(forced("corner", "D01", "cover 1"));
  CHECK(man.path() == "/defense/call/force");
  CHECK(man.value() == "\"corner\"");
  CHECK(man.allowed().find("safety") != std::string::npos);
  Scenario s = scenario("F01", "R01", "D01");
  s.defense.force_left = "backer";
  s.defense.force_right = "backer";
  CHECK(refusal(s).path() == "/defense/call/force/left");
  s.offense.direction = "left";
  CHECK(refusal(s).path() == "/defense/call/force/left");
  CHECK(refusal(forced("linebacker")).path() == "/defense/call/force");
}

TEST_CASE("overlap over: the back-side backer over the top of a spilled end, the first one inside") {
  const auto spilled = static_cast<std::size_t>(EndState::spilled);
  const auto kicked = static_cast<std::size_t>(EndState::kicked);
  Scenario s = scenario("F01", "R01", "D03");
  const Setup under = resolved(s);
  CHECK(under.fits.first_backer[0][spilled] == Fit::over_top);
  CHECK(under.fits.overlap_backer[0][spilled] == Fit::under);
  s.defense.overlap = "over";
  const Setup over = resolved(s);
  CHECK(over.fits.first_backer[0][spilled] == Fit::inside);
  CHECK(over.fits.overlap_backer[0][spilled] == Fit::over_top);
  CHECK(over.fits.first_backer[0][kicked] == under.fits.first_backer[0][kicked]);
  s.defense.bs_backer = "fold";
  CHECK(resolved(s).fits.first_backer[0][spilled] == Fit::over_top);
  s.defense.bs_backer = "overlap";
  s.defense.front = "D01";
  const Setup three = resolved(s);
  CHECK(three.fits.fill_backer[0][spilled] == Fit::over_top);
  CHECK(three.fits.overlap_backer[0][spilled] == Fit::tight_double);
}

TEST_CASE("the nose in one gap: the backer behind him reads the guard away") {
  Scenario s = scenario("F13", "R04", "D07");
  s.defense.movement = "nose right";
  const Setup right = resolved(s);
  CHECK(man(right, "M").fit.gap == "A-");
  CHECK(idOf(right, man(right, "M").fit.key) == "LG");
  s.defense.movement = "nose left";
  const Setup left = resolved(s);
  CHECK(man(left, "W").fit.gap == "A+");
  CHECK(idOf(left, man(left, "W").fit.key) == "RG");
}

TEST_CASE("a man's own job: a part only one has goes over to him") {
  Scenario s = scenario("F01", "R01", "D01");
  s.players["FS"].job_right = "alley";
  s.players["SS"].job_left = "alley";
  const Setup setup = resolved(s);
  CHECK(onRight(setup, "FS") == R::alley);
  CHECK(onRight(setup, "SS") == R::cutback);
  CHECK(man(setup, "SS").fit.if_left == R::alley);
  CHECK(man(setup, "FS").fit.if_left == R::cutback);
}

TEST_CASE("a blocker's own job: his block and his man, his mate is left alone") {
  Scenario s = scenario("F01", "R01", "D01");
  const Setup drawn = resolved(s);
  const int mate = man(drawn, "RG").block.partner;
  REQUIRE(mate != kNobody);
  s.players["RG"].job = "climb";
  s.players["RG"].on = "M";
  const Setup setup = resolved(s);
  CHECK(man(setup, "RG").block.kind == BlockKind::climb);
  CHECK(idOf(setup, man(setup, "RG").block.target) == "M");
  CHECK(setup.men[static_cast<std::size_t>(mate)].block.partner == kNobody);
}

TEST_CASE("a job a man cannot have is refused where the file gives it") {
  const auto refused = [](const char* id, const char* job, const char* on = nullptr) {
    Scenario s = scenario("F01", "R01", "D01");
    if (job) s.players[id].job = job;
    if (on) s.players[id].on = on;
    return refusal(s).path();
  };
  CHECK(refused("SS", "edge") == "/players/SS/job");
  CHECK(refused("DT", "force") == "/players/DT/job");
  CHECK(refused("SS", "fullback") == "/players/SS/job");
  CHECK(refused("RT", "force") == "/players/RT/job");
  CHECK(refused("T", "kick") == "/players/T/job");
  CHECK(refused("RG", "climb", "RT") == "/players/RG/on");
  CHECK(refused("SS", "alley", "M") == "/players/SS/on");
  Scenario s = scenario("F01", "R01", "D01");
  s.players["RG"].job_left = "climb";
  CHECK(refusal(s).path() == "/players/RG/job");
}

TEST_CASE("a call by side and men's jobs turned over give the setup turned over") {
  Scenario s = scenario("F01", "R01", "D01");
  s.defense.force_left = "corner";
  s.defense.force_right = "safety";
  s.players["RG"].job = "climb";
  s.players["RG"].on = "M";
  s.players["CR"].job_right = "out";
  const Setup right = resolved(s);
  Scenario over = s;
  over.offense.direction = over.offense.strength = "left";
  over.defense.force_left = "safety";
  over.defense.force_right = "corner";
  over.players.clear();
  over.players["LG"].job = "climb";
  over.players["LG"].on = "M";
  over.players["CL"].job_left = "out";
  const Setup left = resolved(over);
  for (std::size_t i = 0; i < kMen; ++i) {
    CAPTURE(right.men[i].id);
    CHECK(right.men[i].spot.x == -left.men[i].spot.x);
    CHECK(right.men[i].fit.if_right == left.men[i].fit.if_left);
    CHECK(right.men[i].fit.if_left == left.men[i].fit.if_right);
    CHECK(right.men[i].block.kind == left.men[i].block.kind);
    CHECK(right.men[i].block.target == left.men[i].block.target);
  }
}
