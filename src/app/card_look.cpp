#include "app/card_parts.hpp"
#include "app/cards.hpp"
#include "cli/session.hpp"

namespace gapsound {
namespace {

/// "F03 22 I": the id and the plain name together, so that either can be searched for.
template <class Entry>
std::vector<std::string> titlesOf(const std::vector<Entry>& entries) {
  std::vector<std::string> titles;
  titles.reserve(entries.size());
  for (const Entry& entry : entries) titles.push_back(entry.id + "  " + entry.name);
  return titles;
}

template <class Entry>
std::string titleOf(const Entry* entry, const std::string& name) {
  return entry == nullptr ? name : entry->id + "  " + entry->name;
}

std::string idIn(const std::string& title) { return title.substr(0, title.find(' ')); }

void pickOffense(Screen& screen, const Scenario& now) {
  Desk& desk = screen.desk;
  const Library& all = library();
  const auto* formation = findFormation(all, now.offense.formation);
  if (const auto name =
          choiceRow(screen, "Formation", titleOf(formation, now.offense.formation), titlesOf(all.formations)))
    desk.change("formation " + *name, [&](Scenario& s) { s.offense.formation = idIn(*name); });
  const auto* scheme = findScheme(all, now.offense.scheme);
  if (const auto name =
          choiceRow(screen, "Scheme", titleOf(scheme, now.offense.scheme), titlesOf(all.schemes))) {
    desk.change("scheme " + *name, [&](Scenario& s) {
      s.offense.scheme = idIn(*name);
      s.offense.variant = "base";
    });
  }
  if (scheme != nullptr) {
    if (const auto name = choiceRow(screen, "Variant", now.offense.variant, variantNames(*scheme)))
      desk.change("variant " + *name, [&](Scenario& s) { s.offense.variant = *name; });
  }
  if (const auto side = switchRow(screen, "Run to the", now.offense.direction, {"left", "right"}))
    desk.change("run to the " + *side, [&](Scenario& s) { s.offense.direction = *side; });
  if (const auto side = switchRow(screen, "Strength", now.offense.strength, {"left", "right"}))
    desk.change("strength " + *side, [&](Scenario& s) { s.offense.strength = *side; });
}

void pickDefense(Screen& screen, const Scenario& now) {
  Desk& desk = screen.desk;
  const Library& all = library();
  const auto* front = findFront(all, now.defense.front);
  if (const auto name = choiceRow(screen, "Front", titleOf(front, now.defense.front), titlesOf(all.fronts))) {
    desk.change("front " + *name, [&](Scenario& s) {
      s.defense.front = idIn(*name);
      s.defense.movement = "none";
    });
  }
  const auto* shell = findShell(all, now.defense.shell);
  std::vector<std::string> shells;
  for (const Shell& each : all.shells) shells.push_back(each.name);
  if (const auto name =
          choiceRow(screen, "Shell", shell == nullptr ? now.defense.shell : shell->name, shells))
    desk.change("shell " + *name, [&](Scenario& s) { s.defense.shell = *name; });
}

void pickField(Screen& screen, const Scenario& now) {
  Desk& desk = screen.desk;
  constexpr std::array kWords{"school", "college", "pro"};
  const auto level = static_cast<std::size_t>(now.level);
  if (const auto word = switchRow(screen, "Level", kWords[level], {kWords.begin(), kWords.end()})) {
    desk.change("level " + *word, [&](Scenario& s) {
      s.level = *word == "pro" ? Level::pro : *word == "college" ? Level::college : Level::high_school;
    });
  }
  if (const auto spot = choiceRow(screen, "Spot", now.field.spot, {"left_hash", "middle", "right_hash"}))
    desk.change("spot " + *spot, [&](Scenario& s) { s.field.spot = *spot; });
  if (const auto yards = numberRow(screen, "To goal", now.field.to_goal, 5.0, "yd", 0))
    desk.change("yards to goal", [&](Scenario& s) { s.field.to_goal = std::clamp(*yards, 1.0, 99.0); });
  if (const auto down = numberRow(screen, "Down", now.field.down, 1.0, "", 0))
    desk.change("down", [&](Scenario& s) { s.field.down = static_cast<int>(std::clamp(*down, 1.0, 4.0)); });
  if (const auto yards = numberRow(screen, "Distance", now.field.distance, 1.0, "yd", 0))
    desk.change("distance", [&](Scenario& s) { s.field.distance = std::clamp(*yards, 1.0, 99.0); });
}

}  // namespace

void drawLookCard(Screen& screen) {
  const Scenario now = screen.desk.document().scenario();
  cardTitle(screen, "Look");
  if (const auto title = textRow(screen, "Title", now.title))
    screen.desk.change("title", [&](Scenario& s) { s.title = *title; });
  pickOffense(screen, now);
  ImGui::Separator();
  pickDefense(screen, now);
  ImGui::Separator();
  pickField(screen, now);
}

}  // namespace gapsound
