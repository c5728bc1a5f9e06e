#include <fmt/format.h>

#include <array>
#include <cmath>

#include "app/card_parts.hpp"
#include "app/commands.hpp"
#include "app/screen.hpp"
#include "painters/window/list_painter.hpp"
#include "teach/caution.hpp"

namespace gapsound {
namespace {

/// A sheet over everything that scrolls where it does not fit.
void beginSheet(Screen& screen, const char* title) {
  ImGui::SetNextWindowPos({0.0F, 0.0F});
  ImGui::SetNextWindowSize(ImGui::GetIO().DisplaySize);
  ImGui::SetNextWindowFocus();
  ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, ImVec2(screen.px(32.0), screen.px(24.0)));
  ImGui::Begin(title, nullptr,
               ImGuiWindowFlags_NoTitleBar | ImGuiWindowFlags_NoResize | ImGuiWindowFlags_NoMove |
                   ImGuiWindowFlags_NoSavedSettings | ImGuiWindowFlags_NoNav);
  cardTitle(screen, title);
}

void endSheet() {
  ImGui::Dummy({1.0F, 8.0F});
  ImGui::TextDisabled("Escape closes this page.");
  ImGui::End();
  ImGui::PopStyleVar();
}

void keyRow(Screen& screen, const Command& command) {
  ImGui::TableNextColumn();
  const Style& style = screen.theme[StyleId::cell_strong];
  ImGui::PushFont(screen.fonts.choose(style.font, style.bold, 15.0 * screen.scale).font);
  ImGui::TextUnformatted(nameOf(command.press).c_str());
  ImGui::PopFont();
  ImGui::TableNextColumn();
  ImGui::TextWrapped("%s", command.words);
}

void drawHelp(Screen& screen) {
  beginSheet(screen, "Keys");
  const bool wide = screen.layout.width > 900.0;
  const auto all = commands();
  const std::size_t rows = wide ? (all.size() + 1) / 2 : all.size();
  if (ImGui::BeginTable("keys", wide ? 4 : 2)) {
    for (int side = 0; side < (wide ? 2 : 1); ++side) {
      ImGui::TableSetupColumn("", ImGuiTableColumnFlags_WidthFixed, screen.px(110.0));
      ImGui::TableSetupColumn("", ImGuiTableColumnFlags_WidthStretch);
    }
    for (std::size_t i = 0; i < rows; ++i) {
      ImGui::TableNextRow();
      keyRow(screen, all[i]);
      if (wide && rows + i < all.size()) keyRow(screen, all[rows + i]);
    }
    ImGui::EndTable();
  }
  endSheet();
}

void drawCaution(Screen& screen) {
  beginSheet(screen, "Before it goes to the field");
  for (const std::string& line : cautionLines()) {
    ImGui::TextWrapped("%s", line.c_str());
    ImGui::Dummy({1.0F, screen.px(8.0)});
  }
  endSheet();
}

}  // namespace

void drawNotice(Screen& screen) {
  const std::string& notice = screen.desk.notice();
  if (notice.empty()) return;
  const PageRect& field = screen.layout.field;
  const double wrap = field.width - 60.0;
  const auto lines = static_cast<double>(linesOf(notice, 15.0, wrap).size());
  const double height = 20.0 + 19.0 * lines;
  DisplayList page{screen.layout.width, screen.layout.height, {pagePanel(field)}};
  auto& shapes = page.panels.front().shapes;
  shapes.push_back(Rect{{field.x + 16.0, field.bottom() - height - 8.0},
                        {field.right() - 16.0, field.bottom() - 8.0},
                        3.0,
                        StyleId::panel});
  shapes.push_back(Label{{field.x + 30.0, field.bottom() - height},
                         notice,
                         15.0,
                         StyleId::strong,
                         Anchor::left,
                         Rise::top,
                         wrap});
  paint(*ImGui::GetBackgroundDrawList(), page, screen.theme, screen.fonts, screen.scale);
}

void drawHints(Screen& screen) {
  constexpr std::array kHints{"Click a man, or press Tab: the card Man (M) changes what he does.",
                              "Space stops and plays. F1 shows every key.",
                              "Press the ladder below anywhere to go to that moment."};
  const Desk& desk = screen.desk;
  const PageRect& field = screen.layout.field;
  const bool room = desk.view.cards.empty() && field.width > 460.0;
  if (!desk.settings.hints || desk.view.meeting || desk.view.study_page || !room) return;
  DisplayList page{screen.layout.width, screen.layout.height, {pagePanel(field)}};
  double y = field.bottom() - 78.0;
  for (std::size_t i = 0; i < kHints.size(); ++i, y += 25.0) {
    if (desk.view.hints_done[i]) continue;
    auto& shapes = page.panels.front().shapes;
    const double width = std::min(field.width - 36.0, roughWidth(kHints[i], 13.5) + 26.0);
    shapes.push_back(
        Rect{{field.x + 18.0, y - 11.0}, {field.x + 18.0 + width, y + 11.0}, 0.0, StyleId::panel});
    shapes.push_back(
        Rect{{field.x + 18.0, y - 11.0}, {field.x + 22.0, y + 11.0}, 0.0, StyleId::tick_decided});
    shapes.push_back(Label{{field.x + 32.0, y}, kHints[i], 13.5, StyleId::text, Anchor::left});
  }
  paint(*ImGui::GetBackgroundDrawList(), page, screen.theme, screen.fonts, screen.scale);
}

void drawLeaving(Screen& screen) {
  Desk& desk = screen.desk;
  if (!desk.leaving()) return;
  const ImVec2 size = ImGui::GetIO().DisplaySize;
  ImGui::SetNextWindowPos({0.5F * size.x, 0.4F * size.y}, ImGuiCond_Always, {0.5F, 0.5F});
  ImGui::SetNextWindowFocus();
  ImGui::Begin("leaving", nullptr, ImGuiWindowFlags_NoDecoration | ImGuiWindowFlags_AlwaysAutoResize);
  ImGui::TextUnformatted("This look has changes that are not saved.");
  ImGui::Dummy({1.0F, screen.px(6.0)});
  if (wordButton(screen, "save it")) desk.answer(LeaveBy::save);
  ImGui::SameLine(0.0F, screen.px(24.0));
  if (wordButton(screen, "drop the changes")) desk.answer(LeaveBy::discard);
  ImGui::SameLine(0.0F, screen.px(24.0));
  if (wordButton(screen, "stay here")) desk.answer(LeaveBy::stay);
  ImGui::End();
}

void drawOverlays(Screen& screen) {
  drawLeaving(screen);
  if (screen.desk.view.help) {
    drawHelp(screen);
  } else if (screen.desk.view.caution) {
    drawCaution(screen);
  }
}

}  // namespace gapsound
