#include "app/study_job.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "app/rep.hpp"
#include "base/error.hpp"
#include "cli/session.hpp"
#include "scenario/resolve.hpp"

namespace gapsound {
namespace {

SweepAxis axisOf(const SweepRange& range) {
  const SweepSetting& setting = sweepSettingNamed(range.setting);
  return {"players." + range.man + "." + setting.key, std::string(setting.words) + " of " + range.man,
          setting.unit, valuesOf(range)};
}

std::size_t cellsOf(const SweepOrder& order) {
  std::size_t cells = 1;
  for (const SweepRange& range : order.ranges) cells *= valuesOf(range).size();
  return cells;
}

SweepPlan planOf(const SweepOrder& order, const Model& model) {
  SweepPlan plan;
  for (const SweepRange& range : order.ranges) plan.axes.push_back(axisOf(range));
  for (std::size_t cell = 0; cell < cellsOf(order); ++cell) {
    plan.setups.push_back(resolve(lookOfCell(order, cell), library(), model));
  }
  const int man = manNamed(plan.setups.front(), order.ranges.front().man);
  plan.about_safety =
      man != kNobody && plan.setups.front().men[static_cast<std::size_t>(man)].group == Group::safety;
  return plan;
}

/// Reps a value of each round: a first picture soon, then finer ones.
std::vector<int> rounds(int n) {
  std::vector<int> sizes;
  for (int size = 5; 3 * size < n; size *= 5) sizes.push_back(size);
  sizes.push_back(n);
  return sizes;
}

void playPlan(const SweepOrder& order, SweepPlan plan, const Model& model, const Errand::Stale& stale,
              std::atomic<double>& share, Mailbox<SweepPicture>& box) {
  const std::vector<int> sizes = rounds(order.n);
  const double total = std::accumulate(sizes.begin(), sizes.end(), 0.0);
  double before = 0.0;
  plan.threads = 1;
  for (const int size : sizes) {
    plan.n = size;
    const SweepResult result = vary(plan, model, [&](double done) {
      share = (before + size * done) / total;
      return !stale;
    });
    if (stale) return;
    before += size;
    box.put({order, result, size, ""});
  }
}

}  // namespace

const std::vector<SweepSetting>& sweepSettings() {
  static const std::vector<SweepSetting> settings = {
      {"downhill", "downhill_yps", "the downhill speed", "yd/s", &ManSettings::downhill_yps, 3.0, 9.0, 1.0},
      {"read", "read_delay_s", "the read", "s", &ManSettings::read_delay_s, 0.5, 1.4, 0.15},
      {"depth", "depth_yd", "the depth", "yd", &ManSettings::depth_yd, 7.0, 13.0, 1.0},
      {"across", "x", "the spot across", "yd", &ManSettings::x, 3.0, 9.0, 1.0},
      {"weight", "mass_kg", "the weight", "kg", &ManSettings::mass_kg, 80.0, 120.0, 10.0},
      {"push", "push", "the push", "times", &ManSettings::push, 0.7, 1.3, 0.1},
  };
  return settings;
}

const SweepSetting& sweepSettingNamed(const std::string& word) {
  for (const SweepSetting& setting : sweepSettings()) {
    if (setting.word == word) return setting;
  }
  throw Error(ExitCode::ourFault, "no setting " + word);
}

std::vector<double> valuesOf(const SweepRange& range) {
  constexpr double kMost = 60.0;
  if (range.step <= 0.0 || range.high < range.low || (range.high - range.low) / range.step >= kMost)
    return {};
  std::vector<double> values;
  const auto count = std::lround((range.high - range.low) / range.step) + 1;
  for (long k = 0; k < count; ++k) {
    values.push_back(std::round((range.low + static_cast<double>(k) * range.step) * 1e6) / 1e6);
  }
  return values;
}

Scenario lookOfCell(const SweepOrder& order, std::size_t cell) {
  Scenario look = order.look;
  for (auto range = order.ranges.rbegin(); range != order.ranges.rend(); ++range) {
    const auto values = valuesOf(*range);
    ManSettings& man = look.players[range->man];
    man.*sweepSettingNamed(range->setting).setting = values[cell % values.size()];
    if (man.depth_yd && man.y) man.y.reset();
    cell /= values.size();
  }
  return look;
}

void playSweep(const SweepOrder& order, const Model& model, const Errand::Stale& stale,
               std::atomic<double>& share, Mailbox<SweepPicture>& box) {
  try {
    for (const SweepRange& range : order.ranges) {
      if (valuesOf(range).empty())
        throw InputError("study", range.setting, "from, to, step", "a step above 0, at most 60 values");
    }
    playPlan(order, planOf(order, model), model, stale, share, box);
  } catch (const Error& error) {
    box.put({order, {}, 0, error.what()});
  }
}

}  // namespace gapsound
