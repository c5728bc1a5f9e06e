#include "app/card_parts.hpp"

#include <fmt/format.h>
#include <imgui.h>
#include <imgui_stdlib.h>

#include <algorithm>
#include <cmath>

#include "base/nearest.hpp"
#include "painters/window/list_painter.hpp"

namespace gapsound {
namespace {

constexpr double kWordWidth = 96.0;  // page units

void rowWord(Screen& screen, const std::string& word) {
  ImGui::AlignTextToFramePadding();
  ImGui::TextUnformatted(word.c_str());
  const float taken = ImGui::CalcTextSize(word.c_str()).x + screen.px(18.0);
  ImGui::SameLine(std::max(screen.px(kWordWidth), taken));
}

bool holds(const std::string& name, const std::string& part) {
  return lowered(name).find(lowered(part)) != std::string::npos;
}

/// The names that hold what was typed; Enter takes the first.
std::optional<std::string> pickFrom(Screen& screen, const std::vector<std::string>& names) {
  static std::string typed;
  if (ImGui::IsWindowAppearing()) {
    typed.clear();
    ImGui::SetKeyboardFocusHere();
  }
  ImGui::SetNextItemWidth(screen.px(220.0));
  const bool entered =
      ImGui::InputTextWithHint("##find", "find", &typed, ImGuiInputTextFlags_EnterReturnsTrue);
  std::optional<std::string> picked;
  for (const std::string& name : names) {
    if (!holds(name, typed)) continue;
    if (ImGui::Selectable(name.c_str()) || (entered && !picked)) picked = name;
    screen.note("pick " + name);
  }
  if (picked) ImGui::CloseCurrentPopup();
  return picked;
}

}  // namespace

void cardTitle(Screen& screen, const std::string& title) {
  const Style& style = screen.theme[StyleId::title];
  const auto choice = screen.fonts.choose(style.font, style.bold, 17.0 * screen.scale);
  const ImVec2 at = ImGui::GetCursorScreenPos();
  const float width = ImGui::GetContentRegionAvail().x;
  ImDrawList& ink = *ImGui::GetWindowDrawList();
  ink.AddText(choice.font, choice.size, at, packed(style.stroke), title.c_str());
  const float rule = at.y + screen.px(25.0);
  ink.AddRectFilled({at.x, rule}, {at.x + width, rule + screen.px(2.0)}, screen.stroke(StyleId::strong));
  ImGui::Dummy({width, screen.px(28.0)});
}

void cardWords(Screen& screen, const std::string& text) {
  static_cast<void>(screen);
  ImGui::PushStyleColor(ImGuiCol_Text, ImGui::GetStyleColorVec4(ImGuiCol_TextDisabled));
  ImGui::TextWrapped("%s", text.c_str());
  ImGui::PopStyleColor();
}

std::optional<std::string> choiceRow(Screen& screen, const std::string& word, const std::string& now,
                                     const std::vector<std::string>& names) {
  rowWord(screen, word);
  ImGui::PushID(word.c_str());
  const float width = ImGui::GetContentRegionAvail().x;
  ImGui::PushStyleVar(ImGuiStyleVar_ButtonTextAlign, ImVec2(0.0F, 0.5F));
  if (ImGui::Button((now + "##now").c_str(), {width, 0.0F})) ImGui::OpenPopup("names");
  ImGui::PopStyleVar();
  screen.note(word);
  std::optional<std::string> picked;
  ImGui::SetNextWindowSizeConstraints({screen.px(230.0), 0.0F}, {screen.px(420.0), screen.px(360.0)});
  if (ImGui::BeginPopup("names")) {
    picked = pickFrom(screen, names);
    ImGui::EndPopup();
  }
  ImGui::PopID();
  return picked && *picked != now ? picked : std::nullopt;
}

std::optional<double> numberRow(Screen& screen, const std::string& word, double now, double step,
                                const char* unit, int digits) {
  static std::string typing_in;  // the row being typed into, and what stands in it
  static double typed = 0.0;
  rowWord(screen, word);
  ImGui::PushID(word.c_str());
  double value = typing_in == word ? typed : now;
  ImGui::SetNextItemWidth(std::min(screen.px(112.0), ImGui::GetContentRegionAvail().x - screen.px(60.0)));
  const std::string format = fmt::format("%.{}f", digits);
  ImGui::InputDouble("##value", &value, step, 0.0, format.c_str(), ImGuiInputTextFlags_AutoSelectAll);
  screen.note(word);
  std::optional<double> done;
  if (ImGui::IsItemActive()) {
    typing_in = word;
    typed = value;
  }
  if (ImGui::IsItemDeactivatedAfterEdit() && std::abs(value - now) > 1e-9) done = value;
  if (ImGui::IsItemDeactivated()) typing_in.clear();
  ImGui::SameLine();
  ImGui::TextDisabled("%s", unit);
  ImGui::PopID();
  return done;
}

std::optional<std::string> textRow(Screen& screen, const std::string& word, const std::string& now) {
  static std::string typing_in;
  static std::string typed;
  rowWord(screen, word);
  ImGui::PushID(word.c_str());
  std::string value = typing_in == word ? typed : now;
  ImGui::SetNextItemWidth(ImGui::GetContentRegionAvail().x);
  ImGui::InputText("##value", &value, ImGuiInputTextFlags_AutoSelectAll);
  screen.note(word);
  if (ImGui::IsItemActive()) {
    typing_in = word;
    typed = value;
  }
  std::optional<std::string> done;
  if (ImGui::IsItemDeactivatedAfterEdit() && value != now && !value.empty()) done = value;
  if (ImGui::IsItemDeactivated()) typing_in.clear();
  ImGui::PopID();
  return done;
}

std::optional<std::string> switchRow(Screen& screen, const std::string& word, const std::string& now,
                                     const std::vector<std::string>& words) {
  rowWord(screen, word);
  ImGui::PushID(word.c_str());
  std::optional<std::string> picked;
  for (const std::string& each : words) {
    if (wordButton(screen, each, each == now)) picked = each;
    screen.note(fmt::format("{} {}", word, each));
    ImGui::SameLine(0.0F, screen.px(10.0));
  }
  ImGui::NewLine();
  ImGui::PopID();
  return picked && *picked != now ? picked : std::nullopt;
}

}  // namespace gapsound
