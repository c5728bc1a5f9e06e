#pragma once
#include <optional>

#include "app/study_job.hpp"
#include "picture/display_list.hpp"

namespace gapsound {

/// The picture of a sweep in a box of the page: the finding, a curve or a map, and a cell for every value. A
/// cell's square grows with the yards it costs, so the page needs no colour; the best cell has a heavy frame.
[[nodiscard]] DisplayList sweepPage(const SweepPicture& picture, const PageRect& box);
/// The cell under a point of the page.
[[nodiscard]] std::optional<std::size_t> sweepCellAt(const SweepPicture& picture, const PageRect& box,
                                                     Vec2 page);
/// Where a cell stands.
[[nodiscard]] PageRect sweepCell(const SweepPicture& picture, const PageRect& box, std::size_t cell);

}  // namespace gapsound
