#include <vector>

#include "looks.hpp"

using namespace gapsound;
using namespace gapsound::looks;

namespace {

struct Row {
  const char* man;
  BlockKind kind;
  const char* target;
  const char* partner = "-";
  const char* climb = "-";
};

void checkJobs(const Setup& setup, const std::vector<Row>& rows) {
  for (const Row& row : rows) {
    CAPTURE(row.man);
    const BlockJob& job = man(setup, row.man).block;
    CHECK(job.kind == row.kind);
    CHECK(idOf(setup, job.target) == row.target);
    CHECK(idOf(setup, job.partner) == row.partner);
    CHECK(idOf(setup, job.climb_to) == row.climb);
  }
}

using K = BlockKind;

}  // namespace

TEST_CASE(
    "power against 4-3 over: double on the three, end climbs to Mike, guard wraps Sam, fullback kicks") {
  const Setup setup = resolved("F01", "R01", "D01");
  checkJobs(setup, {{"F", K::kick, "SE"},
                    {"LG", K::wrap, "S"},
                    {"Y", K::climb, "M", "-", "M"},
                    {"RT", K::drive, "DT", "RG", "W"},
                    {"RG", K::post, "DT", "RT", "W"},
                    {"C", K::back, "NT"},
                    {"LT", K::hinge, "WE"},
                    {"X", K::stalk, "CL"},
                    {"Z", K::stalk, "CR"}});
  CHECK(man(setup, "RG").block.leaves);
  CHECK_FALSE(man(setup, "RT").block.leaves);
  CHECK(man(setup, "LG").block.pull == PullStyle::skip);
  CHECK(man(setup, "F").block.may_log);
  CHECK(idOf(setup, setup.carrier) == "T");
  CHECK(idOf(setup, setup.passer) == "Q");
  CHECK(setup.run.patient);
}

TEST_CASE("power against 4-2-5 over: the seven is left for the kick, Y and the double share Will") {
  const Setup setup = resolved("F01", "R01", "D03");
  checkJobs(setup, {{"F", K::kick, "SE"},
                    {"LG", K::wrap, "M"},
                    {"Y", K::climb, "W", "-", "W"},
                    {"RT", K::drive, "DT", "RG", "W"},
                    {"RG", K::post, "DT", "RT", "W"},
                    {"C", K::back, "NT"},
                    {"LT", K::hinge, "WE"}});
}

TEST_CASE("power against the stack: double on the nose, tackle climbs past the end left for the kick") {
  const Setup setup = resolved("F01", "R01", "D06", "cover 3 sky");
  checkJobs(setup, {{"F", K::kick, "DE"},
                    {"LG", K::wrap, "S"},
                    {"RG", K::drive, "NT", "C", "W"},
                    {"C", K::post, "NT", "RG", "W"},
                    {"RT", K::climb, "M", "-", "M"},
                    {"Y", K::climb, "NK", "-", "NK"},
                    {"LT", K::hinge, "DE2"}});
}

TEST_CASE("power by variant") {
  Scenario s = scenario("F01", "R01", "D01");
  s.offense.variant = "log";
  const Setup log = resolved(s);
  CHECK(man(log, "F").block.kind == K::log);
  CHECK(man(log, "LG").block.reads_kick);
  CHECK(log.run.aim_x > man(log, "Y").spot.x);
  s.offense.variant = "read-wrap";
  const Setup read = resolved(s);
  CHECK(man(read, "F").block.kind == K::kick);
  CHECK(man(read, "LG").block.reads_kick);
  s.offense.variant = "base";
  CHECK_FALSE(man(resolved(s), "LG").block.reads_kick);
}

TEST_CASE("counter with guard and sniffer against 4-2-5 over") {
  const Setup setup = resolved("F03", "R02", "D03");
  checkJobs(setup, {{"LG", K::kick, "SE"},
                    {"H", K::wrap, "M"},
                    {"Y", K::climb, "W", "-", "W"},
                    {"RT", K::drive, "DT", "RG", "W"},
                    {"RG", K::post, "DT", "RT", "W"},
                    {"C", K::back, "NT"},
                    {"LT", K::hinge, "WE"}});
  CHECK(man(setup, "LG").block.pull == PullStyle::open);
  CHECK(man(setup, "H").block.reads_kick);
  REQUIRE(setup.run.steps.size() == 1);
  CHECK(setup.run.steps[0].x < man(setup, "T").spot.x);
}

TEST_CASE("counter from a wing set: the wing behind the play is the second puller") {
  Scenario s = scenario("F10", "R02", "D03");
  s.offense.direction = "left";
  const Setup setup = resolved(s);
  checkJobs(setup, {{"RG", K::kick, "WE"},
                    {"U", K::wrap, "W"},
                    {"Y", K::cutoff, "SE"},
                    {"RT", K::down, "DT"},
                    {"C", K::post, "NT", "LG", "M"},
                    {"LG", K::drive, "NT", "C", "M"}});
}

