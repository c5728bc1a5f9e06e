#include <fmt/format.h>

#include <algorithm>

#include "app/commands.hpp"
#include "app/screen.hpp"
#include "painters/window/list_painter.hpp"

namespace gapsound {
namespace {

constexpr double kRailText = 16.0;     // page units
constexpr double kPartsWidth = 520.0;  // of the right group with a rep held

ImDrawList& ink() { return *ImGui::GetWindowDrawList(); }

void say(Screen& screen, ImVec2 at, StyleId style, double em, const std::string& text) {
  const Style& look = screen.theme[style];
  const auto choice = screen.fonts.choose(look.font, look.bold, em * screen.scale);
  ink().AddText(choice.font, choice.size, at, packed(look.stroke), text.c_str());
}

float widthOf(Screen& screen, StyleId style, double em, const std::string& text) {
  const Style& look = screen.theme[style];
  const auto choice = screen.fonts.choose(look.font, look.bold, em * screen.scale);
  return choice.font->CalcTextSizeA(choice.size, FLT_MAX, 0.0F, text.c_str()).x;
}

/// A triangle while it can be played, two bars while it plays.
bool playButton(Screen& screen) {
  const float side = screen.px(26.0);
  const bool clicked = ImGui::InvisibleButton("play", {side, side});
  screen.note("play");
  const ImVec2 low = ImGui::GetItemRectMin();
  const float u = side / 26.0F;
  const ImU32 colour = screen.stroke(StyleId::strong);
  if (screen.desk.playback.playing()) {
    ink().AddRectFilled({low.x + 7 * u, low.y + 5 * u}, {low.x + 11 * u, low.y + 21 * u}, colour);
    ink().AddRectFilled({low.x + 15 * u, low.y + 5 * u}, {low.x + 19 * u, low.y + 21 * u}, colour);
  } else {
    ink().AddTriangleFilled({low.x + 7 * u, low.y + 4 * u}, {low.x + 21 * u, low.y + 13 * u},
                            {low.x + 7 * u, low.y + 22 * u}, colour);
  }
  return clicked;
}

void runs(Screen& screen, const char* name, const std::string& shown, bool on = false) {
  const Command& command = commandNamed(name);
  if (wordButton(screen, shown, on)) command.run(screen.desk);
  if (ImGui::IsItemHovered()) {
    ImGui::SetTooltip("%s  (%s)", command.words, nameOf(command.press).c_str());
  }
  ImGui::SameLine(0.0F, screen.px(screen.layout.low ? 7.0 : 10.0));
}

/// The same as `runs` for a step to one side: a small arrowhead.
void steps(Screen& screen, const char* name, float way) {
  const Command& command = commandNamed(name);
  const bool clicked = ImGui::InvisibleButton(name, {screen.px(16.0), screen.px(26.0)});
  screen.note(name);
  const ImVec2 low = ImGui::GetItemRectMin();
  const ImVec2 middle{low.x + screen.px(8.0), low.y + screen.px(13.0)};
  const float u = way * screen.px(5.0);
  const float h = way * screen.px(6.5);
  ink().AddTriangleFilled({middle.x + u, middle.y}, {middle.x - u, middle.y - h},
                          {middle.x - u, middle.y + h},
                          screen.stroke(ImGui::IsItemHovered() ? StyleId::strong : StyleId::small));
  if (ImGui::IsItemHovered()) ImGui::SetTooltip("%s  (%s)", command.words, nameOf(command.press).c_str());
  if (clicked) command.run(screen.desk);
  ImGui::SameLine(0.0F, screen.px(8.0));
}

void plainWords(Screen& screen, const std::string& text) {
  const float width = widthOf(screen, StyleId::ladder_text, kRailText, text);
  const ImVec2 at = ImGui::GetCursorScreenPos();
  say(screen, {at.x, at.y + screen.px(4.0)}, StyleId::ladder_text, kRailText, text);
  ImGui::Dummy({width, screen.px(26.0)});
  ImGui::SameLine(0.0F, screen.px(10.0));
}

void drawTape(Screen& screen) {
  Desk& desk = screen.desk;
  if (playButton(screen)) commandNamed("play").run(desk);
  ImGui::SameLine(0.0F, screen.px(8.0));
  runs(screen, "slower", "\xE2\x80\x93");
  plainWords(screen, fmt::format("{:g} x", desk.playback.speed()));
  runs(screen, "faster", "+");
  if (!screen.layout.low) {
    runs(screen, "loop", "loop", desk.playback.loops());
    ImGui::SameLine(0.0F, screen.px(26.0));
  }
  steps(screen, "rep before", -1.0F);
  plainWords(screen, fmt::format("rep {}", desk.document().seed()));
  steps(screen, "next rep", 1.0F);
  if (screen.layout.low) return;  // the keys are still there
  runs(screen, "typical", "typical");
  runs(screen, "best", "best");
  runs(screen, "worst", "worst");
}

void drawParts(Screen& screen) {
  Desk& desk = screen.desk;
  const auto open = [&](Card card) { return desk.view.cards.contains(card); };
  runs(screen, "Hold",
       !desk.held()                           ? "Hold"
       : desk.view.holding == Holding::shadow ? "Shadow"
                                              : "Beside",
       desk.held() != nullptr);
  if (desk.held() && !screen.layout.low) runs(screen, "let go", "let go");
  runs(screen, "Calipers", "Calipers", desk.view.calipers != Calipers::none);
  runs(screen, "Look", "Look", open(Card::look));
  runs(screen, "Call", "Call", open(Card::call));
  runs(screen, "Man", "Man", open(Card::man));
  runs(screen, "Study", "Study", open(Card::study));
  runs(screen, "Files", "Files", open(Card::files));
  runs(screen, "Meeting", "Meeting");
  runs(screen, "Help", "Help", desk.view.help);
}

/// The row the keyboard has come to.
bool walkedTo() {
  return ImGui::IsItemFocused() && (ImGui::GetIO().ConfigFlags & ImGuiConfigFlags_NavEnableKeyboard) != 0;
}

}  // namespace

bool wordButton(Screen& screen, const std::string& name, bool on) {
  const StyleId style = on ? StyleId::cell_strong : StyleId::cell_text;
  const float width = widthOf(screen, StyleId::cell_strong, kRailText, name);
  const bool clicked = ImGui::InvisibleButton(name.c_str(), {width, screen.px(26.0)});
  screen.note(name);
  const ImVec2 low = ImGui::GetItemRectMin();
  const ImVec2 high = ImGui::GetItemRectMax();
  say(screen, {low.x, low.y + screen.px(4.0)}, style, kRailText, name);
  const float weight = on ? screen.px(3.0) : ImGui::IsItemHovered() || walkedTo() ? screen.px(1.5) : 0.0F;
  if (weight > 0.0F) {
    ink().AddRectFilled({low.x, high.y - weight}, high, screen.stroke(StyleId::strong));
  }
  return clicked;
}

void drawRail(Screen& screen) {
  const PageRect& box = screen.layout.rail;
  ImGui::SetNextWindowPos({screen.px(box.x), screen.px(box.y)});
  ImGui::SetNextWindowSize({screen.px(box.width), screen.px(box.height)});
  ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, ImVec2(screen.px(16.0), screen.px(6.0)));
  ImGui::PushStyleVar(ImGuiStyleVar_WindowBorderSize, 0.0F);
  ImGui::Begin("rail", nullptr,
               ImGuiWindowFlags_NoDecoration | ImGuiWindowFlags_NoSavedSettings | ImGuiWindowFlags_NoNav |
                   ImGuiWindowFlags_NoBringToFrontOnFocus | ImGuiWindowFlags_NoScrollWithMouse);
  ink().AddLine({screen.px(box.x), screen.px(box.y)}, {screen.px(box.right()), screen.px(box.y)},
                screen.stroke(StyleId::frame));
  drawTape(screen);
  if (box.height > 50.0) {
    ImGui::NewLine();
  } else {
    ImGui::SameLine(std::max(ImGui::GetCursorPosX(), screen.px(box.width - kPartsWidth)));
  }
  drawParts(screen);
  ImGui::End();
  ImGui::PopStyleVar(2);
}

}  // namespace gapsound
