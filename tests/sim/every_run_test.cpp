// Every scheme against every kind of look: nothing is refused, everybody has somebody, every rep ends.
#include <doctest/doctest.h>

#include <algorithm>
#include <string>

#include "base/error.hpp"
#include "looks.hpp"
#include "scenario/resolve.hpp"

using namespace gapsound;

namespace {

Scenario lookOf(const Formation& formation, const Scheme& scheme, const Front& front, const Shell& shell,
                bool left) {
  Scenario s;
  s.source = formation.id + " " + scheme.id + " " + front.id + " " + shell.id;
  s.title = s.source;
  s.offense.formation = formation.id;
  s.offense.scheme = scheme.id;
  s.offense.direction = left ? "left" : "right";
  s.defense.front = front.id;
  s.defense.shell = shell.id;
  return s;
}

/// Calls `each` with every `stride`-th of formation x front x shell, run and level rotating.
template <class Each>
void overLooks(int stride, const Each& each) {
  const Library& lib = looks::library();
  int n = 0;
  for (const Formation& formation : lib.formations) {
    for (const Front& front : lib.fronts) {
      for (const Shell& shell : lib.shells) {
        if (n++ % stride == 0) each(formation, front, shell, n);
      }
    }
  }
}

bool hasWork(const Setup& setup, int man) {
  const Man& m = setup.men[static_cast<std::size_t>(man)];
  if (man == setup.carrier || man == setup.passer || m.block.kind == BlockKind::fake) return true;
  return m.block.target != kNobody || (setup.read.who != kNobody && m.group == Group::back);
}

}  // namespace

TEST_CASE("no scheme is refused by any formation, front and shell, and every blocker has a man") {
  overLooks(5, [&](const Formation& formation, const Front& front, const Shell& shell, int n) {
    for (const Scheme& scheme : looks::library().schemes) {
      const Scenario s = lookOf(formation, scheme, front, shell, n % 2 == 0);
      CAPTURE(s.source);
      const Setup setup = resolve(s, looks::library(), looks::model());
      for (int man = 0; man < kOffense; ++man) {
        CAPTURE(setup.men[static_cast<std::size_t>(man)].id);
        CHECK(hasWork(setup, man));
      }
    }
  });
}

TEST_CASE("long: one rep of each scheme against four hundred looks ends with a whistle") {
  int reps = 0;
  overLooks(4, [&](const Formation& formation, const Front& front, const Shell& shell, int n) {
    for (const Scheme& scheme : looks::library().schemes) {
      const Scenario s = lookOf(formation, scheme, front, shell, n % 2 == 0);
      CAPTURE(s.source);
      const Record r =
          play(resolve(s, looks::library(), looks::model()), looks::model(), static_cast<std::uint64_t>(n));
      CHECK(r.ending != Ending::time);
      ++reps;
    }
  });
  CHECK(reps >= 400 * 18);
}
