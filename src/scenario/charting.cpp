#include "scenario/charting.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <tuple>

namespace gapsound {
namespace {

auto kindOf(const ChartedRun& run) {
  const OffensePlan& o = run.offense;
  return std::tie(o.formation, o.scheme, o.variant, o.direction, o.strength);
}

std::string nameOf(const OffensePlan& offense, const Library& library) {
  const Formation* formation = findFormation(library, offense.formation);
  const Scheme* scheme = findScheme(library, offense.scheme);
  const std::string variant = offense.variant == "base" ? "" : " " + offense.variant;
  const std::string strength = offense.strength == "right" ? "" : ", strong left";
  return fmt::format("{}{} {} from {}{}", scheme == nullptr ? offense.scheme : scheme->name, variant,
                     offense.direction, formation == nullptr ? offense.formation : formation->name, strength);
}

std::string mostCommon(const std::vector<const ChartedRun*>& snaps) {
  std::map<std::string, int> counts;
  for (const ChartedRun* snap : snaps)
    if (!snap->hash.empty()) ++counts[snap->hash];
  std::string best = "middle";
  int most = 0;
  for (const auto& [hash, count] : counts)
    if (count > most) most = count, best = hash;
  return best;
}

PlanRun groupOf(const std::vector<const ChartedRun*>& snaps, std::size_t all, const Library& library) {
  PlanRun run;
  run.offense = snaps.front()->offense;
  run.name = nameOf(run.offense, library);
  run.field.spot = mostCommon(snaps);
  run.seen = static_cast<int>(snaps.size());
  run.share = static_cast<double>(snaps.size()) / static_cast<double>(all);
  for (const ChartedRun* snap : snaps) run.gain += snap->gain / static_cast<double>(snaps.size());
  run.thin = run.seen < kThinBelow;
  return run;
}

}  // namespace

std::vector<PlanRun> runsFrom(const std::vector<ChartedRun>& charted, const Library& library) {
  const auto less = [](const ChartedRun* a, const ChartedRun* b) { return kindOf(*a) < kindOf(*b); };
  std::map<const ChartedRun*, std::vector<const ChartedRun*>, decltype(less)> groups(less);
  for (const ChartedRun& run : charted) groups[&run].push_back(&run);
  std::vector<PlanRun> runs;
  runs.reserve(groups.size());
  for (const auto& [kind, snaps] : groups) runs.push_back(groupOf(snaps, charted.size(), library));
  std::stable_sort(runs.begin(), runs.end(),
                   [](const PlanRun& a, const PlanRun& b) { return a.seen > b.seen; });
  return runs;
}

}  // namespace gapsound
