#include "tape_figures.hpp"

#include <algorithm>
#include <limits>

#include "base/tick.hpp"
#include "study/reps.hpp"
#include "study/weighted.hpp"

using namespace gapsound;

namespace calibration {
namespace {

constexpr int kReps = 20;
constexpr int kEvery = 6;             // ticks between two looks at a pair
constexpr double kSafetyWatch = 3.0;  // s

std::size_t at(int k) { return static_cast<std::size_t>(k); }

/// What one tape shows.
struct Seen {
  std::vector<double> pairs, closest;  // a blocked pair each: its usual and its least distance, yd
  double front = 0.0, backer = 0.0, deepest = 0.0;  // yd from the line at the snap
  std::vector<double> safeties;                     // best speed, yd/s
};

/// Distances of blocker k from the man he has hands on, every tenth of a second.
void addPair(const Record& rep, int k, Seen& seen) {
  std::vector<double> apart;
  for (std::size_t tick = 0; tick < rep.frames.size(); tick += kEvery) {
    const Frame& frame = rep.frames[tick];
    const int other = frame.men[at(k)].engaged;
    if (other != kNobody) apart.push_back(distance(frame.men[at(k)].pos, frame.men[at(other)].pos));
  }
  if (apart.size() < 4) return;
  seen.pairs.push_back(medianOf(apart));
  seen.closest.push_back(*std::min_element(apart.begin(), apart.end()));
}

double bestSpeed(const Record& rep, int k) {
  double best = 0.0;
  const auto last = std::min(rep.frames.size(), at(ticks(kSafetyWatch)));
  for (std::size_t tick = 0; tick < last; ++tick)
    best = std::max(best, length(rep.frames[tick].men[at(k)].vel));
  return best;
}

Seen seenOn(const Tape& tape) {
  Seen seen;
  std::vector<double> front, backers, deep;
  for (int k = 0; k < kOffense; ++k)
    if (tape.setup.men[at(k)].group != Group::receiver) addPair(tape.record, k, seen);
  for (int k = kOffense; k < kMen; ++k) {
    const Man& man = tape.setup.men[at(k)];
    const double depth = tape.record.frames.front().men[at(k)].pos.y;
    if (man.fit.level == 1) front.push_back(depth);
    if (man.group == Group::backer && man.fit.level == 2) backers.push_back(depth);
    if (man.group != Group::safety) continue;
    deep.push_back(depth);
    seen.safeties.push_back(bestSpeed(tape.record, k));
  }
  seen.front = meanOf(front);
  seen.backer = meanOf(backers);
  seen.deepest = deep.empty() ? 0.0 : *std::max_element(deep.begin(), deep.end());
  return seen;
}

std::vector<CardLine> linesOf(const std::vector<SetLook>& looks, const std::vector<std::vector<Seen>>& seen,
                              bool judges) {
  Weighted pairs, closest, front, backer, deepest, safeties;
  for (std::size_t k = 0; k < looks.size(); ++k) {
    if (looks[k].judges != judges) continue;
    for (const Seen& rep : seen[k]) {
      for (const double d : rep.pairs) pairs.add(d, looks[k].weight);
      for (const double d : rep.closest) closest.add(d, looks[k].weight);
      for (const double v : rep.safeties) safeties.add(v, looks[k].weight);
      front.add(rep.front, looks[k].weight);
      backer.add(rep.backer, looks[k].weight);
      deepest.add(rep.deepest, looks[k].weight);
    }
  }
  const auto line = [](const char* name, const Weighted& values, const char* real) {
    return CardLine{name, values.quantile(0.5), CardLine::Form::two, real, {}};
  };
  return {line("blocked pairs, usual distance, yd", pairs, "0.90"),
          line("blocked pairs, closest, yd", closest, "0.73"),
          line("depth of the front at the snap, yd", front, "1.0"),
          line("of the backers", backer, "4.2"),
          line("of the deepest safety", deepest, "13.5"),
          line("safeties' best speed in 3 s, yd/s", safeties, "4.4-5.2")};
}

}  // namespace

void addTapeFigures(const std::vector<SetLook>& looks, const Ground& ground, std::vector<CardLine>& fit,
                    std::vector<CardLine>& judge) {
  std::vector<Setup> setups;
  for (const SetLook& look : looks) setups.push_back(look.setup);
  std::vector<std::vector<Seen>> seen(looks.size(), std::vector<Seen>(kReps));
  visitAll(setups, ground.model, ground.options.seed, kReps, ground.options.jobs,
           [&](std::size_t look, std::size_t rep, const Tape& tape) { seen[look][rep] = seenOn(tape); });
  for (CardLine& line : linesOf(looks, seen, false)) fit.push_back(std::move(line));
  for (CardLine& line : linesOf(looks, seen, true)) judge.push_back(std::move(line));
}

}  // namespace calibration
