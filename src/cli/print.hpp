#pragma once
#include <chrono>
#include <nlohmann/json.hpp>
#include <optional>
#include <string>

#include "study/distribution.hpp"
#include "study/reps.hpp"

namespace gapsound {

using Answer = nlohmann::ordered_json;

/// The one document of a --json call, on standard output.
void printAnswer(const Answer& answer);
/// A time or number that may never have come about: null below zero.
[[nodiscard]] Answer orNull(double value);
[[nodiscard]] Answer asPair(const Interval& interval);
/// Everything about a distribution under the keys scripts rely on.
[[nodiscard]] Answer asAnswer(const Distribution& distribution);
[[nodiscard]] const char* wordOf(Ending ending);
[[nodiscard]] const char* wordOf(Relation relation);
/// "12.3 %".
[[nodiscard]] std::string percent(double share);

/// Shows the share done and the time left on standard error: one moving line on a terminal, quarters
/// elsewhere.
class ProgressLine {
 public:
  explicit ProgressLine(std::string what);
  ~ProgressLine();
  ProgressLine(const ProgressLine&) = delete;
  ProgressLine& operator=(const ProgressLine&) = delete;
  /// To be handed to a study; refers to this object.
  [[nodiscard]] Progress reporter();

 private:
  void show(double share);
  [[nodiscard]] std::string timeLeft(double share) const;
  std::string what_;
  bool terminal_;
  int shown_ = -1;
  std::chrono::steady_clock::time_point started_;
  double share_at_start_ = -1.0;  // of work that was done before
};

}  // namespace gapsound
