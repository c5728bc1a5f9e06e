#pragma once
#include <nlohmann/json_fwd.hpp>
#include <string>
#include <vector>

namespace gapsound {

/// What one call changes about a scenario, as typed: "players.SS.downhill_yps=6" and "WE=kicked_out:1.5".
struct Changes {
  std::vector<std::string> sets = {};
  std::vector<std::string> faults = {};
};

/// Lays the changes on the document before it is checked, sets first. A man who is not in the file yet
/// is added, and the keys of the defense's call may be named without "call.". Throws InputError for a text
/// that is not PATH=VALUE or MAN=KIND[:AMOUNT].
void applyChanges(nlohmann::json& document, const Changes& changes);

/// Values of one setting to go through.
struct Sweep {
  std::string path;
  std::vector<double> values;
};

/// "PATH=LO:HI:STEP" with HI included: round((HI - LO) / STEP) + 1 values, at most 1000.
[[nodiscard]] Sweep expandRange(const std::string& text);
/// The change that gives the setting this value, "PATH=VALUE".
[[nodiscard]] std::string settingText(const std::string& path, double value);

}  // namespace gapsound
