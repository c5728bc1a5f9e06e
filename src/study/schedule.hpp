#pragma once
#include <cstddef>
#include <vector>

namespace gapsound {

/// One rep of a study: the look it is played from and its seed, counted from the study's first.
struct RepPlace {
  std::size_t cell = 0, rep = 0;
  bool operator==(const RepPlace&) const = default;
};

/// The order in which a study plays its reps: seed by seed through all cells, so that a study stopped early
/// still has its pairs. Every cell gets its reps in ascending order.
class Schedule {
 public:
  /// Reps first..first + reps - 1 of each of `cells` cells.
  Schedule(std::size_t cells, std::size_t reps, std::size_t first = 0);
  /// The same, but `early` reps of the cells named in `look` (ascending) come before all others.
  Schedule(std::size_t cells, std::size_t reps, const std::vector<std::size_t>& look, std::size_t early);

  [[nodiscard]] std::size_t size() const { return cells_ * reps_; }
  [[nodiscard]] std::size_t cells() const { return cells_; }
  [[nodiscard]] std::size_t reps() const { return reps_; }
  /// Reps that come early; 0 without a first look.
  [[nodiscard]] std::size_t firstLook() const { return look_.size() * early_; }
  [[nodiscard]] RepPlace at(std::size_t k) const;
  /// Part `part` of `parts` (1 <= part <= parts): its share of the seeds, in the plain order.
  [[nodiscard]] Schedule part(int part, int parts) const;

 private:
  std::size_t cells_, reps_, first_ = 0, early_ = 0;
  std::vector<std::size_t> look_, others_;
};

}  // namespace gapsound
