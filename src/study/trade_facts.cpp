#include "study/trade_facts.hpp"

#include <algorithm>
#include <array>

namespace gapsound {
namespace {

constexpr double kOutside = 5.0;  // yd from the ball: outside the tight end
constexpr std::array<std::string_view, 17> kNames = {
    "yards",    "to 20",           "spread",       "lost",          "stuffed",         "12 and more",
    "crossing", "outside",         "outside gain", "bent",          "A gap or behind", "gain there",
    "room",     "pullers through", "line forward", "out of bounds", "seconds"};

double share(bool hit) { return hit ? 1.0 : 0.0; }

double toTwenty(const Summary& rep) { return std::min(rep.yards, 20.0); }

double pullersThrough(const Summary& rep) {
  return rep.pullers == 0 ? 0.0 : static_cast<double>(rep.pullers_through) / rep.pullers;
}

bool ranOutside(const Summary& rep, int direction) {
  return rep.t_line >= 0.0 && direction * rep.cross_x >= kOutside;
}

bool ranInsideGuard(const Summary& rep, int direction) {
  if (rep.t_line < 0.0 || rep.lane_gap.empty()) return false;
  return rep.lane_gap.front() == 'A' || rep.lane_gap.back() == (direction > 0 ? '-' : '+');
}

double valueOf(const Summary& rep, Yardstick what, int direction, double middle) {
  switch (what) {
    case Yardstick::yards:
      return rep.yards;
    case Yardstick::to_twenty:
      return toTwenty(rep);
    case Yardstick::spread:
      return std::max(rep.yards - middle, middle - rep.yards);
    case Yardstick::lost:
      return share(wholeYards(rep.yards) < 0.0);
    case Yardstick::stuffed:
      return share(wholeYards(rep.yards) <= 0.0);
    case Yardstick::twelve_plus:
      return share(wholeYards(rep.yards) >= 12.0);
    case Yardstick::crossing:
      return direction * rep.cross_x;
    case Yardstick::outside:
      return share(ranOutside(rep, direction));
    case Yardstick::outside_gain:
      return ranOutside(rep, direction) ? toTwenty(rep) : 0.0;
    case Yardstick::bent:
      return share(rep.t_line >= 0.0 && rep.cutback_taken);
    case Yardstick::inside_guard:
      return share(ranInsideGuard(rep, direction));
    case Yardstick::inside_gain:
      return ranInsideGuard(rep, direction) ? toTwenty(rep) : 0.0;
    case Yardstick::room:
      return rep.nearest_defender_line;
    case Yardstick::through:
      return pullersThrough(rep);
    case Yardstick::forward:
      return rep.line_forward_2s;
    case Yardstick::out:
      return share(rep.ending == Ending::out);
    case Yardstick::seconds:
      return rep.t_end;
  }
  return 0.0;
}

bool needsCrossing(Yardstick what) { return what == Yardstick::crossing || what == Yardstick::room; }

double medianGain(std::span<const Summary> reps) {
  std::vector<double> yards;
  for (const Summary& rep : reps) yards.push_back(rep.yards);
  return medianOf(yards);
}

}  // namespace

std::string_view nameOf(Yardstick what) { return kNames[static_cast<std::size_t>(what)]; }

bool isShare(Yardstick what) {
  constexpr std::array kShares = {Yardstick::lost,    Yardstick::stuffed, Yardstick::twelve_plus,
                                  Yardstick::outside, Yardstick::bent,    Yardstick::inside_guard,
                                  Yardstick::through, Yardstick::out};
  return std::find(kShares.begin(), kShares.end(), what) != kShares.end();
}

Verdict verdictOf(const TradeFact& fact, const std::vector<TrialResult>& results) {
  std::size_t own = 0, held = 0;
  for (std::size_t k = 0; k < results.size(); ++k) {
    if (fact.trials[k].beyond) continue;
    ++own;
    held += results[k].holds ? 1 : 0;
  }
  if (held == own) return Verdict::holds;
  return held > 0 ? Verdict::in_part : Verdict::misses;
}

TrialResult judge(const Trial& trial, int direction_a, int direction_b, std::span<const Summary> a,
                  std::span<const Summary> b, double alpha) {
  const double middle_a = medianGain(a), middle_b = medianGain(b);
  std::vector<double> side_a, side_b;
  for (std::size_t k = 0; k < std::min(a.size(), b.size()); ++k) {
    if (needsCrossing(trial.what) && (a[k].t_line < 0.0 || b[k].t_line < 0.0)) continue;
    side_a.push_back(valueOf(a[k], trial.what, direction_a, middle_a));
    side_b.push_back(valueOf(b[k], trial.what, direction_b, middle_b));
  }
  TrialResult result;
  result.paired = pairedDifference(side_a, side_b, 1.0 - kTradeAlpha);
  result.mean_a = meanOf(side_a);
  result.mean_b = meanOf(side_b);
  result.holds = trial.sign * result.paired.difference > 0.0 && result.paired.p_value < alpha;
  return result;
}

TrialResult judged(const Trial& trial, int n, PlayedLooks& looks) {
  TrialResult result;
  for (const Checkpoint& stage : checkpointsOf(n, kTradeAlpha)) {
    const auto &a = looks.of(trial.a, stage.n), &b = looks.of(trial.b, stage.n);
    const auto count = static_cast<std::size_t>(stage.n);
    result = judge(trial, a.setup.direction, b.setup.direction, std::span(a.reps).first(count),
                   std::span(b.reps).first(count), stage.alpha);
    if (result.paired.p_value < stage.alpha) break;  // either way
  }
  return result;
}

}  // namespace gapsound
