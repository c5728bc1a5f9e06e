#include <fmt/format.h>

#include <array>
#include <cmath>

#include "app/commands.hpp"
#include "app/screen.hpp"
#include "painters/window/list_painter.hpp"
#include "teach/caution.hpp"

namespace gapsound {
namespace {

/// A page over everything, in the same language as the rest.
void overlay(Screen& screen, DisplayList& page) {
  paint(*ImGui::GetForegroundDrawList(), page, screen.theme, screen.fonts, screen.scale);
}

DisplayList blank(const PageLayout& layout, const std::string& title) {
  DisplayList page{layout.width, layout.height, {pagePanel({0.0, 0.0, layout.width, layout.height})}};
  auto& shapes = page.panels.front().shapes;
  shapes.push_back(Rect{{0.0, 0.0}, {layout.width, layout.height}, 0.0, StyleId::ground});
  shapes.push_back(Label{{40.0, 40.0}, title, 24.0, StyleId::title, Anchor::left});
  return page;
}

DisplayList helpPage(const PageLayout& layout) {
  DisplayList page = blank(layout, "Keys");
  auto& shapes = page.panels.front().shapes;
  const auto all = commands();
  const std::size_t rows = (all.size() + 1) / 2;
  const double step = std::min(27.0, (layout.height - 120.0) / static_cast<double>(rows));
  for (std::size_t i = 0; i < all.size(); ++i) {
    const double x = i < rows ? 40.0 : 0.5 * layout.width + 10.0;
    const double y = 84.0 + step * static_cast<double>(i % rows);
    const double text = std::min(15.0, 0.62 * step);
    shapes.push_back(Label{{x, y}, nameOf(all[i].press), text, StyleId::cell_strong, Anchor::left});
    shapes.push_back(Label{{x + 110.0, y}, all[i].words, text, StyleId::text, Anchor::left});
  }
  shapes.push_back(
      Label{{40.0, layout.height - 26.0}, "Escape closes this page.", 14.0, StyleId::small, Anchor::left});
  return page;
}

DisplayList cautionPage(const PageLayout& layout) {
  DisplayList page = blank(layout, "Before it goes to the field");
  double y = 110.0;
  for (const std::string& line : cautionLines()) {
    page.panels.front().shapes.push_back(
        Label{{40.0, y}, line, 18.0, StyleId::text, Anchor::left, Rise::top, layout.width - 80.0});
    y += 62.0;
  }
  return page;
}

}  // namespace

void drawNotice(Screen& screen) {
  const std::string& notice = screen.desk.notice();
  if (notice.empty()) return;
  const PageRect& field = screen.layout.field;
  const double wrap = field.width - 60.0;
  const double lines = std::ceil(roughWidth(notice, 15.0) / wrap);
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
  if (!desk.settings.hints || desk.view.meeting || desk.view.study_page) return;
  const PageRect& field = screen.layout.field;
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
  if (wordButton(screen, "save it")) desk.answer(Answer::save);
  ImGui::SameLine(0.0F, screen.px(24.0));
  if (wordButton(screen, "drop the changes")) desk.answer(Answer::discard);
  ImGui::SameLine(0.0F, screen.px(24.0));
  if (wordButton(screen, "stay here")) desk.answer(Answer::stay);
  ImGui::End();
}

void drawOverlays(Screen& screen) {
  drawLeaving(screen);
  if (screen.desk.view.help) {
    DisplayList page = helpPage(screen.layout);
    overlay(screen, page);
  } else if (screen.desk.view.caution) {
    DisplayList page = cautionPage(screen.layout);
    overlay(screen, page);
  }
}

}  // namespace gapsound
