#include <array>
#include <map>

#include "base/error.hpp"
#include "base/nearest.hpp"
#include "io/library_parts.hpp"

namespace gapsound {
namespace {

constexpr double kFieldEdge = 26.67;  // yd from the middle

constexpr std::pair<const char*, SnapKind> kSnaps[] = {
    {"under_center", SnapKind::under_center}, {"pistol", SnapKind::pistol}, {"gun", SnapKind::gun}};
constexpr std::pair<const char*, PlaceRule> kPlaces[] = {{"line", PlaceRule::line},
                                                         {"overhang", PlaceRule::overhang},
                                                         {"slot", PlaceRule::slot},
                                                         {"safety", PlaceRule::safety},
                                                         {"corner", PlaceRule::corner}};
constexpr std::pair<const char*, SafetySpot::Over> kOvers[] = {{"two", SafetySpot::Over::two},
                                                               {"edge", SafetySpot::Over::edge},
                                                               {"inside", SafetySpot::Over::inside},
                                                               {"middle", SafetySpot::Over::middle},
                                                               {"man", SafetySpot::Over::man}};
constexpr std::pair<const char*, ForceWho> kForces[] = {{"overhang", ForceWho::overhang},
                                                        {"rolled", ForceWho::rolled},
                                                        {"corner", ForceWho::corner},
                                                        {"nub_corner", ForceWho::nub_corner}};

const std::vector<FormationMan>& standardLine() {
  static const std::vector<FormationMan> line = {{"LT", Group::off_tackle, {-2.75, -1.1}, true},
                                                 {"LG", Group::guard, {-1.35, -1.0}, true},
                                                 {"C", Group::center, {0.0, -0.5}, true},
                                                 {"RG", Group::guard, {1.35, -1.0}, true},
                                                 {"RT", Group::off_tackle, {2.75, -1.1}, true}};
  return line;
}

const std::map<std::string, Group>& letterGroups() {
  static const std::map<std::string, Group> groups = {
      {"LT", Group::off_tackle}, {"LG", Group::guard},      {"C", Group::center},    {"RG", Group::guard},
      {"RT", Group::off_tackle}, {"Y", Group::tight_end},   {"U", Group::tight_end}, {"V", Group::tight_end},
      {"H", Group::tight_end},   {"A", Group::receiver},    {"B", Group::receiver},  {"X", Group::receiver},
      {"Z", Group::receiver},    {"Q", Group::quarterback}, {"F", Group::fullback},  {"T", Group::back}};
  return groups;
}

Group groupOf(JsonReader& man, const std::string& id) {
  const auto child = man.maybeChild("group");
  if (!child) return letterGroups().at(id);
  const auto group = groupNamed(child->asText());
  if (!group) child->refuse("a group of bodies.json");
  return *group;
}

FormationMan readFormationMan(const std::string& id, JsonReader value) {
  FormationMan man;
  man.id = id;
  man.group = groupOf(value, id);
  man.spot = {value.number("x", -kFieldEdge, kFieldEdge), value.number("y", -10.0, 0.0)};
  man.on_line = value.maybeFlag("line").value_or(false);
  value.finish();
  return man;
}

void place(std::vector<FormationMan>& men, FormationMan man) {
  for (FormationMan& known : men) {
    if (known.id == man.id) {
      known = std::move(man);
      return;
    }
  }
  men.push_back(std::move(man));
}

std::vector<FormationMan> readFormationMen(JsonReader value) {
  std::vector<FormationMan> men = standardLine();
  for (const auto& [id, entry] : value.members()) {
    if (!letterGroups().contains(id)) entry.refuse(id, "a letter of an offensive man");
    place(men, readFormationMan(id, entry));
  }
  if (men.size() != 11) value.refuse(std::to_string(men.size()) + " men with the line", "11");
  return men;
}

std::vector<std::string> readAliases(JsonReader& value) {
  const auto child = value.maybeChild("aliases");
  return child ? child->texts() : std::vector<std::string>{};
}

using Techniques = std::map<std::string, double>;

double techniqueX(const JsonReader& value, const Techniques& techniques) {
  const std::string text = value.asText();
  const char side = text.empty() ? '\0' : text.back();
  const std::string name = side == '+' || side == '-' ? text.substr(0, text.size() - 1) : text;
  const auto found = techniques.find(name);
  if (found == techniques.end()) value.refuse("a technique of this file, + or - behind it");
  return side == '-' ? -found->second : found->second;
}

Placement readPlacement(JsonReader& value, const Techniques& techniques) {
  Placement placement;
  if (const auto rule = value.maybeChild("place")) placement.rule = choice(*rule, kPlaces);
  const auto tech = value.maybeChild("tech");
  placement.spot.x = tech ? techniqueX(*tech, techniques) : value.number("x", -kFieldEdge, kFieldEdge);
  placement.spot.y = value.number("y", 0.31, 25.0);
  placement.share = value.maybeNumber("share", 0.0, 1.0).value_or(placement.share);
  placement.gap = value.text("gap");
  return placement;
}

std::optional<Placement> readInstead(JsonReader& man, const char* key, const Techniques& techniques) {
  auto child = man.maybeChild(key);
  if (!child) return std::nullopt;
  Placement placement = readPlacement(*child, techniques);
  child->finish();
  return placement;
}

FrontMan readFrontMan(JsonReader value, const Techniques& techniques) {
  FrontMan man;
  man.id = value.text("id");
  const JsonReader group = value.child("group");
  if (!groupNamed(group.asText())) group.refuse("a group of bodies.json");
  man.group = *groupNamed(group.asText());
  man.level = value.whole("level", 1, 3);
  man.drawn = readPlacement(value, techniques);
  man.with_te = readInstead(value, "with_te", techniques);
  man.without_te = readInstead(value, "without_te", techniques);
  value.finish();
  return man;
}

bool hasMan(const Front& front, const std::string& id) {
  for (const FrontMan& man : front.men) {
    if (man.id == id) return true;
  }
  return false;
}

Movement readMovement(JsonReader value, const Front& front) {
  Movement movement;
  movement.name = value.text("name");
  JsonReader gaps = value.child("gaps");
  for (const auto& [id, gap] : gaps.members()) {
    if (!hasMan(front, id)) gap.refuse(id, "a man of this front");
    movement.gaps[id] = gap.asText();
  }
  if (auto guards = value.maybeChild("reads_guard")) {
    for (const auto& [id, side] : guards->members()) {
      if (!hasMan(front, id)) side.refuse(id, "a man of this front");
      movement.guards[id] = side.asWord({"+", "-"}) == "+" ? +1 : -1;
    }
  }
  value.finish();
  return movement;
}

Front readFront(JsonReader value, const Techniques& techniques) {
  Front front;
  front.id = value.text("id");
  front.name = value.text("name");
  front.aliases = readAliases(value);
  front.drawn_against = value.text("drawn_against");
  const JsonReader men = value.child("men");
  for (const JsonReader& man : men.items()) front.men.push_back(readFrontMan(man, techniques));
  if (front.men.size() != 11) men.refuse(std::to_string(front.men.size()) + " men", "11");
  if (const auto second = value.maybeChild("second_safety")) {
    front.second_safety = second->asText();
    if (!hasMan(front, front.second_safety)) second->refuse("a man of this front");
  }
  front.toward = value.maybeWord("toward", {"formation", "receivers"}).value_or(front.toward);
  for (const JsonReader& movement : value.child("movements").items()) {
    front.movements.push_back(readMovement(movement, front));
  }
  value.finish();
  return front;
}

CornerSpot readCorner(JsonReader value) {
  CornerSpot spot;
  spot.x = value.maybeNumber("x", 0.0, kFieldEdge);
  spot.y = value.number("y", 0.31, 25.0);
  spot.leverage = value.maybeNumber("leverage", -3.0, 3.0).value_or(0.0);
  spot.deep = value.maybeFlag("deep").value_or(true);
  spot.man = value.maybeFlag("man").value_or(false);
  value.finish();
  return spot;
}

SafetySpot readSafety(JsonReader value) {
  SafetySpot spot;
  spot.over = choice(value.child("over"), kOvers);
  spot.x = value.number("x", 0.0, kFieldEdge);
  spot.y = value.number("y", 0.31, 25.0);
  spot.deep = value.maybeFlag("deep").value_or(true);
  spot.rolled = value.maybeFlag("rolled").value_or(false);
  value.finish();
  return spot;
}

void readCorners(JsonReader& value, Shell& shell) {
  if (value.has("corner")) {
    shell.strong_corner = shell.weak_corner = readCorner(value.child("corner"));
    return;
  }
  shell.strong_corner = readCorner(value.child("strong_corner"));
  shell.weak_corner = readCorner(value.child("weak_corner"));
}

Shell readShell(JsonReader value) {
  Shell shell;
  shell.id = shell.name = value.text("id");
  shell.aliases = readAliases(value);
  readCorners(value, shell);
  shell.strong_safety = readSafety(value.child("strong_safety"));
  shell.weak_safety = readSafety(value.child("weak_safety"));
  for (const JsonReader& who : value.child("force").items()) shell.force.push_back(choice(who, kForces));
  shell.owns_twins = value.maybeFlag("owns_twins").value_or(false);
  value.finish();
  return shell;
}

}  // namespace

void readFormations(JsonReader file, Library& library) {
  for (JsonReader value : file.child("formations").items()) {
    Formation formation;
    formation.id = value.text("id");
    formation.name = value.text("name");
    formation.aliases = readAliases(value);
    formation.snap = choice(value.child("snap"), kSnaps);
    formation.men = readFormationMen(value.child("men"));
    value.finish();
    library.formations.push_back(std::move(formation));
  }
  file.finish();
}

void readFronts(JsonReader file, Library& library) {
  Techniques& techniques = library.techniques;
  JsonReader table = file.child("techniques");
  for (const auto& [name, x] : table.members()) techniques[name] = x.asNumber(0.0, 10.0);
  for (const JsonReader& value : file.child("fronts").items()) {
    library.fronts.push_back(readFront(value, techniques));
  }
  file.finish();
}

void readShells(JsonReader file, Library& library) {
  for (const JsonReader& value : file.child("shells").items()) library.shells.push_back(readShell(value));
  file.finish();
}

}  // namespace gapsound
