#pragma once
#include <optional>

#include "app/study_job.hpp"
#include "picture/display_list.hpp"

namespace gapsound {

/// The picture of a study in a box of the page: the finding, then a curve over a row of cells, a map, bars of
/// mistakes, or fronts against ways to block. A square or bar grows with the yards, so the page needs no
/// colour.
[[nodiscard]] DisplayList studyPage(const StudyPicture& picture, const PageRect& box);
/// The cell under a point of the page.
[[nodiscard]] std::optional<std::size_t> studyCellAt(const StudyPicture& picture, const PageRect& box,
                                                     Vec2 page);
/// Where a cell stands; nothing for the mistakes that are not shown.
[[nodiscard]] std::optional<PageRect> studyCell(const StudyPicture& picture, const PageRect& box,
                                                std::size_t cell);

}  // namespace gapsound
