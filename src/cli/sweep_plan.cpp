#include "cli/sweep_plan.hpp"

#include <fmt/format.h>

#include <array>
#include <charconv>
#include <string_view>

#include "base/error.hpp"
#include "cli/session.hpp"

namespace gapsound {
namespace {

constexpr std::size_t kMostCells = 10000;

struct SettingWords {
  std::string_view key, words, unit;
};

constexpr std::array<SettingWords, 6> kSettings = {{
    {"downhill_yps", "the downhill speed", "yd/s"},
    {"read_delay_s", "the read", "s"},
    {"depth_yd", "the depth", "yd"},
    {"mass_kg", "the weight", "kg"},
    {"forty_yd_s", "the forty", "s"},
    {"ten_yd_s", "the ten", "s"},
}};

std::string manIn(const std::string& path) {
  constexpr std::string_view kPlayers = "players.";
  if (path.rfind(kPlayers, 0) != 0) return "";
  return path.substr(kPlayers.size(), path.find('.', kPlayers.size()) - kPlayers.size());
}

SweepAxis axisFor(const Sweep& sweep) {
  const std::string key = sweep.path.substr(sweep.path.rfind('.') + 1);
  const std::string man = manIn(sweep.path);
  for (const auto& setting : kSettings) {
    if (man.empty() || setting.key != key) continue;
    return {sweep.path, std::string(setting.words) + " of " + man, std::string(setting.unit), sweep.values};
  }
  return {sweep.path, sweep.path, "", sweep.values};
}

bool isSafety(const Setup& setup, const std::string& id) {
  for (const Man& man : setup.men) {
    if (man.drawn == id || man.id == id) return man.group == Group::safety;
  }
  return false;
}

std::string limitForm() {
  std::vector<std::string> names;
  for (const GainMeasure& measure : gainMeasures()) names.emplace_back(measure.name);
  return fmt::format("MEASURE=VALUE, or =+VALUE and =-VALUE against the best; measures: {}",
                     fmt::join(names, ", "));
}

BreakRule ruleFrom(const std::string& text) {
  const auto at = text.find('=');
  const GainMeasure* measure = at == std::string::npos ? nullptr : gainMeasureNamed(text.substr(0, at));
  if (!measure) throw InputError("options", "--limit", text, limitForm());
  const std::string_view value = std::string_view(text).substr(at + 1);
  const bool over_best = !value.empty() && (value.front() == '+' || value.front() == '-');
  const std::string_view number = !value.empty() && value.front() == '+' ? value.substr(1) : value;
  double amount = 0.0;
  const auto [end, fault] = std::from_chars(number.data(), number.data() + number.size(), amount);
  const bool sound =
      fault == std::errc{} && end == number.data() + number.size() && amount >= -100.0 && amount <= 100.0;
  if (!sound) throw InputError("options", "--limit", text, limitForm());
  return {measure, amount, over_best};
}

std::vector<Sweep> sweepsFor(const VaryOptions& options) {
  if (options.over.size() > 2)
    throw InputError("options", "--over", fmt::format("{} settings", options.over.size()), "one or two");
  std::vector<Sweep> sweeps;
  std::size_t cells = 1;
  for (const auto& text : options.over) {
    sweeps.push_back(expandRange(text));
    cells *= sweeps.back().values.size();
  }
  if (cells > kMostCells)
    throw InputError("options", "--over", fmt::format("{} cells", cells),
                     fmt::format("at most {} cells", kMostCells));
  if (sweeps.size() == 2 && sweeps[0].path == sweeps[1].path)
    throw InputError("options", "--over", sweeps[0].path + " twice", "two different settings");
  return sweeps;
}

void addLooks(SweepTask& task, const VaryOptions& options, const std::vector<Sweep>& sweeps,
              const Model& model) {
  const auto add = [&](std::vector<std::string> sets) {
    const Changes changes = joined(options.changes, {std::move(sets), {}});
    task.looks.add(scenarioFor(options, options.file, changes, model), model);
  };
  for (const double first : sweeps[0].values) {
    const std::string set = settingText(sweeps[0].path, first);
    if (sweeps.size() == 1)
      add({set});
    else
      for (const double second : sweeps[1].values) add({set, settingText(sweeps[1].path, second)});
  }
}

}  // namespace

SweepTask sweepTaskFor(const VaryOptions& options, const Model& model) {
  SweepTask task;
  const auto sweeps = sweepsFor(options);
  for (const Sweep& sweep : sweeps) task.plan.axes.push_back(axisFor(sweep));
  if (!options.limits.empty()) {
    task.plan.usual_rules = false;
    task.plan.rules.clear();
    for (const auto& limit : options.limits) task.plan.rules.push_back(ruleFrom(limit));
  }
  addLooks(task, options, sweeps, model);
  task.plan.setups = task.looks.setups;
  task.plan.first_seed = options.seed;
  task.plan.n = options.n;
  task.plan.threads = options.jobs;
  for (const Sweep& sweep : sweeps)
    task.plan.about_safety = task.plan.about_safety || isSafety(task.plan.setups.front(), manIn(sweep.path));
  return task;
}

}  // namespace gapsound
