#include "study/distribution.hpp"

#include <algorithm>

namespace gapsound {
namespace {

template <typename Value>
std::vector<double> gathered(std::span<const Summary> reps, const Value& value) {
  std::vector<double> values;
  values.reserve(reps.size());
  for (const Summary& rep : reps) values.push_back(static_cast<double>(value(rep)));
  return values;
}

template <typename Value, typename Counts>
std::vector<double> gatheredWhere(std::span<const Summary> reps, const Counts& counts, const Value& value) {
  std::vector<double> values;
  for (const Summary& rep : reps)
    if (counts(rep)) values.push_back(static_cast<double>(value(rep)));
  return values;
}

template <typename Holds>
double shareOf(std::span<const Summary> reps, const Holds& holds) {
  const auto hits = std::count_if(reps.begin(), reps.end(), holds);
  return reps.empty() ? 0.0 : static_cast<double>(hits) / static_cast<double>(reps.size());
}

bool crossed(const Summary& rep) { return rep.t_line >= 0.0; }
bool handed(const Summary& rep) { return rep.t_handoff >= 0.0; }
bool touched(const Summary& rep) { return rep.t_first_contact >= 0.0; }

template <typename Value>
double medianWhere(std::span<const Summary> reps, bool (*counts)(const Summary&), const Value& value) {
  return medianOf(gatheredWhere(reps, counts, value));
}

void fillGains(Distribution& d, std::span<const Summary> reps, const Situation& situation) {
  const auto raw = yardsOf(reps);
  const auto whole = gathered(reps, [](const Summary& s) { return wholeYards(s.yards); });
  const auto atLeast = [&](double yards) {
    return shareOf(reps, [=](const Summary& s) { return wholeYards(s.yards) >= yards; });
  };
  d.mean = meanOf(raw);
  d.sd = sdOf(raw);
  d.mean_ci = meanInterval(raw);
  d.median = medianOf(whole);
  d.p10 = quantileOf(whole, 0.1);
  d.p90 = quantileOf(whole, 0.9);
  d.lost = 1.0 - atLeast(0.0);
  d.stuffed = 1.0 - atLeast(1.0);
  d.four_plus = atLeast(4.0);
  d.ten_plus = atLeast(10.0);
  d.twelve_plus = atLeast(12.0);
  d.twenty_plus = atLeast(20.0);
  d.success = shareOf(reps, [&](const Summary& s) { return succeeds(wholeYards(s.yards), situation); });
}

void fillLanes(Distribution& d, std::span<const Summary> reps) {
  const auto x = gatheredWhere(reps, crossed, [](const Summary& s) { return s.cross_x; });
  d.cross_x_mean = meanOf(x);
  d.cross_x_median = medianOf(x);
  d.cutback_open = shareOf(reps, [](const Summary& s) { return s.cutback_open; });
  d.cutback_taken = shareOf(reps, [](const Summary& s) { return s.cutback_taken; });
  d.kept = shareOf(reps, [](const Summary& s) { return s.kept; });
  d.bounced = shareOf(reps, [](const Summary& s) { return s.bounced; });
  for (const Summary& rep : reps) {
    if (!crossed(rep)) continue;
    LaneUse& use = d.lanes[rep.lane_gap];
    use.share += 1.0;
    use.mean += rep.yards;
  }
  for (auto& [gap, use] : d.lanes) {
    use.mean /= use.share;
    use.share /= static_cast<double>(reps.size());
  }
}

void fillTiming(Timing& t, std::span<const Summary> reps) {
  t.t_handoff = medianWhere(reps, handed, [](const Summary& s) { return s.t_handoff; });
  t.t_line = medianWhere(reps, crossed, [](const Summary& s) { return s.t_line; });
  t.t_first_contact = medianWhere(reps, touched, [](const Summary& s) { return s.t_first_contact; });
  t.speed_handoff = medianWhere(reps, handed, [](const Summary& s) { return s.speed_handoff; });
  t.depth_handoff = medianWhere(reps, handed, [](const Summary& s) { return s.depth_handoff; });
  t.line_speed = medianWhere(reps, crossed, [](const Summary& s) { return s.speed_line; });
  t.contact_to_end = medianWhere(reps, touched, [](const Summary& s) { return s.t_end - s.t_first_contact; });
  t.nearest_defender_line =
      medianWhere(reps, crossed, [](const Summary& s) { return s.nearest_defender_line; });
  t.defenders_within_3 = medianWhere(reps, crossed, [](const Summary& s) { return s.defenders_within_3; });
  t.after_contact_mean =
      meanOf(gatheredWhere(reps, touched, [](const Summary& s) { return s.yards_after_contact; }));
  t.t_end = medianOf(gathered(reps, [](const Summary& s) { return s.t_end; }));
  t.best_speed = medianOf(gathered(reps, [](const Summary& s) { return s.best_speed; }));
  t.speed_1s = medianOf(gathered(reps, [](const Summary& s) { return s.speed_1s; }));
  t.speed_1_5s = medianOf(gathered(reps, [](const Summary& s) { return s.speed_1_5s; }));
  t.speed_2s = medianOf(gathered(reps, [](const Summary& s) { return s.speed_2s; }));
  t.never_crossed = 1.0 - shareOf(reps, crossed);
}

double missedShare(std::span<const Summary> reps) {
  int tries = 0, misses = 0;
  for (const Summary& rep : reps) {
    tries += rep.tackle_tries;
    misses += rep.tackle_misses;
  }
  return tries > 0 ? static_cast<double>(misses) / tries : 0.0;
}

}  // namespace

std::vector<double> yardsOf(std::span<const Summary> reps) {
  return gathered(reps, [](const Summary& s) { return s.yards; });
}

bool succeeds(double yards, const Situation& situation) {
  const double share = situation.down <= 1 ? 0.4 : situation.down == 2 ? 0.6 : 1.0;
  return yards >= share * situation.distance;
}

Distribution distributionOf(std::span<const Summary> reps, const Situation& situation) {
  Distribution d;
  d.n = static_cast<int>(reps.size());
  if (reps.empty()) return d;
  fillGains(d, reps, situation);
  fillLanes(d, reps);
  fillTiming(d.timing, reps);
  d.missed_tackles = missedShare(reps);
  return d;
}

}  // namespace gapsound
