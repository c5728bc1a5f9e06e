#include "sim/snap.hpp"

#include <algorithm>

#include "base/numbers.hpp"

namespace gapsound {
namespace {

std::size_t at(int i) { return static_cast<std::size_t>(i); }

double spreadFor(const CallMix& mix, int level) {
  return level == 1 ? mix.line_spread_yd : level == 2 ? mix.backer_spread_yd : mix.back_spread_yd;
}

bool standsClear(const Setup& setup, int man, Vec2 spot) {
  for (int i = kOffense; i < kMen; ++i)
    if (i != man && distance(setup.men[at(i)].spot, spot) < 0.85) return false;
  return true;
}

void spreadAlignment(Setup& setup, std::uint64_t seed) {
  for (int i = kOffense; i < kMen; ++i) {
    Man& man = setup.men[at(i)];
    Stream luck(seed, man.stream, "alignment");
    const double across = luck.normal();
    const double deep = luck.normal();
    const double sd = spreadFor(setup.mix, man.fit.level);
    Vec2 spot = man.spot + Vec2{sd * across, man.fit.level == 1 ? 0.0 : sd * deep};
    if (man.fit.level > 1) spot.y = std::max(spot.y, std::min(man.spot.y, 1.5));
    if (standsClear(setup, i, spot)) man.spot = spot;
  }
}

// The front moves a gap on the snap; the backers behind it replace the gaps it left.
void rollSlant(Setup& setup, std::uint64_t seed, double width, std::vector<Event>& events) {
  Stream luck(seed, keyOf("defense"), "slant");
  const bool slants = luck.chance(setup.mix.slant_share);
  const double way = luck.chance(0.5) ? 1.0 : -1.0;
  if (!slants) return;
  for (int i = kOffense; i < kMen; ++i) {
    FitJob& fit = setup.men[at(i)].fit;
    const bool moves = fit.level == 1 && fit.if_right != FitRole::edge && fit.if_left != FitRole::edge;
    if (moves) fit.slant_x += way * width;
    if (fit.level == 2) fit.gap_x -= way * width;
    if (moves) events.push_back({0, Happening::slants, i, kNobody, way > 0 ? 1 : -1});
  }
}

void rollShoot(const Setup& setup, std::uint64_t seed, Actors& actors, std::vector<Event>& events) {
  Stream luck(seed, keyOf("defense"), "shoot");
  const bool shoots = luck.chance(setup.mix.shoot_share);
  const double pick = luck.unit();
  std::vector<int> backers;
  for (int i = kOffense; i < kMen; ++i)
    if (setup.men[at(i)].fit.level == 2 && std::abs(setup.men[at(i)].spot.x) < 5.0) backers.push_back(i);
  if (!shoots || backers.empty()) return;
  const int man = backers[static_cast<std::size_t>(pick * static_cast<double>(backers.size()))];
  actors[at(man)].defender.shoots = true;
  events.push_back({0, Happening::shoots, man, kNobody, 0});
}

void rollDefender(const Model& m, std::uint64_t seed, Actor& a) {
  const FitJob& job = a.man->fit;
  Stream luck(seed, a.man->stream, "read");
  const double step_z = luck.normal();
  const double read_z = luck.normal();
  const bool lapse = luck.chance(m.read_lapse_share);
  const double push_z = luck.normal();
  const double spread = job.level == 2 ? m.read_spread_backer : m.read_spread;
  a.defender.first_step_s = std::max(m.first_step_s + m.first_step_sd * step_z, 0.08);
  a.defender.read.due_s = job.read_delay_s * fixedExp(spread * read_z) + (lapse ? m.read_lapse_s : 0.0) +
                          amountOf(a.man->faults, FaultKind::late_read);
  a.defender.get_off = fixedExp(m.get_off_sd * push_z);
}

void rollAttacker(const Model& m, std::uint64_t seed, Actor& a, const BlockJob& job) {
  Stream luck(seed, a.man->stream, "start");
  const double start = std::max(m.snap_react_s + m.snap_react_sd * luck.normal(), 0.0);
  a.blocker.start_s = start + job.delay_s + amountOf(a.man->faults, FaultKind::late_pull);
  a.blocker.target = job.target;
  a.runner.start_s = m.back_start_s + start;
  a.runner.luck = Stream(seed, a.man->stream, "runner");
}

bool isIntention(FaultKind kind) {
  return kind == FaultKind::wrong_key || kind == FaultKind::no_fold || kind == FaultKind::flowed ||
         kind == FaultKind::early_climb;
}

// A fault of a share below one happens on that share of the snaps; those of single contacts are rolled there.
void rollFaults(Man& man, std::uint64_t seed) {
  Stream luck(seed, man.stream, "faults");
  std::vector<Fault> happen;
  for (const Fault& fault : man.faults) {
    if (!isIntention(fault.kind) || luck.chance(fault.amount)) happen.push_back(fault);
  }
  man.faults = happen;
}

// Late from the start.
void noteLate(const Man& man, int index, std::vector<Event>& events) {
  for (const FaultKind kind : {FaultKind::late_read, FaultKind::late_pull}) {
    if (amountOf(man.faults, kind) > 0.0)
      events.push_back({0, Happening::errs, index, kNobody, static_cast<int>(kind)});
  }
}

}  // namespace

void rollSnap(Setup& setup, const Model& m, std::uint64_t seed, Actors& actors, std::vector<Event>& events) {
  spreadAlignment(setup, seed);
  rollSlant(setup, seed, m.slant_width_yd, events);
  for (int i = 0; i < kMen; ++i) {
    Actor& a = actors[at(i)];
    if (!setup.men[at(i)].faults.empty()) rollFaults(setup.men[at(i)], seed);
    noteLate(setup.men[at(i)], i, events);
    a.man = &setup.men[at(i)];
    a.seed = seed;
    a.tackle_luck = Stream(seed, a.man->stream, "tackle");
    Stream power(seed, a.man->stream, "strength");
    a.strength = fixedExp(m.push_luck_man * power.normal());
    if (isOffense(i))
      rollAttacker(m, seed, a, a.man->block);
    else
      rollDefender(m, seed, a);
  }
  rollShoot(setup, seed, actors, events);
}

}  // namespace gapsound
