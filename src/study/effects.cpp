#include "study/effects.hpp"

#include <algorithm>
#include <string_view>

#include "base/error.hpp"

namespace gapsound {
namespace {

Scenario look(const char* formation, const char* front, const char* scheme, const char* shell = "quarters") {
  Scenario s;
  s.source = "effects";
  s.title = std::string(formation) + " " + scheme + " against " + front;
  s.level = Level::pro;
  s.offense.formation = formation;
  s.offense.scheme = scheme;
  s.defense.front = front;
  s.defense.shell = shell;
  return s;
}

Scenario toTheLeft(Scenario s) {
  s.offense.direction = "left";
  return s;
}

std::string idOf(const Setup& setup, int man, const char* what) {
  if (man == kNobody) throw Error(ExitCode::badInput, setup.title + ": this look has no " + what);
  return setup.men[static_cast<std::size_t>(man)].id;
}

void turn(Scenario& s, const Setup& setup, const Turn& t) {
  const Cast cast = castOf(setup);
  const auto fault = [&](int man, const char* what, FaultKind kind) {
    s.faults.push_back({idOf(setup, man, what), {kind, t.amount}});
  };
  const auto settings = [&](int man, const char* what) -> ManSettings& {
    return s.players[idOf(setup, man, what)];
  };
  switch (t.lever) {
    case Lever::safety_read:
      settings(cast.safety, "play-side safety").read_delay_s = t.amount;
      break;
    case Lever::safety_downhill:
      settings(cast.safety, "play-side safety").downhill_yps = t.amount;
      break;
    case Lever::safety_late:
      fault(cast.safety, "play-side safety", FaultKind::late_read);
      break;
    case Lever::safety_to_call:
      settings(cast.safety, "play-side safety").fit_off = FitOff::call;
      break;
    case Lever::backer_late:
      fault(cast.first_backer, "first backer", FaultKind::late_read);
      break;
    case Lever::backer_wide:
      fault(cast.first_backer, "first backer", FaultKind::scrape_wide);
      break;
    case Lever::backer_to_call:
      settings(cast.first_backer, "first backer").fit_off = FitOff::call;
      break;
    case Lever::end_kicked:
      fault(cast.end, "play-side end", FaultKind::kicked_out);
      break;
    case Lever::box:
      s.defense.structure = "box";
      break;
    case Lever::back_safety_flows:
      fault(cast.back_safety, "back-side safety", FaultKind::flowed);
      break;
  }
}

const Turn kEarly{Lever::safety_read, 0.5}, kSound{Lever::safety_read, 1.1};
const Turn kFive{Lever::safety_downhill, 5.0}, kNine{Lever::safety_downhill, 9.0};
const Turn kKicked{Lever::end_kicked, 1.0}, kOver{Lever::backer_to_call, 1.0}, kWide{Lever::backer_wide, 2.0};
const Turn kSafetyCall{Lever::safety_to_call, 1.0};

using Effects = std::vector<Effect>;

/// A claim about the play-side safety's speed, at 99.9 %.
struct SpeedClaim {
  const char* words;
  std::vector<Turn> a, b;
  Measure measure;
  Demand demand;
  double margin;
};

void addSafetySpeed(Effects& list) {
  const std::vector<Turn> early_five{kEarly, kFive}, early_nine{kEarly, kNine};
  const SpeedClaim early[] = {
      {"early read: 9 yd/s, not 5", early_five, early_nine, Measure::yards, Demand::more, 0.4},
      {"early read: 9 yd/s opens cutbacks", early_five, early_nine, Measure::cutback_open, Demand::more, 0.0},
      {"early read: 9 yd/s, more cut back", early_five, early_nine, Measure::cutback_taken, Demand::more,
       0.0}};
  const std::vector<Turn> five{kSound, kFive}, nine{kSound, kNine}, wide{kSound, kNine, kWide},
      kicked{kSound, kNine, kKicked, kOver};
  const SpeedClaim sound[] = {
      {"sound read: 9 yd/s, not 5", five, nine, Measure::yards, Demand::bounded, 0.4},
      {"at 9: backer too wide, not right", nine, wide, Measure::yards, Demand::more, 0.0},
      {"at 9: kicked and over, not wide", wide, kicked, Measure::yards, Demand::more, 0.0}};
  struct Played {
    const char* look;
    int n;
  };
  const auto add = [&](const Played& on, const SpeedClaim& c) {
    list.push_back({"a", c.words, on.look, c.a, c.b, c.measure, c.demand, c.margin, 0.001, on.n});
  };
  for (const Played& counter : {Played{"C1", 9000},
                                {"C2", 20000},
                                {"C4", 6000},
                                {"C5", 6000},
                                {"C7", 6000},
                                {"C8", 6000},
                                {"C9", 6000}})
    for (const SpeedClaim& claim : early) add(counter, claim);
  for (const Played& power : {Played{"P1", 5000},
                              {"P2", 15000},
                              {"P3", 5000},
                              {"P4", 5000},
                              {"P5", 5000},
                              {"P6", 5000},
                              {"P7", 4000},
                              {"P8", 4000},
                              {"P9", 6000}})
    for (const SpeedClaim& claim : sound) add(power, claim);
}

void addFits(Effects& list) {
  for (const char* power : {"P1", "P2"})
    list.push_back({"b",
                    "safety reads 0.4 s late",
                    power,
                    {},
                    {{Lever::safety_late, 0.4}},
                    Measure::yards,
                    Demand::more,
                    0.4,
                    0.001,
                    3000});
  for (const char* any : {"P1", "P2", "P7", "P8", "C1", "C2"}) {
    list.push_back({"c",
                    "kicked: backer over, not back inside",
                    any,
                    {kKicked},
                    {kKicked, kOver},
                    Measure::yards,
                    Demand::more,
                    0.7,
                    0.001,
                    3000});
    list.push_back({"c",
                    "kicked: safety on the call as well",
                    any,
                    {kKicked, kOver},
                    {kKicked, kOver, kSafetyCall},
                    Measure::yards,
                    Demand::more,
                    0.0,
                    0.001,
                    3000});
  }
  for (const char* any : {"P1", "P2", "P3", "P6", "P9", "C1", "C4"})
    list.push_back({"d",
                    "wide: safety to the call, not inside",
                    any,
                    {kWide},
                    {kWide, kSafetyCall},
                    Measure::yards,
                    Demand::more,
                    0.4,
                    0.001,
                    3000});
}

void addStructures(Effects& list) {
  for (const char* any : {"P1", "P2", "P3", "P4", "P5", "P6", "C1", "C2", "C3", "C6", "C7", "C8", "C9"})
    list.push_back({"e",
                    "spill, not box: crossing",
                    any,
                    {{Lever::box, 1.0}},
                    {},
                    Measure::crossing,
                    Demand::more,
                    any[0] == 'P' ? 1.0 : 0.7,
                    0.001,
                    1000});
  const Turn late{Lever::backer_late, 0.3}, box{Lever::box, 1.0};
  for (const char* power : {"P1", "P2", "P3"})
    list.push_back({"f",
                    "spill: first backer 0.3 s late",
                    power,
                    {},
                    {late},
                    Measure::yards,
                    Demand::more,
                    0.0,
                    0.001,
                    4000});
  list.push_back(
      {"f", "box: first backer 0.3 s late", "P1", {box}, {box, late}, Measure::yards, Demand::reported});
  list.push_back({"f", "spill: first backer 0.3 s late", "C1", {}, {late}, Measure::yards, Demand::reported});
  list.push_back(
      {"f", "box: first backer 0.3 s late", "C1", {box}, {box, late}, Measure::yards, Demand::reported});
  for (const char* any : {"P1", "C1"})
    list.push_back({"g",
                    "back-side safety flows: 12 and more",
                    any,
                    {},
                    {{Lever::back_safety_flows, 1.0}},
                    Measure::twelve_plus,
                    any[0] == 'C' ? Demand::more : Demand::reported,
                    0.0,
                    0.01,
                    6000});
}

double valueOf(const Summary& rep, Measure measure, int direction) {
  switch (measure) {
    case Measure::cutback_open:
      return rep.cutback_open ? 1.0 : 0.0;
    case Measure::cutback_taken:
      return rep.cutback_taken ? 1.0 : 0.0;
    case Measure::twelve_plus:
      return wholeYards(rep.yards) >= 12.0 ? 1.0 : 0.0;
    case Measure::crossing:
      return direction * rep.cross_x;
    case Measure::yards:
      break;
  }
  return rep.yards;
}

bool met(const Effect& effect, const EffectResult& result) {
  if (effect.demand == Demand::bounded)
    return intervalAt(result.paired, 1.0 - effect.alpha).high < effect.margin;
  if (effect.demand == Demand::reported) return true;
  return result.paired.difference > 0.0 && result.paired.difference >= effect.margin &&
         result.paired.p_value < effect.alpha;
}

}  // namespace

std::vector<EffectLook> effectLooks() {
  return {{"P1", "power F01 D01", look("F01", "D01", "R01")},
          {"P2", "power F03 D03", look("F03", "D03", "R01")},
          {"C1", "counter F03 D03", look("F03", "D03", "R02")},
          {"C2", "counter F13 D04", look("F13", "D04", "R03")},
          {"C3", "counter left F10 D03", toTheLeft(look("F10", "D03", "R02"))},
          {"P3", "power F01 D03", look("F01", "D03", "R01")},
          {"P4", "power F03 D01", look("F03", "D01", "R01")},
          {"C4", "counter F03 D01", look("F03", "D01", "R02")},
          {"C5", "counter F03 D04", look("F03", "D04", "R02")},
          {"P5", "power F04 D01", look("F04", "D01", "R01")},
          {"P6", "power F10 D01", look("F10", "D01", "R01")},
          {"P7", "power F08 D01", look("F08", "D01", "R01")},
          {"P8", "power F08 D03", look("F08", "D03", "R01")},
          {"P9", "power F12 D01", look("F12", "D01", "R01")},
          {"C6", "counter left F01 D03", toTheLeft(look("F01", "D03", "R02"))},
          {"C7", "counter F01 D03", look("F01", "D03", "R02")},
          {"C8", "counter F02 D03", look("F02", "D03", "R02")},
          {"C9", "counter F01 D01", look("F01", "D01", "R02")}};
}

namespace {

// Claims the present model does not bear out; the card's command prints them as misses.
bool isShown(const Effect& e) {
  const auto on = [&](std::initializer_list<std::string_view> looks) {
    return std::find(looks.begin(), looks.end(), e.look) != looks.end();
  };
  if (e.demand == Demand::reported || e.item == "b") return true;
  if (e.words == "early read: 9 yd/s, not 5") return on({"C1", "C4", "C7", "C8", "C9"});
  if (e.words == "early read: 9 yd/s, more cut back") return on({"C1", "C2", "C4"});
  if (e.words.starts_with("sound read")) return true;
  if (e.words == "at 9: backer too wide, not right") return on({"P1", "P4", "P5", "P6", "P7", "P8", "P9"});
  if (e.words == "at 9: kicked and over, not wide") return on({"P1", "P2", "P5", "P7", "P8", "P9"});
  if (e.words == "kicked: backer over, not back inside") return on({"P1", "P2", "P7", "P8"});
  if (e.item == "c") return on({"P1", "P2", "C1", "C2"});
  if (e.item == "d") return on({"P1", "P3", "P6", "P9", "C1", "C4"});
  if (e.item == "e") return on({"P1", "P3", "P4", "C7", "C8", "C9"});
  if (e.item == "f") return on({"P2", "P3"});
  return e.item == "g" && e.look == "C1";
}

}  // namespace

std::vector<Effect> effectList() {
  Effects list;
  addSafetySpeed(list);
  addFits(list);
  addStructures(list);
  for (Effect& effect : list) {
    effect.shown = isShown(effect);
    effect.costly = effect.look == "C2" && effect.measure == Measure::cutback_taken;
  }
  return list;
}

Scenario turned(Scenario scenario, const Setup& resolved, const std::vector<Turn>& turns) {
  for (const Turn& t : turns) turn(scenario, resolved, t);
  return scenario;
}

EffectResult judge(const Effect& effect, int direction, const std::vector<Summary>& a,
                   const std::vector<Summary>& b) {
  std::vector<double> side_a, side_b;
  const std::size_t n = std::min({a.size(), b.size(), static_cast<std::size_t>(effect.n)});
  for (std::size_t k = 0; k < n; ++k) {
    const bool both_crossed = a[k].t_line >= 0.0 && b[k].t_line >= 0.0;
    if (effect.measure == Measure::crossing && !both_crossed) continue;
    side_a.push_back(valueOf(a[k], effect.measure, direction));
    side_b.push_back(valueOf(b[k], effect.measure, direction));
  }
  EffectResult result;
  result.paired = pairedDifference(side_a, side_b);
  result.wide = intervalAt(result.paired, 0.999);
  result.mean_a = meanOf(side_a);
  result.mean_b = meanOf(side_b);
  result.holds = met(effect, result);
  return result;
}

}  // namespace gapsound