TEST_CASE("counter with guard and tackle: the sniffer holds the edge they leave") {
  const Setup setup = resolved("F07", "R03", "D04");
  checkJobs(setup, {{"LG", K::kick, "SE"},
                    {"LT", K::wrap, "M"},
                    {"H", K::cutoff, "WE"},
                    {"C", K::back, "NT"},
                    {"RG", K::post, "DT", "RT", "W"},
                    {"RT", K::drive, "DT", "RG", "W"}});
  CHECK(man(setup, "LT").block.pull_depth > man(setup, "LG").block.pull_depth);
}

TEST_CASE("inside zone against 4-2-5: centre and guard work the nose, everybody covered takes his man") {
  const Setup setup = resolved("F13", "R04", "D04");
  checkJobs(setup, {{"RT", K::reach, "SE"},
                    {"RG", K::reach, "DT"},
                    {"C", K::combo, "NT", "LG", "M"},
                    {"LG", K::combo, "NT", "C", "W"},
                    {"LT", K::base, "WE"}});
  CHECK(man(setup, "C").block.leaves);
  CHECK_FALSE(man(setup, "LG").block.leaves);
  CHECK(setup.run.bends);
}

TEST_CASE("inside zone against 4-3 over: the uncovered tackle helps on the three, then Sam") {
  const Setup setup = resolved("F01", "R04", "D01");
  checkJobs(setup, {{"Y", K::reach, "SE"},
                    {"RT", K::combo, "DT", "RG", "S"},
                    {"RG", K::combo, "DT", "RT", idOf(setup, man(setup, "RG").block.climb_to).c_str()},
                    {"C", K::combo, "NT", "LG", "W"},
                    {"F", K::lead, "M"},
                    {"LT", K::base, "WE"}});
  CHECK(man(setup, "RT").block.leaves);
}

TEST_CASE("inside zone against the stack: each guard helps to the play side and climbs") {
  const Setup setup = resolved("F13", "R04", "D06", "cover 3 sky");
  checkJobs(setup, {{"RT", K::combo, "DE", "RG", "S"},
                    {"RG", K::combo, "DE", "RT", "S"},
                    {"C", K::combo, "NT", "LG", idOf(setup, man(setup, "C").block.climb_to).c_str()},
                    {"LG", K::combo, "NT", "C", "M"},
                    {"LT", K::base, "DE2"}});
  CHECK(man(setup, "RG").block.leaves);
  CHECK(man(setup, "LG").block.leaves);
}

TEST_CASE("without a kicker the end man stays unblocked and nobody else takes him") {
  const Setup setup = resolved("F13", "R01", "D04");
  const int end = indexOf(setup, "SE");
  for (const Man& each : setup.men) CHECK(each.block.target != (each.attacks ? end : -2));
}

TEST_CASE("with no fullback the end kicks and the tackle comes down inside him") {
  const Setup setup = resolved("F06", "R01", "D03");
  CHECK(man(setup, "Y").block.kind == K::kick);
  CHECK(idOf(setup, man(setup, "Y").block.target) == "SE");
  CHECK(man(setup, "RT").block.kind == K::drive);
}

TEST_CASE("no blocker of any shipped look has a partner who does not share his man") {
  for (const Formation& formation : library().formations) {
    for (const Front& front : library().fronts) {
      for (const Scheme& scheme : library().schemes) {
        const Setup setup = resolved(formation.id, scheme.id, front.id);
        CAPTURE(formation.id);
        CAPTURE(front.id);
        CAPTURE(scheme.id);
        for (std::size_t i = 0; i < kOffense; ++i) {
          const BlockJob& job = setup.men[i].block;
          if (job.partner == kNobody) continue;
          const BlockJob& other = setup.men[static_cast<std::size_t>(job.partner)].block;
          CHECK(other.partner == static_cast<int>(i));
          CHECK(other.target == job.target);
          CHECK(other.leaves != job.leaves);
        }
      }
    }
  }
}

namespace {

Setup toTheLeft(const std::string& formation, const std::string& scheme, const std::string& front) {
  Scenario s = scenario(formation, scheme, front);
  s.offense.direction = "left";
  return resolved(s);
}

}  // namespace

TEST_CASE("a back who leads has his backer to himself: the line climbs to the others") {
  const Setup setup = toTheLeft("F07", "R04", "D06");
  const int led = man(setup, "H").block.target;
  CHECK(idOf(setup, led) == "M");
  for (int k = 0; k < kOffense; ++k) CHECK(setup.men[static_cast<std::size_t>(k)].block.climb_to != led);
}

TEST_CASE("inside zone: the back-side tackle has the end where he ends the line, else he goes up") {
  checkJobs(toTheLeft("F01", "R04", "D01"), {{"RT", K::climb, "S", "-", "S"}, {"Y", K::cutoff, "SE"}});
  checkJobs(toTheLeft("F07", "R04", "D06"), {{"RT", K::base, "DE"}});
}

// Common practice, no source.
TEST_CASE("trap from a sniffer set: a hat on everybody but the safeties and the corners") {
  checkJobs(resolved("F03", "R08", "D01"), {{"Y", K::base, "SE"},
                                            {"RT", K::climb, "S", "-", "S"},
                                            {"RG", K::climb, "M", "-", "M"},
                                            {"C", K::back, "NT"},
                                            {"LG", K::kick, "DT"},
                                            {"LT", K::climb, "W", "-", "W"},
                                            {"H", K::cutoff, "WE"}});
}
