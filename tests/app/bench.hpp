#pragma once
#include <imgui.h>

#include <string>

#include "app/desk.hpp"
#include "app/hands.hpp"
#include "app/screen.hpp"
#include "cli/session.hpp"
#include "io/theme_file.hpp"
#include "painters/window/imgui_input.hpp"

namespace gapsound::bench {

inline std::string look(const std::string& name) { return std::string(GAPSOUND_ROOT) + "/scenarios/" + name; }
inline constexpr int kReadoutReps = 60;
inline const char* const kCounter = "counter-right-guard-and-h.json";

/// The whole window but for the window: events go in, frames are laid out, nothing is drawn.
class Bench {
 public:
  explicit Bench(const std::string& file = kCounter, StateFolder folder = StateFolder(""), int width = 1280,
                 int height = 720, double scale = 1.0)
      : desk(Document::read(look(file)), modelFor(""), std::move(folder), kReadoutReps),
        theme_(shippedTheme("paper")),
        width_(width),
        height_(height) {
    fonts_.fill(scale);
    ImGui::GetIO().Fonts->Build();
    book_.dress(theme_, fonts_, scale);
    desk.settle();
    frames();
  }

  /// Keys and buttons as in --do; everything is answered before the next.
  void act(const std::string& deeds) {
    for (const std::string& deed : deedsIn(deeds)) take(eventsFor(deed, book_.places()));
  }
  void take(const std::vector<InputEvent>& events) {
    for (const InputEvent& event : events) queue_.push(event);
    frames();
    desk.settle();
    frames();
  }
  void frame(double dt = 0.0) {
    desk.playback.advance(dt);
    static_cast<void>(desk.collect());
    const auto keys = host_.begin(queue_.next(), dt, width_, height_);
    book_.draw(desk, theme_, fonts_, keys);
    ImGui::Render();
  }
  [[nodiscard]] PageLayout layout() const {
    return layoutOf(width_, height_, false, false, desk.view.meeting);
  }
  /// Where a man stands in the window, in pixels.
  [[nodiscard]] Vec2 man(const std::string& id, const PageLayout& layout) const {
    const auto index = static_cast<std::size_t>(manNamed(desk.rep()->tape.setup, id));
    return fieldPlace(desk, layout)
        .camera.toPage(frameAt(desk.rep()->tape, desk.playback.time()).men[index].pos);
  }
  [[nodiscard]] const std::map<std::string, PageRect>& places() const { return book_.places(); }

 private:
  void frames() {
    do frame();
    while (!queue_.empty());
    for (int i = 0; i < 3; ++i) frame();
  }

  ImGuiHost host_;

 public:
  Desk desk;

 private:
  FontShelf fonts_;
  Theme theme_;
  ScreenBook book_;
  InputQueue queue_;
  int width_, height_;
};

}  // namespace gapsound::bench
