#include "app/study_job.hpp"

#include <algorithm>
#include <cmath>

#include "app/rep.hpp"
#include "base/error.hpp"
#include "cli/session.hpp"
#include "scenario/resolve.hpp"
#include "study/reps.hpp"

namespace gapsound {
namespace {

using Reps = std::vector<std::vector<Summary>>;  // [cell][seed]

SweepAxis axisOf(const SweepRange& range) {
  const SweepSetting& setting = sweepSettingNamed(range.setting);
  return {"players." + range.man + "." + setting.key, std::string(setting.words) + " of " + range.man, setting.unit,
          valuesOf(range)};
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
  plan.about_safety = man != kNobody && plan.setups.front().men[static_cast<std::size_t>(man)].group == Group::safety;
  return plan;
}

/// Half of the seeds judge the cells, the other half choose the best one.
SweepResult resultOf(const SweepPlan& plan, const Reps& reps) {
  Reps judging, choosing;
  for (const auto& cell : reps) {
    const auto half = cell.begin() + static_cast<std::ptrdiff_t>((cell.size() + 1) / 2);
    judging.emplace_back(cell.begin(), half);
    choosing.emplace_back(half, cell.end());
  }
  return sweepOf(plan, choosing, judging);
}

/// Seeds from+1..to of every cell; false when it became stale.
bool playLot(const SweepPlan& plan, const Model& model, int from, int to, int total, const Errand::Stale& stale,
             std::atomic<double>& share, Reps& reps) {
  const auto cells = static_cast<double>(plan.setups.size());
  for (std::size_t cell = 0; cell < plan.setups.size(); ++cell) {
    if (stale) return false;
    const auto lot = playMany(plan.setups[cell], model, static_cast<std::uint64_t>(from) + 1, to - from, 1);
    reps[cell].insert(reps[cell].end(), lot.begin(), lot.end());
    share = (from + (to - from) * (static_cast<double>(cell) + 1.0) / cells) / total;
  }
  return true;
}

void playPlan(const SweepOrder& order, const SweepPlan& plan, const Model& model, const Errand::Stale& stale,
              std::atomic<double>& share, Mailbox<SweepPicture>& box) {
  const int total = 2 * order.n;
  Reps reps(plan.setups.size());
  for (int from = 0, to = 8; from < total; from = to, to = std::min(total, 2 * to)) {
    if (!playLot(plan, model, from, std::min(to, total), total, stale, share, reps)) return;
    box.put({order, resultOf(plan, reps), std::min(to, total) / 2, ""});
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
  if (range.step <= 0.0 || range.high < range.low || (range.high - range.low) / range.step >= kMost) return {};
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

void playSweep(const SweepOrder& order, const Model& model, const Errand::Stale& stale, std::atomic<double>& share,
               Mailbox<SweepPicture>& box) {
  try {
    for (const SweepRange& range : order.ranges) {
      if (valuesOf(range).empty()) throw InputError("study", range.setting, "from, to, step", "a step above 0, at most 60 values");
    }
    playPlan(order, planOf(order, model), model, stale, share, box);
  } catch (const Error& error) {
    box.put({order, {}, 0, error.what()});
  }
}

}  // namespace gapsound
