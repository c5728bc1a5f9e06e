#include "study/schedule.hpp"

#include <algorithm>

namespace gapsound {

Schedule::Schedule(std::size_t cells, std::size_t reps, std::size_t first)
    : cells_(cells), reps_(reps), first_(first) {}

Schedule::Schedule(std::size_t cells, std::size_t reps, const std::vector<std::size_t>& look,
                   std::size_t early)
    : cells_(cells), reps_(reps), early_(std::min(early, reps)), look_(look) {
  for (std::size_t cell = 0; cell < cells; ++cell)
    if (!std::binary_search(look.begin(), look.end(), cell)) others_.push_back(cell);
}

RepPlace Schedule::at(std::size_t k) const {
  const std::size_t seen = firstLook();
  if (k < seen) return {look_[k % look_.size()], first_ + k / look_.size()};
  k -= seen;
  const std::size_t missed = others_.size() * early_;
  if (k < missed) return {others_[k % others_.size()], first_ + k / others_.size()};
  k -= missed;
  return {k % cells_, first_ + early_ + k / cells_};
}

Schedule Schedule::part(int part, int parts) const {
  const auto bound = [&](int k) {
    return reps_ * static_cast<std::size_t>(k) / static_cast<std::size_t>(parts);
  };
  const std::size_t from = bound(part - 1);
  return {cells_, bound(part) - from, first_ + from};
}

}  // namespace gapsound
