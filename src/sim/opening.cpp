#include "sim/opening.hpp"

#include <algorithm>
#include <cmath>

#include "base/numbers.hpp"
#include "base/tick.hpp"

namespace gapsound {
namespace {

constexpr double kOnTheMove = 1.5;  // yd/s along the line that show a read
std::size_t at(int i) { return static_cast<std::size_t>(i); }

Pose poseBefore(const Man& man, const Opening::Place& place, double since, double part) {
  const double u = part, uu = u * u, uuu = uu * u;
  const Vec2 way = place.pos - man.spot;
  Pose pose;
  pose.pos = man.spot + (3.0 * uu - 2.0 * uuu) * way + ((uuu - uu) * since) * place.vel;
  pose.vel = ((6.0 * u - 6.0 * uu) / since) * way + (3.0 * uu - 2.0 * u) * place.vel;
  pose.face = unit(man.facing + u * (place.face - man.facing), place.face);
  return pose;
}

}  // namespace

std::vector<std::pair<int, int>> handsOn(const Setup& setup, double reach) {
  struct Pair {
    double gap;
    int blocker, defender;
  };
  const auto& men = setup.opening->men;
  std::vector<Pair> near;
  for (int b = 0; b < kOffense; ++b) {
    if (b == setup.opening->ball || b == setup.passer) continue;
    for (int d = kOffense; d < kMen; ++d) {
      const double gap = distance(men[at(b)].pos, men[at(d)].pos);
      if (gap < reach) near.push_back({gap, b, d});
    }
  }
  std::stable_sort(near.begin(), near.end(), [](const Pair& x, const Pair& y) { return x.gap < y.gap; });
  std::vector<std::pair<int, int>> pairs;
  for (const Pair& p : near) {
    const bool has =
        std::any_of(pairs.begin(), pairs.end(), [&](const auto& q) { return q.first == p.blocker; });
    if (!has) pairs.emplace_back(p.blocker, p.defender);
  }
  return pairs;
}

std::vector<Frame> framesBefore(const Setup& setup, int start_tick, double reach) {
  const Opening& opening = *setup.opening;
  const auto pairs = handsOn(setup, reach);
  std::vector<Frame> frames(at(start_tick));
  for (int tick = 0; tick < start_tick; ++tick) {
    Frame& f = frames[at(tick)];
    const double part = static_cast<double>(tick) / start_tick;
    for (std::size_t i = 0; i < kMen; ++i)
      f.men[i] = poseBefore(setup.men[i], opening.men[i], seconds(start_tick), part);
    for (const auto& [b, d] : pairs) {
      if (distance(f.men[at(b)].pos, f.men[at(d)].pos) > reach) continue;
      f.men[at(b)].engaged = static_cast<std::int8_t>(d);
      if (f.men[at(d)].engaged == kNobody) f.men[at(d)].engaged = static_cast<std::int8_t>(b);
    }
    f.carrier = static_cast<std::int8_t>(opening.ball);
    f.ball = f.men[at(opening.ball)].pos;
  }
  return frames;
}

void rememberBefore(const Setup& setup, Actors& actors) {
  const Opening& opening = *setup.opening;
  for (int i = kOffense; i < kMen; ++i) {
    const Vec2 vel = opening.men[at(i)].vel;
    if (setup.men[at(i)].fit.level == 1 || std::abs(vel.x) < kOnTheMove) continue;
    Reading& reading = actors[at(i)].defender.reading;
    reading.direction = signOf(vel.x);
    reading.since_s = opening.since_snap_s;
  }
  for (int i = 0; i < kOffense; ++i) {
    actors[at(i)].blocker.start_s = std::min(actors[at(i)].blocker.start_s, opening.since_snap_s);
    RunnerMemory& runner = actors[at(i)].runner;
    runner.start_s = std::min(runner.start_s, opening.since_snap_s);
    runner.choice_x = setup.run.aim_x;
    runner.heading = unit(opening.men[at(i)].vel);
  }
}

}  // namespace gapsound
