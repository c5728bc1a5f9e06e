#pragma once
#include <optional>
#include <string>

#include "app/desk.hpp"
#include "picture/display_list.hpp"
#include "picture/ladder.hpp"

namespace gapsound {

/// The parts of the window in page units, from top to bottom. The cards stand left and right of field and
/// ledger; title, ladder and rail keep the full width.
struct PageLayout {
  double width = 1280.0, height = 720.0;
  PageRect title, field, ledger, ladder, rail;
  PageRect left, right;  // room for cards; width 0 when none is open there
  double text = 15.0;    // size of words
  bool narrow = false;   // too narrow for all the words of a line
  bool low = false;      // so low that only what is needed is shown
};
[[nodiscard]] PageLayout layoutOf(double width, double height, bool left, bool right, bool meeting);

/// Where things stand on a page, for what the mouse does to them.
struct FieldPlace {
  FieldLook look;
  Camera camera;
};
/// The field of the live rep: all of the box, or its right half beside a held one.
[[nodiscard]] FieldPlace fieldPlace(const Desk& desk, const PageLayout& layout);
[[nodiscard]] LadderLook ladderLook(const Desk& desk, const PageLayout& layout);
/// The man whose sign lies under a point of the page; kNobody when there is none.
[[nodiscard]] int manAt(const Desk& desk, const PageLayout& layout, Vec2 page);
/// The tick of the ladder nearest to a point of the page, within a finger's breadth.
[[nodiscard]] std::optional<LadderTick> tickAt(const Desk& desk, const PageLayout& layout, Vec2 page);

/// Where a study's picture stands, over field and ledger.
[[nodiscard]] PageRect studyBox(const PageLayout& layout);

/// Title line, field, ledger and ladder at the tape's moment: the same values for the same moment, however it
/// was reached. Needs a rep.
[[nodiscard]] DisplayList stagePage(const Desk& desk, const PageLayout& layout);

}  // namespace gapsound
