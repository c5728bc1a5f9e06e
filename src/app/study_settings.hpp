#pragma once
#include <optional>
#include <string>
#include <vector>

#include "scenario/scenario.hpp"
#include "study/vary.hpp"

namespace gapsound {

/// A number of one man that can be swept.
struct SweepSetting {
  const char* word;   // on the card: "downhill"
  const char* key;    // in files: "downhill_yps"
  const char* words;  // in sentences: "the downhill speed"
  const char* unit;
  std::optional<double> ManSettings::*setting;
  double low, high, step;  // what is offered first
};
[[nodiscard]] const std::vector<SweepSetting>& sweepSettings();
/// Throws Error(ourFault) for a word that is not on the list.
[[nodiscard]] const SweepSetting& sweepSettingNamed(const std::string& word);

struct SweepRange {
  std::string man;
  std::string setting = "downhill";  // a SweepSetting's word
  double low = 3.0, high = 9.0, step = 1.0;
};
/// The values of a range, both ends included; empty when it makes no sense or is longer than 60.
[[nodiscard]] std::vector<double> valuesOf(const SweepRange& range);
[[nodiscard]] SweepAxis axisOf(const SweepRange& range);
/// The look with the values of one cell, the first range slowest.
[[nodiscard]] Scenario sweptLook(const Scenario& look, const std::vector<SweepRange>& ranges,
                                 std::size_t cell);

}  // namespace gapsound
