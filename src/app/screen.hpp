#pragma once
#include <imgui.h>

#include <map>
#include <string>
#include <vector>

#include "app/desk.hpp"
#include "app/page.hpp"
#include "painters/window/fonts.hpp"
#include "painters/window/input.hpp"
#include "picture/theme.hpp"

namespace gapsound {

/// What the parts of one frame need: where to draw, how it looks, and where things ended up.
struct Screen {
  Desk& desk;
  const Theme& theme;
  const FontShelf& fonts;
  double scale = 1.0;  // pixels a page unit
  PageLayout layout;
  /// Pixel rectangles of this frame's buttons and fields by name, for whoever must find them again.
  std::map<std::string, PageRect>& places;

  [[nodiscard]] float px(double units) const { return static_cast<float>(units * scale); }
  [[nodiscard]] ImU32 stroke(StyleId id) const;
  [[nodiscard]] ImU32 fill(StyleId id) const;
  /// Notes where the last ImGui item stands.
  void note(const std::string& name) const;
};

/// The whole frame between ImGui's NewFrame and Render: keys, the page, the mouse on it, rail and cards.
/// Returns where the buttons are.
class ScreenBook {
 public:
  /// Sets ImGui's colours and sizes; after every change of theme or scale.
  void dress(const Theme& theme, const FontShelf& fonts, double scale);
  void draw(Desk& desk, const Theme& theme, const FontShelf& fonts, const std::vector<KeyPress>& keys);
  [[nodiscard]] const std::map<std::string, PageRect>& places() const { return places_; }
  /// A man, the ladder or a card is being dragged or typed into.
  [[nodiscard]] bool handsOn() const;

 private:
  std::map<std::string, PageRect> places_;
  double scale_ = 1.0;
};

// The parts. Each draws itself at its place in the layout.
void drawPage(Screen& screen);
void drawRail(Screen& screen);
void drawNotice(Screen& screen);
void drawHints(Screen& screen);
void drawCards(Screen& screen);
void drawOverlays(Screen& screen);
void handleMouse(Screen& screen);

/// Puts a man where he was dragged to, on a landmark unless the drag is free.
void moveMan(Desk& desk, int man, Vec2 wanted);

/// A button that is a word with a rule under it; heavy while `on`. True when clicked.
bool wordButton(Screen& screen, const std::string& name, bool on = false);

}  // namespace gapsound
