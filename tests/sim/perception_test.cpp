#include <doctest/doctest.h>

#include <algorithm>
#include <cstdint>
#include <string>
#include <vector>

#include "base/tick.hpp"
#include "looks.hpp"

using namespace gapsound;

namespace {

constexpr int kSeeds = 60;

bool sameMen(const Frame& a, const Frame& b, int from, int to) {
  for (auto i = static_cast<std::size_t>(from); i < static_cast<std::size_t>(to); ++i)
    if (!(a.men[i].pos == b.men[i].pos && a.men[i].vel == b.men[i].vel && a.men[i].face == b.men[i].face))
      return false;
  return true;
}

bool sameBall(const Frame& a, const Frame& b) { return a.ball == b.ball && a.carrier == b.carrier; }

bool sameHands(const Frame& a, const Frame& b) {
  for (std::size_t i = 0; i < kMen; ++i)
    if (a.men[i].engaged != b.men[i].engaged || a.men[i].down != b.men[i].down) return false;
  return true;
}

// First tick at which the offense shows the defense something different.
int firstDifference(const Record& a, const Record& b) {
  const auto n = static_cast<int>(std::min(a.frames.size(), b.frames.size()));
  for (int k = 0; k < n; ++k) {
    const Frame& f = a.frames[static_cast<std::size_t>(k)];
    const Frame& g = b.frames[static_cast<std::size_t>(k)];
    if (!sameMen(f, g, 0, kOffense) || !sameBall(f, g) || !sameHands(f, g)) return k;
  }
  return n;
}

bool isDecision(const Event& e) {
  return e.man >= kOffense && (e.what == Happening::saw_key || e.what == Happening::decides ||
                               e.what == Happening::end_state || e.what == Happening::backer_state);
}

std::vector<Event> decisionsUntil(const Record& record, int tick) {
  std::vector<Event> found;
  for (const Event& e : record.events)
    if (isDecision(e) && e.tick < tick) found.push_back(e);
  return found;
}

bool sameEvents(const std::vector<Event>& a, const std::vector<Event>& b) {
  return std::equal(a.begin(), a.end(), b.begin(), b.end(), [](const Event& x, const Event& y) {
    return x.tick == y.tick && x.what == y.what && x.man == y.man && x.code == y.code;
  });
}

// Men of the secondary touch nobody early, so their steps are their decisions.
std::vector<int> deepMen(const Setup& setup) {
  std::vector<int> deep;
  for (int i = kOffense; i < kMen; ++i)
    if (setup.men[static_cast<std::size_t>(i)].fit.level == 3) deep.push_back(i);
  return deep;
}

/// A body that moves differently in the two reps is at him between two ticks: what moves him then is no
/// decision of his.
bool isPushedApart(const Record& a, const Record& b, int man, int from, std::size_t to) {
  constexpr double kBodies = 0.9;  // yd, centre to centre
  const auto last = std::min({to, a.frames.size() - 1, b.frames.size() - 1});
  const auto touches = [&](const Record& rep, std::size_t tick, int other) {
    const auto& men = rep.frames[tick].men;
    return distance(men[static_cast<std::size_t>(other)].pos, men[static_cast<std::size_t>(man)].pos) <
           kBodies;
  };
  for (auto tick = static_cast<std::size_t>(from); tick <= last; ++tick)
    for (int other = 0; other < kMen; ++other)
      if (other != man && (touches(a, tick, other) || touches(b, tick, other)) &&
          !sameMen(a.frames[tick], b.frames[tick], other, other + 1))
        return true;
  return false;
}

struct Comparison {
  int earliest_s_ticks = 99999;  // earliest first difference over the seeds
  int differed = 0;              // seeds in which the defense ended up somewhere else
};

// Plays both offenses against the same defense on the same luck and checks that the defense cannot tell them
// apart until the sight of the first difference has reached it.
Comparison compare(const Setup& one, const Setup& two, const Model& model) {
  Comparison result;
  const int sight = ticks(model.see_defense_s);
  for (std::uint64_t seed = 1; seed <= kSeeds; ++seed) {
    const Record a = play(one, model, seed);
    const Record b = play(two, model, seed);
    const int differs = firstDifference(a, b);
    const int seen = differs + sight;
    CAPTURE(seed);
    CAPTURE(differs);
    CHECK(sameEvents(decisionsUntil(a, seen), decisionsUntil(b, seen)));
    const auto last = static_cast<int>(std::min(a.frames.size(), b.frames.size())) - 1;
    const auto at = static_cast<std::size_t>(std::min(seen, last));
    for (const int man : deepMen(one))
      if (!isPushedApart(a, b, man, differs, at)) CHECK(sameMen(a.frames[at], b.frames[at], man, man + 1));
    result.earliest_s_ticks = std::min(result.earliest_s_ticks, differs);
    if (!sameMen(a.frames.back(), b.frames.back(), kOffense, kMen)) ++result.differed;
  }
  return result;
}

// Nobody on offense but the passer moves for `wait` seconds, and he moves the same way whatever is called.
Setup heldStill(Setup setup, double wait, const BackJob& exchange) {
  for (int i = 0; i < kOffense; ++i) setup.men[static_cast<std::size_t>(i)].block.delay_s = wait;
  setup.run.mesh = exchange.mesh;
  setup.run.mesh_s = exchange.mesh_s + wait;
  return setup;
}

bool sameCall(const FitJob& a, const FitJob& b) {
  return a.level == b.level && a.gap == b.gap && a.gap_x == b.gap_x && a.slant_x == b.slant_x &&
         a.if_right == b.if_right && a.if_left == b.if_left && a.key == b.key && a.key_style == b.key_style &&
         a.structure_right == b.structure_right && a.structure_left == b.structure_left &&
         a.read_delay_s == b.read_delay_s && a.downhill_yps == b.downhill_yps && a.man_on == b.man_on &&
         a.bs_backer == b.bs_backer && a.overlaps_over == b.overlaps_over &&
         a.off_the_man_in_front == b.off_the_man_in_front;
}

const std::string kLook = "power-right-spill";

}  // namespace

