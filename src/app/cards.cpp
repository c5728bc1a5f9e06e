#include "app/cards.hpp"

#include <fmt/format.h>

#include "app/card_parts.hpp"

namespace gapsound {
namespace {

struct CardPage {
  Card card;
  void (*draw)(Screen&);
};

void column(Screen& screen, const char* name, const PageRect& box, std::initializer_list<CardPage> pages) {
  if (box.width <= 0.0) return;
  ImGui::SetNextWindowPos({screen.px(box.x), screen.px(box.y)});
  ImGui::SetNextWindowSize({screen.px(box.width), screen.px(box.height)});
  ImGui::Begin(name, nullptr,
               ImGuiWindowFlags_NoTitleBar | ImGuiWindowFlags_NoResize | ImGuiWindowFlags_NoMove |
                   ImGuiWindowFlags_NoSavedSettings | ImGuiWindowFlags_NoCollapse |
                   ImGuiWindowFlags_NoBringToFrontOnFocus);
  for (const CardPage& page : pages) {
    if (!screen.desk.view.cards.contains(page.card)) continue;
    page.draw(screen);
    ImGui::Dummy({1.0F, screen.px(8.0)});
  }
  ImGui::End();
}

std::string withRange(double value, const Interval& ci) {
  return fmt::format("{:.0f} % ({:.0f} to {:.0f})", 100 * value, 100 * ci.low, 100 * ci.high);
}

void figureRow(Screen& screen, const char* word, const std::string& now, const std::string& held) {
  ImGui::TableNextRow();
  ImGui::TableNextColumn();
  ImGui::TextUnformatted(word);
  ImGui::TableNextColumn();
  ImGui::TextUnformatted(now.c_str());
  screen.note(std::string("readout ") + word);
  ImGui::TableNextColumn();
  ImGui::TextDisabled("%s", held.c_str());
}

}  // namespace

void drawReadout(Screen& screen) {
  const auto& now = screen.desk.readout();
  const auto& held = screen.desk.heldReadout();
  if (!now) return cardWords(screen, "Playing this look over and over ...");
  const Distribution& d = now->gains;
  if (!ImGui::BeginTable("readout", 3)) return;
  const auto was = [&](double Distribution::*member, bool share) {
    if (!held) return std::string();
    const double value = held->gains.*member;
    return share ? fmt::format("was {:.0f} %", 100 * value) : fmt::format("was {:.1f}", value);
  };
  ImGui::TableSetupColumn("", ImGuiTableColumnFlags_WidthFixed, screen.px(88.0));
  ImGui::TableSetupColumn("", ImGuiTableColumnFlags_WidthStretch);
  ImGui::TableSetupColumn("", ImGuiTableColumnFlags_WidthFixed, screen.px(held ? 62.0 : 1.0));
  figureRow(screen, "mean gain",
            fmt::format("{:.1f} ({:.1f} to {:.1f})", d.mean, d.mean_ci.low, d.mean_ci.high),
            was(&Distribution::mean, false));
  figureRow(screen, "0 or less", withRange(d.stuffed, now->stuffed), was(&Distribution::stuffed, true));
  figureRow(screen, "10 or more", withRange(d.ten_plus, now->ten_plus), was(&Distribution::ten_plus, true));
  figureRow(screen, "cutback open", withRange(d.cutback_open, now->cutback_open),
            was(&Distribution::cutback_open, true));
  ImGui::EndTable();
  cardWords(screen, now->done() ? fmt::format("{} reps; in brackets 95 %", d.n)
                                : fmt::format("{} of {} reps", d.n, now->planned));
}

void drawCards(Screen& screen) {
  column(screen, "cards left", screen.layout.left,
         {{Card::files, drawFilesCard}, {Card::look, drawLookCard}, {Card::call, drawCallCard}});
  if (screen.layout.left.width > 0.0) {
    return column(screen, "cards right", screen.layout.right,
                  {{Card::man, drawManCard}, {Card::study, drawStudyCard}});
  }
  column(screen, "cards right", screen.layout.right,
         {{Card::man, drawManCard},
          {Card::study, drawStudyCard},
          {Card::files, drawFilesCard},
          {Card::look, drawLookCard},
          {Card::call, drawCallCard}});
}

}  // namespace gapsound
