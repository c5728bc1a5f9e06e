#pragma once
#include <optional>
#include <string>
#include <vector>

#include "options.hpp"
#include "scenario/scenario.hpp"
#include "scenario/setup.hpp"

namespace calibration {

/// A look to be played by itself: a shipped scenario, or one made from library names that nobody tuned on.
struct CardLook {
  std::string name;
  gapsound::Scenario scenario;
  bool shipped = true;
};

/// Every shipped look tagged sound and the made ones, those whose names fit the pattern asked for.
[[nodiscard]] std::vector<CardLook> looksFor(const Options& options);
/// A look that does not resolve is named and left out, so that one bad file does not cost the whole card.
[[nodiscard]] std::optional<gapsound::Setup> resolvedOrTold(const CardLook& look, const Ground& ground);

}  // namespace calibration