TEST_CASE("the call a defender gets before the snap does not depend on the run that comes") {
  const Setup power = looks::setupOf(kLook);
  for (const char* scheme : {"R02", "R04"})
    for (const char* direction : {"right", "left"}) {
      const Setup other = looks::setupOf(
          kLook, {std::string("offense.scheme=") + scheme, std::string("offense.direction=") + direction});
      CAPTURE(std::string(scheme));
      CAPTURE(std::string(direction));
      for (const Man& man : power.men) {
        if (man.attacks) continue;
        const auto same = std::find_if(other.men.begin(), other.men.end(),
                                       [&](const Man& m) { return !m.attacks && m.id == man.id; });
        REQUIRE(same != other.men.end());
        CAPTURE(man.id);
        CHECK(same->spot == man.spot);
        CHECK(same->fit.gap == man.fit.gap);
        CHECK(same->fit.gap_x == man.fit.gap_x);
        CHECK(same->fit.if_right == man.fit.if_right);
        CHECK(same->fit.if_left == man.fit.if_left);
        CHECK(same->fit.read_delay_s == man.fit.read_delay_s);
      }
    }
}

TEST_CASE("another scheme behind the same first 0.6 s is met with the same decisions") {
  constexpr double wait = 0.75;
  Model model = looks::model();
  model.back_start_s = wait;
  const Setup called = looks::setupOf(kLook);
  for (const char* scheme : {"R02", "R04"}) {
    CAPTURE(std::string(scheme));
    const Setup swapped = looks::setupOf(kLook, {std::string("offense.scheme=") + scheme});
    for (int i = kOffense; i < kMen; ++i)
      REQUIRE(sameCall(called.men[static_cast<std::size_t>(i)].fit,
                       swapped.men[static_cast<std::size_t>(i)].fit));
    const Comparison c =
        compare(heldStill(called, wait, called.run), heldStill(swapped, wait, called.run), model);
    CHECK(c.earliest_s_ticks >= ticks(0.6));
    CHECK(c.differed > kSeeds / 2);  // and afterwards the two are different plays
  }
}

TEST_CASE("nobody knows beforehand that a double team is not going to climb") {
  for (const char* look : {"power-right-spill", "counter-right-guard-and-h", "zone-right-spread"}) {
    CAPTURE(std::string(look));
    const Setup climbs = looks::setupOf(look);
    Setup stays = climbs;
    for (Man& man : stays.men) man.block.leaves = false;
    const Comparison c = compare(climbs, stays, looks::model());
    CHECK(c.earliest_s_ticks >= ticks(0.6));
    CHECK(c.differed > kSeeds / 4);
  }
}

TEST_CASE("what the offense calls its play is nobody's business") {
  const Setup setup = looks::setupOf(kLook);
  Setup renamed = setup;
  renamed.scheme = "R04";
  renamed.variant = "other";
  renamed.formation = "F13";
  CHECK(play(setup, looks::model(), 9).hash == play(renamed, looks::model(), 9).hash);
}
