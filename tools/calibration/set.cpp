#include "set.hpp"

#include <fmt/core.h>

#include "io/assets.hpp"
#include "io/calibration_file.hpp"
#include "io/library.hpp"
#include "scenario/resolve.hpp"
#include "study/reps.hpp"

using namespace gapsound;

namespace calibration {
namespace {

void weigh(const CalibrationSet& set, std::vector<SetLook>& looks, bool judges) {
  std::vector<LookClass> classes;
  for (const SetLook& look : looks)
    if (look.judges == judges) classes.push_back(look.kind);
  const auto weights = rakedWeights(set, classes);
  std::size_t next = 0;
  for (SetLook& look : looks)
    if (look.judges == judges) look.weight = weights[next++];
}

}  // namespace

std::vector<SetLook> setLooks(const Ground& ground, Level level) {
  const CalibrationSet set = readCalibrationSet(assetPath("calibration.json"));
  std::vector<SetLook> looks;
  for (const CalibrationLook& entry : set.looks) {
    Scenario scenario = entry.scenario;
    scenario.level = level;
    Setup setup = resolve(scenario, ground.library, ground.model);
    const LookClass kind{entry.kind, menInBox(setup)};
    looks.push_back({scenario.title, entry.judges, kind, 0.0, std::move(setup)});
  }
  weigh(set, looks, false);
  weigh(set, looks, true);
  return looks;
}

SetReps playSet(const std::vector<SetLook>& looks, const Ground& ground, const Model& model, int n) {
  std::vector<Setup> setups;
  for (const SetLook& look : looks) setups.push_back(look.setup);
  return playAll(setups, model, ground.options.seed, n, ground.options.jobs, tellProgress);
}

std::vector<WeightedReps> halfOf(const std::vector<SetLook>& looks, const SetReps& reps, bool judges) {
  std::vector<WeightedReps> half;
  for (std::size_t k = 0; k < looks.size(); ++k)
    if (looks[k].judges == judges)
      half.push_back({reps[k], looks[k].weight, looks[k].setup.snap_flight_s <= 0.0, looks[k].kind.box});
  return half;
}

std::string figureOf(const CardLine& line) {
  if (line.form == CardLine::Form::share) return fmt::format("{:.1f}", 100.0 * line.value);
  const double value = line.value + 0.0;  // no minus before a nought
  return fmt::format("{:.{}f}", value, line.form == CardLine::Form::one ? 1 : 2);
}

std::string bandOf(const CardLine& line) {
  if (!line.band) return "";
  const double scale = line.form == CardLine::Form::share ? 100.0 : 1.0;
  const auto [low, high] = *line.band;
  if (low == high) return fmt::format("{:g}", scale * low);
  return fmt::format("{:g} to {:g}", scale * low, scale * high);
}

std::string verdictOf(const CardLine& line) { return !line.band ? "" : line.passes() ? "pass" : "miss"; }

}  // namespace calibration
