#include "study/sightings.hpp"

#include <algorithm>
#include <cmath>

#include "analysis/story.hpp"
#include "study/distribution.hpp"
#include "study/statistics.hpp"

namespace gapsound {
namespace {

int manInRole(const Story& story, FitRole role) {
  for (int man = kOffense; man < kMen; ++man)
    if (story.role(man) == role) return man;
  return kNobody;
}

}  // namespace

Sighting sightingOf(const Tape& tape) {
  Sighting sighting;
  const Story story(tape);
  const int first = manInRole(story, FitRole::first_backer), alley = manInRole(story, FitRole::alley);
  const Event* end =
      first == kNobody ? nullptr : story.last(Happening::end_state, first, story.decisiveTick());
  const Event* backer =
      alley == kNobody ? nullptr : story.last(Happening::backer_state, alley, story.decisiveTick());
  if (end != nullptr) sighting.end = static_cast<EndState>(end->code);
  if (backer != nullptr) sighting.backer = static_cast<BackerState>(backer->code);
  return sighting;
}

int Sightings::count(EndState state) const {
  return static_cast<int>(
      std::count_if(seen.begin(), seen.end(), [&](const Sighting& s) { return s.end == state; }));
}

int Sightings::count(BackerState state) const {
  return static_cast<int>(
      std::count_if(seen.begin(), seen.end(), [&](const Sighting& s) { return s.backer == state; }));
}

Sightings sightingsOf(const Setup& setup, const Model& model, std::uint64_t first_seed, int n, int threads,
                      const Progress& progress) {
  const auto reps = static_cast<std::size_t>(std::max(n, 0));
  Sightings all{first_seed, std::vector<Summary>(reps), std::vector<Sighting>(reps)};
  visitAll(
      {setup}, model, first_seed, n, threads,
      [&](std::size_t, std::size_t rep, const Tape& tape) {
        all.reps[rep] = summarize(tape);
        all.seen[rep] = sightingOf(tape);
      },
      progress);
  return all;
}

std::uint64_t typicalSeed(const Sightings& sightings) {
  const std::vector<double> yards = yardsOf(sightings.reps);
  const double median = medianOf(yards);
  const auto nearest = std::min_element(yards.begin(), yards.end(), [&](double a, double b) {
    return std::abs(a - median) < std::abs(b - median);
  });
  return sightings.first_seed + static_cast<std::uint64_t>(nearest - yards.begin());
}

}  // namespace gapsound
