#include "app/screen.hpp"

#include <imgui_internal.h>

#include <algorithm>
#include <array>

#include "app/commands.hpp"
#include "app/study_page.hpp"
#include "painters/window/list_painter.hpp"

namespace gapsound {
namespace {

ImVec4 soft(Colour c, double alpha = 1.0) {
  return {c.r / 255.0F, c.g / 255.0F, c.b / 255.0F, static_cast<float>(alpha * c.a / 255.0)};
}

void dressColours(const Theme& theme) {
  const Colour ground = theme[StyleId::ground].fill;
  const Colour ink = theme[StyleId::text].stroke;
  const Colour hair = theme[StyleId::panel].stroke;
  const Colour shade = theme[StyleId::bar].fill;
  ImVec4* colours = ImGui::GetStyle().Colors;
  for (int i = 0; i < ImGuiCol_COUNT; ++i) colours[i] = soft(shade);
  for (const int i :
       {ImGuiCol_WindowBg, ImGuiCol_ChildBg, ImGuiCol_PopupBg, ImGuiCol_FrameBg, ImGuiCol_TitleBg,
        ImGuiCol_TitleBgActive, ImGuiCol_ScrollbarBg, ImGuiCol_Button, ImGuiCol_MenuBarBg}) {
    colours[i] = soft(ground);
  }
  for (const int i : {ImGuiCol_Text, ImGuiCol_CheckMark, ImGuiCol_SliderGrab, ImGuiCol_SliderGrabActive,
                      ImGuiCol_NavHighlight, ImGuiCol_PlotHistogram}) {
    colours[i] = soft(ink);
  }
  for (const int i :
       {ImGuiCol_Border, ImGuiCol_Separator, ImGuiCol_TableBorderLight, ImGuiCol_TableBorderStrong}) {
    colours[i] = soft(hair);
  }
  colours[ImGuiCol_TextDisabled] = soft(theme[StyleId::small].stroke);
  colours[ImGuiCol_BorderShadow] = {0, 0, 0, 0};
  colours[ImGuiCol_TextSelectedBg] = soft(theme[StyleId::cell_open].stroke, 0.35);
  colours[ImGuiCol_ModalWindowDimBg] = soft(ground, 0.6);
}

void dressSizes(double scale) {
  ImGuiStyle& style = ImGui::GetStyle();
  style = ImGuiStyle();
  style.WindowRounding = style.FrameRounding = style.GrabRounding = style.PopupRounding =
      style.ScrollbarRounding = 0;
  style.WindowBorderSize = style.FrameBorderSize = style.PopupBorderSize = 1;
  style.WindowPadding = {12, 10};
  style.FramePadding = {6, 3};
  style.ItemSpacing = {8, 6};
  style.GrabMinSize = 9;
  style.ScrollbarSize = 9;
  style.ScaleAllSizes(static_cast<float>(scale));
}

/// Cards of the look stand to the left and those of a man and a study to the right; where there is no room
/// for both, all stand to the right.
PageLayout layoutFor(const View& view, double width, double height) {
  constexpr double kBoth = 820.0;  // page units
  const auto open = [&](std::initializer_list<Card> cards) {
    return !view.meeting &&
           std::any_of(cards.begin(), cards.end(), [&](Card card) { return view.cards.contains(card); });
  };
  const bool left = open({Card::look, Card::call, Card::files});
  const bool right = open({Card::man, Card::study});
  const bool both = width >= kBoth;
  return layoutOf(width, height, left && both, right || (left && !both), view.meeting);
}

/// Men and cells of a study are places too, so that they can be found by name.
void notePage(Screen& screen) {
  const double s = screen.scale;
  const auto note = [&](const std::string& name, const PageRect& box) {
    screen.places[name] = {s * box.x, s * box.y, s * box.width, s * box.height};
  };
  const Desk& desk = screen.desk;
  if (desk.view.study_page && desk.study()) {
    for (std::size_t i = 0; i < cellsOf(*desk.study()); ++i) {
      if (const auto cell = studyCell(*desk.study(), studyBox(screen.layout), i))
        note("cell " + std::to_string(i + 1), *cell);
    }
    return;
  }
  const Camera camera = fieldPlace(desk, screen.layout).camera;
  const Frame frame = frameAt(desk.rep()->tape, desk.playback.time());
  for (std::size_t man = 0; man < static_cast<std::size_t>(kMen); ++man) {
    const Vec2 at = camera.toPage(frame.men[man].pos);
    note(desk.rep()->tape.setup.men[man].id, {at.x - 4.0, at.y - 4.0, 8.0, 8.0});
  }
}

/// Keys that walk the rows of a card.
bool walks(const KeyPress& press) {
  constexpr std::array kWalking{Key::left, Key::right, Key::up, Key::down, Key::space, Key::enter, Key::tab};
  return std::find(kWalking.begin(), kWalking.end(), press.key) != kWalking.end();
}

/// Keys that belong to a text being typed, or to the rows of a card, are nobody else's.
void runKeys(Desk& desk, const std::vector<KeyPress>& keys) {
  for (const KeyPress& press : keys) {
    if (ImGui::GetIO().WantTextInput && press.key != Key::f1) continue;
    if (desk.view.in_cards && walks(press)) continue;
    static_cast<void>(runKey(desk, press));
  }
}

/// Gives the keyboard to the cards, or takes it back.
void followCards(const View& view) {
  ImGuiConfigFlags& flags = ImGui::GetIO().ConfigFlags;
  const bool on = (flags & ImGuiConfigFlags_NavEnableKeyboard) != 0;
  if (on == view.in_cards) return;
  flags ^= ImGuiConfigFlags_NavEnableKeyboard;
  if (!view.in_cards) return ImGui::SetWindowFocus(nullptr);
  const ImGuiWindow* shown = ImGui::FindWindowByName("cards right");
  const char* name = shown != nullptr && shown->WasActive ? "cards right" : "cards left";
  ImGui::SetWindowFocus(name);
  ImGui::GetCurrentContext()->NavDisableHighlight = false;
  ImGui::NavInitWindow(ImGui::FindWindowByName(name), true);
}

}  // namespace

ImU32 Screen::stroke(StyleId id) const { return packed(theme[id].stroke); }
ImU32 Screen::fill(StyleId id) const { return packed(theme[id].fill); }

void Screen::note(const std::string& name) const {
  const ImVec2 low = ImGui::GetItemRectMin();
  const ImVec2 high = ImGui::GetItemRectMax();
  places[name] = {low.x, low.y, high.x - low.x, high.y - low.y};
}

void ScreenBook::dress(const Theme& theme, const FontShelf& fonts, double scale) {
  scale_ = scale;
  dressSizes(scale);
  dressColours(theme);
  const auto choice = fonts.choose(FontRole::sans, false, 14.0 * scale);
  ImGui::GetIO().FontDefault = choice.font;
}

bool ScreenBook::handsOn() const { return ImGui::IsAnyItemActive(); }

void ScreenBook::draw(Desk& desk, const Theme& theme, const FontShelf& fonts,
                      const std::vector<KeyPress>& keys) {
  places_.clear();
  runKeys(desk, keys);
  followCards(desk.view);
  if (!desk.rep()) return;
  desk.arrangeQuestion();
  const ImVec2 size = ImGui::GetIO().DisplaySize;
  const View& view = desk.view;
  Screen screen{desk, theme, fonts, scale_, layoutFor(view, size.x / scale_, size.y / scale_), places_};
  handleMouse(screen);
  notePage(screen);
  drawPage(screen);
  if (!view.meeting) drawRail(screen);
  if (!view.meeting) drawCards(screen);
  drawNotice(screen);
  drawHints(screen);
  drawOverlays(screen);
}

void drawPage(Screen& screen) {
  paint(*ImGui::GetBackgroundDrawList(), stagePage(screen.desk, screen.layout), screen.theme, screen.fonts,
        screen.scale);
}

}  // namespace gapsound
