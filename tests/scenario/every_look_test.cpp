#include <algorithm>
#include <set>

#include "looks.hpp"
#include "scenario/mirror.hpp"

using namespace gapsound;
using namespace gapsound::looks;

namespace {

constexpr double kBallLength = 0.31;  // yd: the neutral zone

/// Torsos are elliptical, shoulders across: below 1 two of them overlap.
double nearness(const Man& a, const Man& b) {
  const double across = (a.spot.x - b.spot.x) / (a.body.shoulder + b.body.shoulder);
  const double deep = (a.spot.y - b.spot.y) / (a.body.chest + b.body.chest);
  return across * across + deep * deep;
}

std::string overlapIn(const Setup& setup) {
  for (std::size_t i = 0; i < kMen; ++i) {
    for (std::size_t j = 0; j < i; ++j) {
      if (nearness(setup.men[i], setup.men[j]) < 1.0) return setup.men[j].id + " and " + setup.men[i].id;
    }
  }
  return "";
}

std::string inNeutralZone(const Setup& setup) {
  for (std::size_t i = kOffense; i < kMen; ++i) {
    const Man& man = setup.men[i];
    if (man.spot.y - man.body.chest < kBallLength) return man.id;
  }
  return "";
}

std::size_t differentMen(const Setup& setup) {
  std::set<std::string> ids;
  for (const Man& man : setup.men) ids.insert((man.attacks ? "o " : "d ") + man.id);
  return ids.size();
}

template <class Visit>
void everyLook(Visit visit) {
  for (const Formation& formation : library().formations) {
    for (const Front& front : library().fronts) {
      for (const Shell& shell : library().shells) visit(scenario(formation.id, "R04", front.id, shell.id));
    }
  }
}

std::string nameOf(const Scenario& s) {
  std::string name = s.offense.formation + " " + s.defense.front + " " + s.defense.shell + " strong " +
                     s.offense.strength + " " + s.field.spot + " " + s.offense.splits + " front " +
                     s.defense.strength;
  for (const std::string& check : s.defense.checks) name += " " + check;
  return name;
}

void checkStands(const Scenario& s) {
  const Setup setup = resolved(s);
  const std::string overlap = overlapIn(setup), offside = inNeutralZone(setup);
  const std::size_t men = differentMen(setup);
  if (overlap.empty() && offside.empty() && men == kMen) return;
  FAIL_CHECK(nameOf(s) << ": " << men << " men; overlap: " << overlap
                       << "; in the neutral zone: " << offside);
}

}  // namespace

TEST_CASE("every formation takes every front and shell: levels, hashes, strengths and splits") {
  int looks = 0;
  everyLook([&](Scenario s) {
    for (const Level level : {Level::high_school, Level::college, Level::pro}) {
      for (const char* spot : {"left_hash", "middle", "right_hash"}) {
        for (const char* strength : {"right", "left"}) {
          for (const char* splits : {"standard", "tight", "wide"}) {
            s.level = level;
            s.field.spot = spot;
            s.offense.strength = strength;
            s.offense.splits = splits;
            checkStands(s);
            ++looks;
          }
        }
      }
    }
  });
  CHECK(looks == 17 * 12 * 8 * 3 * 3 * 2 * 3);
}

TEST_CASE("every look turned over stands as its mirror image") {
  everyLook([](const Scenario& s) {
    const Setup drawn = resolved(s), turned = resolved(mirrored(s));
    for (std::size_t i = 0; i < kMen; ++i) {
      const bool same =
          turned.men[i].spot.x == -drawn.men[i].spot.x && turned.men[i].spot.y == drawn.men[i].spot.y;
      if (!same) FAIL_CHECK(nameOf(s) << ": " << drawn.men[i].id);
    }
  });
}

TEST_CASE("the front may be set to receivers, field, boundary or a side") {
  everyLook([](Scenario s) {
    for (const char* spot : {"left_hash", "right_hash"}) {
      for (const char* word : {"receivers", "field", "boundary", "left", "right"}) {
        s.field.spot = spot;
        s.defense.strength = word;
        checkStands(s);
      }
    }
  });
}

TEST_CASE("every check is made where the formation asks for it, and refused with its need elsewhere") {
  std::set<std::string> made, refused;
  everyLook([&](Scenario s) {
    for (const Check& check : library().checks) {
      s.defense.checks = {check.name};
      try {
        checkStands(s);
        made.insert(check.name);
      } catch (const InputError& e) {
        if (e.path() != "/defense/call/checks") FAIL_CHECK(nameOf(s) << ": " << e.path() << " " << e.value());
        refused.insert(check.name);
      }
    }
  });
  for (const Check& check : library().checks) {
    CAPTURE(check.name);
    CHECK(made.count(check.name) == 1);
    CHECK(refused.count(check.name) == 1);
  }
}
