#include <fmt/format.h>

#include "app/landmarks.hpp"
#include "app/screen.hpp"
#include "app/study_page.hpp"
#include "cli/session.hpp"

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

const Man& manOf(const Screen& screen, int man) {
  return screen.desk.rep()->tape.setup.men[static_cast<std::size_t>(man)];
}

/// A press on a man selects him and takes hold of him; on the ground it lets go of everybody.
void press(Screen& screen, Vec2 at) {
  Desk& desk = screen.desk;
  if (desk.view.question) {
    desk.view.question->guess =
        guessAt(*desk.view.question, fieldPlace(desk, screen.layout).camera.fromPage(at));
    return;
  }
  const int man = manAt(desk, screen.layout, at);
  desk.select(man == kNobody ? "" : manOf(screen, man).id);
  if (man == kNobody) return;
  const Frame frame = frameAt(desk.rep()->tape, desk.playback.time());
  const Vec2 his = frame.men[static_cast<std::size_t>(man)].pos;
  desk.view.drag = Drag{man, his - fieldPlace(desk, screen.layout).camera.fromPage(at), false, ""};
}

/// Dragging speaks of the spot at the snap, so the tape goes there.
void drag(Screen& screen, Vec2 at) {
  Desk& desk = screen.desk;
  Drag& drag = *desk.view.drag;
  constexpr double kClick = 4.0;  // page units a hand may shake
  const ImVec2 pressed = ImGui::GetIO().MouseClickedPos[0];
  const Vec2 from{pressed.x / screen.scale, pressed.y / screen.scale};
  if (!drag.moved && distance(from, at) < kClick) return;
  if (!drag.moved) {
    desk.playback.home();
    drag.grip = {};
    drag.moved = true;
  }
  const Vec2 wanted = fieldPlace(desk, screen.layout).camera.fromPage(at) + drag.grip;
  moveMan(desk, drag.man, wanted);
}

void pickCell(Screen& screen, Vec2 at) {
  Desk& desk = screen.desk;
  if (!desk.study() || !ImGui::IsMouseClicked(0)) return;
  if (const auto cell = studyCellAt(*desk.study(), studyBox(screen.layout), at)) desk.openCell(*cell);
}

void drop(Desk& desk) {
  if (desk.view.drag->moved) desk.endGesture();
  desk.view.drag.reset();
}

}  // namespace

void moveMan(Desk& desk, int man, Vec2 wanted) {
  const Setup& setup = desk.rep()->tape.setup;
  const Dropped to = desk.view.free_drag ? Dropped{wanted, ""} : snapped(wanted, man, setup, library());
  const std::string id = setup.men[static_cast<std::size_t>(man)].id;
  const std::string key = setup.men[static_cast<std::size_t>(man)].drawn;
  if (desk.view.drag) desk.view.drag->landmark = to.name;
  const auto set = desk.document().scenario().players.find(key);
  if (set != desk.document().scenario().players.end() && set->second.x == to.spot.x &&
      set->second.y == to.spot.y)
    return;
  const std::string where =
      to.name.empty() ? fmt::format("x {:.1f}, y {:.1f}", to.spot.x, to.spot.y) : to.name;
  desk.change(
      id + " to " + where,
      [&](Scenario& s) {
        ManSettings& his = s.players[key];
        his.x = to.spot.x, his.y = to.spot.y;
        his.depth_yd.reset();
      },
      "drag " + id);
}

void handleMouse(Screen& screen) {
  Desk& desk = screen.desk;
  const Vec2 at = mouseOn(screen);
  if (desk.view.drag) {
    drag(screen, at);
    if (!ImGui::IsMouseDown(0)) drop(desk);
    return;
  }
  if (ImGui::GetIO().WantCaptureMouse || desk.view.help || desk.view.caution) return;
  const ImVec2 clicked = ImGui::GetIO().MouseClickedPos[0];
  const Vec2 from{clicked.x / screen.scale, clicked.y / screen.scale};
  if ((ImGui::IsMouseDown(0) || ImGui::IsMouseReleased(0)) && inside(screen.layout.ladder, from))
    return scrub(screen, at);
  if (inside(screen.layout.ladder, at)) return tellTick(screen, at);
  if (desk.view.study_page) return pickCell(screen, at);
  if (ImGui::IsMouseClicked(0) && inside(screen.layout.field, at)) press(screen, at);
}

}  // namespace gapsound
