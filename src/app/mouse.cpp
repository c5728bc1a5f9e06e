#include "app/screen.hpp"

namespace gapsound {
namespace {

bool inside(const PageRect& box, Vec2 p) {
  return p.x >= box.x && p.x < box.right() && p.y >= box.y && p.y < box.bottom();
}

Vec2 mouseOn(const Screen& screen) {
  const ImVec2 at = ImGui::GetIO().MousePos;
  return {at.x / screen.scale, at.y / screen.scale};
}

/// The ladder is the scrubber: pressed anywhere it moves the tape there; a tick also selects its man.
void scrub(Screen& screen, Vec2 at) {
  Desk& desk = screen.desk;
  const LadderLook look = ladderLook(desk, screen.layout);
  desk.playback.pause();
  desk.hintDone(2);
  if (const auto tick = tickAt(desk, screen.layout, at); tick && ImGui::IsMouseClicked(0)) {
    desk.playback.seek(tick->t);
    if (tick->man != kNobody) desk.select(desk.rep()->tape.setup.men[static_cast<std::size_t>(tick->man)].id);
    return;
  }
  desk.playback.seek(ladderTime(desk.rep()->tape, look, at.x));
}

void tellTick(Screen& screen, Vec2 at) {
  const auto tick = tickAt(screen.desk, screen.layout, at);
  if (tick) ImGui::SetTooltip("%.2f s  %s", tick->t, tick->words.c_str());
}

}  // namespace

void handleMouse(Screen& screen) {
  if (ImGui::GetIO().WantCaptureMouse && !ImGui::IsMouseDragging(0)) return;
  if (ImGui::GetIO().WantCaptureMouse) return;
  const Vec2 at = mouseOn(screen);
  const ImVec2 clicked = ImGui::GetIO().MouseClickedPos[0];
  const Vec2 from{clicked.x / screen.scale, clicked.y / screen.scale};
  if (ImGui::IsMouseDown(0) && inside(screen.layout.ladder, from)) return scrub(screen, at);
  if (inside(screen.layout.ladder, at)) return tellTick(screen, at);
  if (ImGui::IsMouseClicked(0) && inside(screen.layout.field, at)) {
    const int man = manAt(screen.desk, screen.layout, at);
    screen.desk.select(man == kNobody ? "" : screen.desk.rep()->tape.setup.men[static_cast<std::size_t>(man)].id);
  }
}

}  // namespace gapsound
