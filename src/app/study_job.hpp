#pragma once
#include <atomic>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "app/errand.hpp"
#include "base/model.hpp"
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
/// What is gone through: one setting, or two at once.
struct SweepOrder {
  Scenario look;
  std::vector<SweepRange> ranges;
  int n = 100;  // reps a value
  std::uint64_t edition = 0;
};
/// The values of a range, both ends included; empty when it makes no sense or is longer than 60.
[[nodiscard]] std::vector<double> valuesOf(const SweepRange& range);
/// The look of one cell, the first range slowest.
[[nodiscard]] Scenario lookOfCell(const SweepOrder& order, std::size_t cell);

/// What has come together so far.
struct SweepPicture {
  SweepOrder order;
  SweepResult result;
  int played = 0;     // reps a value
  std::string fault;  // why it cannot be played; "" when it can
  [[nodiscard]] bool done() const { return played >= order.n || !fault.empty(); }
};
/// Plays the order in rounds that grow, a first picture after a few reps a value, and leaves the picture in
/// the box after each, until it is done or stale. `share` tells how far it is, [0, 1].
void playSweep(const SweepOrder& order, const Model& model, const Errand::Stale& stale,
               std::atomic<double>& share, Mailbox<SweepPicture>& box);

}  // namespace gapsound
