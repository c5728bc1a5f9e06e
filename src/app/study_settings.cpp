#include "app/study_settings.hpp"

#include <cmath>

#include "base/error.hpp"

namespace gapsound {

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

SweepAxis axisOf(const SweepRange& range) {
  const SweepSetting& setting = sweepSettingNamed(range.setting);
  return {"players." + range.man + "." + setting.key, std::string(setting.words) + " of " + range.man,
          setting.unit, valuesOf(range)};
}

Scenario sweptLook(const Scenario& look, const std::vector<SweepRange>& ranges, std::size_t cell) {
  Scenario swept = look;
  for (auto range = ranges.rbegin(); range != ranges.rend(); ++range) {
    const auto values = valuesOf(*range);
    ManSettings& man = swept.players[range->man];
    man.*sweepSettingNamed(range->setting).setting = values[cell % values.size()];
    if (man.depth_yd && man.y) man.y.reset();
    cell /= values.size();
  }
  return swept;
}

}  // namespace gapsound
