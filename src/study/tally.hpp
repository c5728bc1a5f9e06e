#pragma once
#include <cstdint>
#include <map>
#include <string>
#include <vector>

#include "study/distribution.hpp"

namespace gapsound {

/// Counts of values on a fine grid: its memory depends on their range and not on their number.
class Histogram {
 public:
  /// Values are rounded to 1 / per_unit and held within [low, high].
  Histogram(double low, double high, int per_unit);
  void add(double value);
  [[nodiscard]] std::int64_t n() const { return n_; }
  /// Quantile p in [0, 1] between order statistics, type 7; 0 without values.
  [[nodiscard]] double quantile(double p) const;
  [[nodiscard]] double median() const { return quantile(0.5); }
  /// Share of the values at or above `value`; 0 without values.
  [[nodiscard]] double shareAtLeast(double value) const;
  /// Grid values that came up and how often, ascending.
  [[nodiscard]] std::vector<std::pair<double, std::int64_t>> counts() const;

 private:
  [[nodiscard]] std::int64_t place(double value) const;
  [[nodiscard]] double valueAt(std::int64_t place) const {
    return static_cast<double>(first_ + place) / per_unit_;
  }
  int per_unit_;
  std::int64_t first_, n_ = 0;
  std::vector<std::uint32_t> counts_;
};

/// Mean and standard deviation of a stream of values.
class Moments {
 public:
  void add(double value);
  [[nodiscard]] std::int64_t n() const { return n_; }
  [[nodiscard]] double mean() const { return n_ > 0 ? sum_ / static_cast<double>(n_) : 0.0; }
  [[nodiscard]] double sd() const;
  /// Against no difference: the paired t test when the values are differences.
  [[nodiscard]] Paired paired(double level = 0.95) const;

 private:
  std::int64_t n_ = 0;
  double sum_ = 0.0, first_ = 0.0;
  double from_first_ = 0.0, squares_ = 0.0;  // powers about the first value
};

/// Adds reps up one by one, in constant memory.
class Tally {
 public:
  explicit Tally(const Situation& situation = {}) : situation_(situation) {}
  void add(const Summary& rep);
  [[nodiscard]] int n() const { return static_cast<int>(yards_.n()); }
  [[nodiscard]] Interval meanInterval() const {
    return gainInterval(yards_.mean(), yards_.sd(), static_cast<int>(yards_.n()));
  }
  [[nodiscard]] Distribution distribution() const;
  /// Gains in whole yards.
  [[nodiscard]] const Histogram& gains() const { return whole_; }

 private:
  void addTiming(const Summary& rep);
  void addLane(const Summary& rep);
  [[nodiscard]] Timing timing() const;

  Situation situation_;
  Moments yards_, after_contact_, cross_x_mean_;
  Histogram whole_{-60.0, 110.0, 1};
  Histogram cross_x_{-30.0, 30.0, 500};
  Histogram t_handoff_ = times(), t_line_ = times(), t_first_contact_ = times(), t_end_ = times(),
            contact_to_end_ = times();
  Histogram speed_handoff_ = speeds(), speed_line_ = speeds(), best_speed_ = speeds(), speed_1s_ = speeds(),
            speed_1_5s_ = speeds(), speed_2s_ = speeds();
  Histogram depth_handoff_{-10.0, 20.0, 500}, nearest_defender_{0.0, 60.0, 500}, within_3_{0.0, 11.0, 1};
  static Histogram times();
  static Histogram speeds() { return {0.0, 15.0, 500}; }
  std::map<std::string, LaneUse> lanes_;  // sums
  std::int64_t cutback_open_ = 0, cutback_taken_ = 0, bounced_ = 0, kept_ = 0, tries_ = 0, misses_ = 0;
};

}  // namespace gapsound
