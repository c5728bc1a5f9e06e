#pragma once
#include <string>
#include <vector>

#include "options.hpp"
#include "study/calibration.hpp"

namespace calibration {

/// One look of the calibration set, resolved at some level.
struct SetLook {
  std::string title;
  bool judges = false;
  gapsound::LookClass kind;
  double weight = 0.0;  // within its half
  gapsound::Setup setup;
};
[[nodiscard]] std::vector<SetLook> setLooks(const Ground& ground, gapsound::Level level);

/// All reps of the set, look by look.
using SetReps = std::vector<std::vector<gapsound::Summary>>;
[[nodiscard]] SetReps playSet(const std::vector<SetLook>& looks, const Ground& ground,
                              const gapsound::Model& model, int n);
/// The reps of one half with their weights. Borrows `reps`.
[[nodiscard]] std::vector<gapsound::WeightedReps> halfOf(const std::vector<SetLook>& looks,
                                                         const SetReps& reps, bool judges);

/// A figure as the card shows it, its band, and "pass", "miss" or "".
[[nodiscard]] std::string figureOf(const gapsound::CardLine& line);
[[nodiscard]] std::string bandOf(const gapsound::CardLine& line);
[[nodiscard]] std::string verdictOf(const gapsound::CardLine& line);

}  // namespace calibration
