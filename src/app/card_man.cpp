#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "app/card_parts.hpp"
#include "app/cards.hpp"
#include "app/landmarks.hpp"
#include "athlete/splits.hpp"
#include "cli/session.hpp"
#include "scenario/assignments.hpp"
#include "scenario/given_jobs.hpp"

namespace gapsound {
namespace {

struct Number {
  const char* word;
  const char* unit;
  std::optional<double> ManSettings::*setting;
  double step;
  int digits;
};

constexpr Number kDefenseNumbers[] = {
    {"Read delay", "s", &ManSettings::read_delay_s, 0.1, 2},
    {"Downhill", "yd/s", &ManSettings::downhill_yps, 0.5, 1},
};
constexpr Number kBodyNumbers[] = {
    {"Weight", "kg", &ManSettings::mass_kg, 2.0, 0},      {"Ten", "s", &ManSettings::ten_yd_s, 0.02, 2},
    {"Forty", "s", &ManSettings::forty_yd_s, 0.05, 2},    {"Push", "times", &ManSettings::push, 0.05, 2},
    {"Tackling", "odds", &ManSettings::tackling, 0.1, 2},
};

ManSettings settingsOf(const Scenario& scenario, const std::string& id) {
  const auto found = scenario.players.find(id);
  return found == scenario.players.end() ? ManSettings{} : found->second;
}

/// What the man has when the file says nothing.
double usual(const Man& man, std::optional<double> ManSettings::*setting) {
  const SprintFit sprint{man.body.top_speed, man.body.tau};
  if (setting == &ManSettings::read_delay_s) return man.fit.read_delay_s;
  if (setting == &ManSettings::downhill_yps) return man.fit.downhill_yps;
  if (setting == &ManSettings::mass_kg) return man.body.mass_kg;
  if (setting == &ManSettings::ten_yd_s) return clockTime(sprint, 10.0, kHandStart);
  if (setting == &ManSettings::forty_yd_s) return clockTime(sprint, 40.0, kHandStart);
  return setting == &ManSettings::push ? man.body.push : man.body.tackling;
}

void numberFor(Screen& screen, const Man& man, const ManSettings& now, const Number& number) {
  const double value = (now.*number.setting).value_or(usual(man, number.setting));
  const auto typed = numberRow(screen, number.word, value, number.step, number.unit, number.digits);
  if (!typed) return;
  const std::string id = man.id, key = man.drawn;
  screen.desk.change(fmt::format("{} {} {:.{}f} {}", id, number.word, *typed, number.digits, number.unit),
                     [&](Scenario& s) { s.players[key].*number.setting = *typed; });
}

void spotRows(Screen& screen, const Man& man) {
  const std::string id = man.id, key = man.drawn;
  if (const auto x = numberRow(screen, "Across", man.spot.x, 0.5, "yd", 2))
    screen.desk.change(fmt::format("{} at x {:.2f}", id, *x), [&](Scenario& s) { s.players[key].x = *x; });
  if (const auto y = numberRow(screen, man.attacks ? "Behind" : "Depth",
                               man.attacks ? -man.spot.y : man.spot.y, 0.5, "yd", 2)) {
    screen.desk.change(fmt::format("{} {:.1f} yd deep", id, *y), [&](Scenario& s) {
      s.players[key].depth_yd.reset();
      s.players[key].y = man.attacks ? -*y : *y;
    });
  }
}

void fitRows(Screen& screen, const Man& man, const ManSettings& now) {
  const std::string id = man.id, key = man.drawn;
  const std::string fit =
      now.fit_off ? (*now.fit_off == FitOff::call ? "call" : "man in front") : "as called";
  if (const auto pick = choiceRow(screen, "Fits off", fit, {"as called", "man in front", "call"})) {
    screen.desk.change(id + " fits off: " + *pick, [&](Scenario& s) {
      s.players[key].fit_off.reset();
      if (*pick == "call") s.players[key].fit_off = FitOff::call;
      if (*pick == "man in front") s.players[key].fit_off = FitOff::man_in_front;
    });
  }
  if (const auto pick =
          choiceRow(screen, "Key", now.key.value_or("as called"), {"as called", "triangle", "single"})) {
    screen.desk.change(id + " key: " + *pick, [&](Scenario& s) {
      s.players[key].key.reset();
      if (*pick != "as called") s.players[key].key = *pick;
    });
  }
}

/// His part in the run as it goes; the other side's stays with the file.
void jobRow(Screen& screen, const Man& man, const ManSettings& now, bool to_right) {
  const std::string id = man.id, key = man.drawn, as_called = "as called";
  const auto& side = to_right ? now.job_right : now.job_left;
  std::vector<std::string> parts = partNames(man.fit.level);
  parts.insert(parts.begin(), as_called);
  const auto pick = choiceRow(screen, "Part", side.value_or(now.job.value_or(as_called)), parts);
  if (!pick) return;
  screen.desk.change(id + " part: " + *pick, [&](Scenario& s) {
    ManSettings& told = s.players[key];
    auto& own = to_right ? told.job_right : told.job_left;
    auto& other = to_right ? told.job_left : told.job_right;
    if (!other) other = told.job;
    told.job.reset();
    own.reset();
    if (*pick != as_called) own = *pick;
  });
}

void faultRow(Screen& screen, const Scenario& now, std::size_t index) {
  const PlacedFault& placed = now.faults[index];
  const FaultFacts& facts = factsOf(placed.fault.kind);
  ImGui::PushID(static_cast<int>(index));
  const std::string words(facts.words);
  if (const auto amount =
          numberRow(screen, words, placed.fault.amount, 0.1, std::string(facts.unit).c_str(), 2)) {
    screen.desk.change(placed.player + " " + words, [&](Scenario& s) {
      s.faults[index].fault.amount = std::clamp(*amount, 0.01, facts.most);
    });
  }
  ImGui::SameLine();
  if (wordButton(screen, "off"))
    screen.desk.change(placed.player + " without " + words, [&](Scenario& s) {
      s.faults.erase(s.faults.begin() + static_cast<std::ptrdiff_t>(index));
    });
  screen.note("off " + words);
  ImGui::PopID();
}

void faultRows(Screen& screen, const Man& man) {
  const Scenario now = screen.desk.document().scenario();
  const std::string id = man.id, key = man.drawn;
  std::vector<std::string> names;
  for (const FaultFacts& facts : faultTable()) names.emplace_back(facts.name);
  if (const auto pick = choiceRow(screen, "Add a fault", "none", names)) {
    const FaultFacts& facts = factsOf(*faultNamed(*pick));
    screen.desk.change(id + " " + std::string(facts.words), [&](Scenario& s) {
      s.faults.push_back({key, {facts.kind, facts.usual}});
    });
  }
  for (std::size_t i = 0; i < now.faults.size(); ++i) {
    if (now.faults[i].player == key) faultRow(screen, now, i);
  }
}

/// A blocker's job against the front he faces: "combo on DT with RG, then to W".
std::string jobWords(const Setup& setup, const Man& man) {
  for (const Assignment& job : assignmentsOf(setup)) {
    if (job.player != man.id) continue;
    std::string words = job.pull.empty() ? job.block : "pulls (" + job.pull + "), " + job.block;
    if (!job.target.empty()) words += " on " + job.target;
    if (!job.with.empty()) words += " with " + job.with;
    if (!job.climbs_to.empty()) words += ", then to " + job.climbs_to;
    return words;
  }
  return "";
}

/// What he was told, saw and did in this rep.
void tellRep(Screen& screen, int man) {
  const auto& fits = screen.desk.rep()->account.fits;
  const auto fit =
      std::find_if(fits.begin(), fits.end(), [man](const FitLine& line) { return line.man == man; });
  if (fit == fits.end()) return;
  std::string words = "Called: " + fit->called + ". ";
  if (!fit->saw.empty()) words += "Saw: " + fit->saw + ". ";
  if (!fit->did.empty()) words += fmt::format("At {:.2f} s he {}. ", fit->t, fit->did);
  cardWords(screen, words + "In the end: " + fit->result + ".");
}

std::string keyWords(const Setup& setup, const Man& man) {
  if (man.attacks || man.fit.key == kNobody) return "";
  return ", keys " + setup.men[static_cast<std::size_t>(man.fit.key)].id;
}

}  // namespace

void drawManCard(Screen& screen) {
  const Setup& setup = screen.desk.rep()->tape.setup;
  const int index = manNamed(setup, screen.desk.view.selected);
  if (index == kNobody) {
    cardTitle(screen, "Man");
    return cardWords(screen, "Click a man on the field, or press Tab.");
  }
  const Man& man = setup.men[static_cast<std::size_t>(index)];
  const ManSettings now = settingsOf(screen.desk.document().scenario(), man.drawn);
  cardTitle(screen, man.id + "  " + std::string(nameOf(man.group)));
  cardWords(screen, placeWords(index, setup, library()) + keyWords(setup, man) + ".");
  if (const std::string job = jobWords(setup, man); !job.empty()) cardWords(screen, "Job: " + job + ".");
  tellRep(screen, index);
  if (!man.attacks) {
    for (const Number& number : kDefenseNumbers) numberFor(screen, man, now, number);
    fitRows(screen, man, now);
    jobRow(screen, man, now, screen.desk.document().scenario().offense.direction != "left");
  }
  spotRows(screen, man);
  for (const Number& number : kBodyNumbers) numberFor(screen, man, now, number);
  ImGui::Separator();
  faultRows(screen, man);
}

}  // namespace gapsound
