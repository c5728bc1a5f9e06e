#include "app/card_parts.hpp"
#include "app/cards.hpp"
#include "cli/session.hpp"

namespace gapsound {
namespace {

constexpr std::array kFitWords{"man in front", "call"};

void pickFitting(Screen& screen, const Scenario& now) {
  constexpr std::array kLevels{"Line", "Backers", "Secondary"};
  cardWords(screen, "Who fits off what the man in front shows him, and who runs to his called spot:");
  for (std::size_t k = 0; k < kLevels.size(); ++k) {
    const char* word = kFitWords[static_cast<std::size_t>(now.defense.fit_off[k])];
    if (const auto pick = switchRow(screen, kLevels[k], word, {kFitWords.begin(), kFitWords.end()})) {
      const FitOff fit = *pick == "call" ? FitOff::call : FitOff::man_in_front;
      screen.desk.change(std::string(kLevels[k]) + " on the " + *pick,
                         [&](Scenario& s) { s.defense.fit_off[k] = fit; });
    }
  }
}

/// Who is force, on both sides alike; sides of their own stay with the file until one word is picked.
void pickForce(Screen& screen, const DefensePlan& plan) {
  const std::string now = plan.force_left || plan.force_right ? "by side" : plan.force;
  if (const auto pick = choiceRow(screen, "Force", now, {"shell", "safety", "backer", "corner"})) {
    screen.desk.change("force " + *pick, [&](Scenario& s) {
      s.defense.force = *pick;
      s.defense.force_left.reset();
      s.defense.force_right.reset();
    });
  }
}

/// The variety of a real opponent and defense, as a switch; its figures stay with the file.
void pickVariety(Screen& screen, const Scenario& now) {
  const CallMix none;
  const bool off = now.defense.mix && now.defense.mix->slant_share == none.slant_share &&
                   now.defense.mix->line_spread_yd == none.line_spread_yd &&
                   now.defense.mix->shoot_share == none.shoot_share;
  if (const auto pick = switchRow(screen, "Variety", off ? "none" : "usual", {"usual", "none"})) {
    screen.desk.change("variety " + *pick, [&](Scenario& s) {
      s.defense.mix.reset();
      if (*pick == "none") s.defense.mix = none;
    });
  }
}

}  // namespace

void drawCallCard(Screen& screen) {
  Desk& desk = screen.desk;
  const Scenario now = desk.document().scenario();
  const DefensePlan& plan = now.defense;
  cardTitle(screen, "Call");
  if (const auto pick = switchRow(screen, "Structure", plan.structure, {"spill", "box"}))
    desk.change("structure " + *pick, [&](Scenario& s) { s.defense.structure = *pick; });
  if (const auto* front = findFront(library(), plan.front)) {
    if (const auto pick = choiceRow(screen, "Movement", plan.movement, movementNames(*front)))
      desk.change("movement " + *pick, [&](Scenario& s) { s.defense.movement = *pick; });
  }
  if (const auto pick = choiceRow(screen, "Back side", plan.bs_backer, {"overlap", "fold", "shoot", "hang"}))
    desk.change("back-side backer " + *pick, [&](Scenario& s) { s.defense.bs_backer = *pick; });
  if (const auto pick = switchRow(screen, "Overlap", plan.overlap, {"under", "over"}))
    desk.change("overlap " + *pick, [&](Scenario& s) { s.defense.overlap = *pick; });
  pickForce(screen, plan);
  if (const auto pick = switchRow(screen, "Key", plan.key, {"triangle", "single"}))
    desk.change("key " + *pick, [&](Scenario& s) { s.defense.key = *pick; });
  pickVariety(screen, now);
  ImGui::Separator();
  pickFitting(screen, now);
}

}  // namespace gapsound
