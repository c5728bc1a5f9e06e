#include "io/scenario_file.hpp"

#include <fmt/format.h>

#include <nlohmann/json.hpp>

#include "io/atomic_file.hpp"
#include "io/defense_file.hpp"
#include "io/json_reader.hpp"
#include "io/scenario_parts.hpp"
#include "io/start_json.hpp"

namespace gapsound {
namespace {

using Json = nlohmann::ordered_json;

constexpr const char* kLevelKeys[] = {"level1", "level2", "level3"};

struct ManKey {
  const char* name;
  std::optional<double> ManSettings::*value;
  double low, high;
  const char* unit;
};

constexpr ManKey kManKeys[] = {
    {"x", &ManSettings::x, -30.0, 30.0, "yd right of the ball"},
    {"y", &ManSettings::y, -12.0, 40.0, "yd downfield of the ball"},
    {"depth_yd", &ManSettings::depth_yd, 1.0, 25.0, "yd, moves y only"},
    {"mass_kg", &ManSettings::mass_kg, 45.0, 190.0, "kg"},
    {"ten_yd_s", &ManSettings::ten_yd_s, 1.3, 2.8, "s"},
    {"forty_yd_s", &ManSettings::forty_yd_s, 4.0, 7.5, "s"},
    {"read_delay_s", &ManSettings::read_delay_s, 0.0, 3.0, "s from the snap to a finished read"},
    {"downhill_yps", &ManSettings::downhill_yps, 1.0, 11.0, "yd/s until he comes to balance"},
    {"push", &ManSettings::push, 0.2, 3.0, "times the usual force of his position"},
    {"tackling", &ManSettings::tackling, -3.0, 3.0, "log-odds on every tackle he tries"},
};

struct MixKey {
  const char* name;
  double CallMix::*value;
  double most;
};

constexpr MixKey kMixKeys[] = {
    {"line_spread_yd", &CallMix::line_spread_yd, 1.0}, {"backer_spread_yd", &CallMix::backer_spread_yd, 2.0},
    {"back_spread_yd", &CallMix::back_spread_yd, 3.0}, {"slant_share", &CallMix::slant_share, 1.0},
    {"shoot_share", &CallMix::shoot_share, 1.0},
};

// Reading.

const std::vector<std::string> kFitOffWords = {"man_in_front", "call"};
const std::vector<std::string> kKeyWords = {"single", "triangle"};
const std::vector<std::string> kSides = {"left", "right"};
const std::vector<std::string> kStrengths = {"formation", "receivers", "field", "boundary", "left", "right"};

/// A name of the library; with a start from film it may be left out.
std::string nameFrom(JsonReader& place, const char* key, bool filmed) {
  if (filmed && !place.has(key)) return "";
  return filledText(place.child(key));
}

FitOff fitOffNamed(const std::string& word) { return word == "call" ? FitOff::call : FitOff::man_in_front; }

FieldSpot fieldFrom(JsonReader place) {
  FieldSpot field = readField(place);
  place.finish();
  return field;
}

OffensePlan offenseFrom(JsonReader place, bool filmed) {
  OffensePlan plan = readOffense(place, filmed);
  place.finish();
  return plan;
}

CallMix mixFrom(JsonReader place) {
  CallMix mix;
  if (!place.isObject()) {
    if (!place.isText() || place.asText() != "none")
      place.refuse("\"none\" or an object of spreads and shares");
    return mix;
  }
  for (const MixKey& key : kMixKeys) {
    mix.*key.value = place.maybeNumber(key.name, 0.0, key.most).value_or(0.0);
  }
  place.finish();
  return mix;
}

const std::vector<std::string> kStructures = {"spill", "box"};
const std::vector<std::string> kForces = {"shell", "safety", "backer", "corner"};

/// Members of a plan that hold one word, or one for runs to each side.
struct BySide {
  std::string DefensePlan::*both;
  std::optional<std::string> DefensePlan::*left, DefensePlan::*right;
};
constexpr BySide kStructure{&DefensePlan::structure, &DefensePlan::structure_left,
                            &DefensePlan::structure_right};
constexpr BySide kForce{&DefensePlan::force, &DefensePlan::force_left, &DefensePlan::force_right};

void readBySide(JsonReader place, DefensePlan& plan, const BySide& to,
                const std::vector<std::string>& words) {
  if (!place.isObject()) {
    plan.*to.both = place.asWord(words);
    return;
  }
  plan.*to.left = place.word("left", words);
  plan.*to.right = place.word("right", words);
  place.finish();
}

void readCall(JsonReader place, DefensePlan& plan) {
  if (const auto word = place.maybeChild("structure")) readBySide(*word, plan, kStructure, kStructures);
  plan.strength = place.maybeWord("strength", kStrengths).value_or(plan.strength);
  if (const auto checks = place.maybeChild("checks")) plan.checks = checks->texts();
  plan.movement = place.maybeText("movement").value_or(plan.movement);
  plan.bs_backer =
      place.maybeWord("bs_backer", {"overlap", "fold", "shoot", "hang"}).value_or(plan.bs_backer);
  plan.overlap = place.maybeWord("overlap", {"under", "over"}).value_or(plan.overlap);
  if (const auto word = place.maybeChild("force")) readBySide(*word, plan, kForce, kForces);
  plan.key = place.maybeWord("key", kKeyWords).value_or(plan.key);
  if (const auto mix = place.maybeChild("mix")) plan.mix = mixFrom(*mix);
  place.finish();
}

std::array<FitOff, 3> fitOffFrom(JsonReader place) {
  std::array<FitOff, 3> levels{};
  if (!place.isObject()) {
    levels.fill(fitOffNamed(place.asWord(kFitOffWords)));
    return levels;
  }
  for (std::size_t k = 0; k < levels.size(); ++k) {
    levels[k] = fitOffNamed(place.maybeWord(kLevelKeys[k], kFitOffWords).value_or("man_in_front"));
  }
  place.finish();
  return levels;
}

void readDefenseOf(Scenario& scenario, const JsonReader& place, bool filmed) {
  const DefensePlace defense(place);
  JsonReader reader = defense.reader();
  scenario.defense = readDefense(reader, filmed);
  reader.finish();
  scenario.kept = defense.kept();
}

std::vector<std::string> faultNames() {
  std::vector<std::string> names;
  for (const FaultFacts& facts : faultTable()) names.emplace_back(facts.name);
  return names;
}

PlacedFault faultFrom(JsonReader place) {
  const FaultFacts& facts = factsOf(*faultNamed(place.word("kind", faultNames())));
  PlacedFault fault{filledText(place.child("player")), {facts.kind, facts.usual}};
  if (const auto amount = place.maybeChild("amount")) {
    fault.fault.amount = amount->asNumber(0.0, facts.most);
    if (fault.fault.amount == 0.0)
      amount->refuse(fmt::format("above 0, up to {} {}", facts.most, facts.unit));
  }
  place.finish();
  return fault;
}

void readMen(JsonReader& root, Scenario& scenario) {
  if (auto players = root.maybeChild("players")) {
    for (const auto& [id, settings] : players->members()) scenario.players[id] = manFrom(settings);
  }
  if (const auto faults = root.maybeChild("faults")) {
    for (const auto& fault : faults->items()) scenario.faults.push_back(faultFrom(fault));
  }
}

void readPlans(JsonReader& root, Scenario& scenario) {
  const bool filmed = scenario.start.has_value();
  const bool offense = !filmed || root.has("offense"), defense = !filmed || root.has("defense");
  if (offense)
    scenario.offense = offenseFrom(root.child("offense"), filmed);
  else
    scenario.offense.direction.clear();
  if (defense) readDefenseOf(scenario, root.child("defense"), filmed);
}

Scenario scenarioFrom(JsonReader root) {
  Scenario scenario;
  static_cast<void>(root.maybeText("$schema"));  // for editors
  scenario.format = root.whole("gapsound", 1, 1);
  scenario.title = filledText(root.child("title"));
  if (const auto tags = root.maybeChild("tags")) scenario.tags = tags->texts();
  scenario.level = readLevel(root);
  scenario.clock = root.maybeWord("clock", {"hand", "electronic"}).value_or(scenario.clock);
  if (const auto field = root.maybeChild("field")) scenario.field = fieldFrom(*field);
  if (const auto start = root.maybeChild("start")) scenario.start = startFrom(*start);
  readPlans(root, scenario);
  readMen(root, scenario);
  root.finish();
  return scenario;
}

// Writing.

const char* wordOf(FitOff fit) { return fit == FitOff::call ? "call" : "man_in_front"; }

}  // namespace

std::string filledText(const JsonReader& place) {
  auto text = place.asText();
  if (text.empty()) place.refuse("a text of at least one character");
  return text;
}

Level readLevel(JsonReader& root) {
  const auto word = root.maybeWord("level", {"high_school", "college", "pro"}).value_or("high_school");
  return word == "pro" ? Level::pro : word == "college" ? Level::college : Level::high_school;
}

const char* wordOf(Level level) {
  return level == Level::pro ? "pro" : level == Level::college ? "college" : "high_school";
}

FieldSpot readField(JsonReader& place) {
  FieldSpot field;
  field.spot = place.maybeWord("spot", {"left_hash", "middle", "right_hash"}).value_or(field.spot);
  field.to_goal = place.maybeNumber("to_goal", 1, 99).value_or(field.to_goal);
  field.down = place.maybeWhole("down", 1, 4).value_or(field.down);
  field.distance = place.maybeNumber("distance", 1, 99).value_or(field.distance);
  return field;
}

OffensePlan readOffense(JsonReader& place, bool filmed) {
  OffensePlan plan;
  plan.formation = nameFrom(place, "formation", filmed);
  plan.scheme = nameFrom(place, "scheme", filmed);
  if (filmed) plan.direction.clear();
  plan.variant = place.maybeText("variant").value_or(plan.variant);
  plan.direction = place.maybeWord("direction", kSides).value_or(plan.direction);
  plan.strength = place.maybeWord("strength", kSides).value_or(plan.strength);
  if (auto motion = place.maybeChild("motion")) {
    plan.motion = MotionCall{filledText(motion->child("player")), filledText(motion->child("kind"))};
    motion->finish();
  }
  plan.splits = place.maybeText("splits").value_or(plan.splits);
  return plan;
}

DefensePlan readDefense(JsonReader& place, bool filmed) {
  DefensePlan plan;
  plan.front = nameFrom(place, "front", filmed);
  plan.shell = place.maybeText("shell").value_or(plan.shell);
  if (const auto call = place.maybeChild("call")) readCall(*call, plan);
  if (const auto fit_off = place.maybeChild("fit_off")) plan.fit_off = fitOffFrom(*fit_off);
  return plan;
}

namespace {

/// A blocker's block, or a defender's part in runs to either side; which words are allowed is his look's to
/// say.
void readJob(JsonReader place, ManSettings& man) {
  if (!place.isObject()) {
    man.job = filledText(place);
    return;
  }
  if (place.has("left")) man.job_left = filledText(place.child("left"));
  if (place.has("right")) man.job_right = filledText(place.child("right"));
  place.finish();
  if (!man.job_left && !man.job_right) place.refuse("a part for \"left\", \"right\" or both");
}

}  // namespace

ManSettings manFrom(JsonReader place) {
  ManSettings man;
  for (const ManKey& key : kManKeys) man.*key.value = place.maybeNumber(key.name, key.low, key.high);
  if (const auto word = place.maybeWord("fit_off", kFitOffWords)) man.fit_off = fitOffNamed(*word);
  man.key = place.maybeWord("key", kKeyWords);
  if (const auto job = place.maybeChild("job")) readJob(*job, man);
  man.on = place.maybeText("on");
  place.finish();
  if (man.y && man.depth_yd) place.refuse("y or depth_yd, not both");
  return man;
}

Json written(const FieldSpot& field) {
  return {
      {"spot", field.spot}, {"to_goal", field.to_goal}, {"down", field.down}, {"distance", field.distance}};
}

/// Names a start from film leaves open are left out.
void writeName(Json& object, const char* key, const std::string& name) {
  if (!name.empty()) object[key] = name;
}

Json written(const OffensePlan& plan) {
  Json object = Json::object();
  writeName(object, "formation", plan.formation);
  writeName(object, "scheme", plan.scheme);
  object["variant"] = plan.variant;
  writeName(object, "direction", plan.direction);
  object["strength"] = plan.strength;
  if (plan.splits != "standard") object["splits"] = plan.splits;
  if (plan.motion) object["motion"] = {{"player", plan.motion->player}, {"kind", plan.motion->kind}};
  return object;
}

namespace {

Json written(const CallMix& mix) {
  Json object;
  for (const MixKey& key : kMixKeys) object[key.name] = mix.*key.value;
  return object;
}

Json writtenBySide(const DefensePlan& plan, const BySide& of) {
  const std::string& both = plan.*of.both;
  if (!(plan.*of.left) && !(plan.*of.right)) return both;
  return {{"left", (plan.*of.left).value_or(both)}, {"right", (plan.*of.right).value_or(both)}};
}

}  // namespace

Json written(const DefensePlan& plan) {
  Json call = {{"structure", writtenBySide(plan, kStructure)},
               {"strength", plan.strength},
               {"movement", plan.movement},
               {"bs_backer", plan.bs_backer},
               {"overlap", plan.overlap},
               {"force", writtenBySide(plan, kForce)},
               {"key", plan.key}};
  if (!plan.checks.empty()) call["checks"] = plan.checks;
  if (plan.mix) call["mix"] = written(*plan.mix);
  Json fit_off;
  for (std::size_t k = 0; k < plan.fit_off.size(); ++k) fit_off[kLevelKeys[k]] = wordOf(plan.fit_off[k]);
  Json object = Json::object();
  writeName(object, "front", plan.front);
  object["shell"] = plan.shell;
  object["call"] = call;
  object["fit_off"] = fit_off;
  return object;
}

Json written(const ManSettings& man) {
  Json object = Json::object();
  for (const ManKey& key : kManKeys) {
    if (man.*key.value) object[key.name] = *(man.*key.value);
  }
  if (man.fit_off) object["fit_off"] = wordOf(*man.fit_off);
  if (man.key) object["key"] = *man.key;
  if (man.job) object["job"] = *man.job;
  if (man.job_left) object["job"]["left"] = *man.job_left;
  if (man.job_right) object["job"]["right"] = *man.job_right;
  if (man.on) object["on"] = *man.on;
  return object;
}

namespace {

Json written(const PlacedFault& fault) {
  return {{"player", fault.player}, {"kind", factsOf(fault.fault.kind).name}, {"amount", fault.fault.amount}};
}

}  // namespace

Scenario parseScenario(std::string_view text, const std::string& source, const Changes& changes) {
  auto document = parsedJson(source, std::string(text));
  applyChanges(document, changes);
  Scenario scenario = scenarioFrom(JsonReader(source, document));
  scenario.source = source;
  return scenario;
}

Scenario readScenario(const std::string& file, const Changes& changes) {
  return parseScenario(readWhole(file), file, changes);
}

namespace {

std::string textOf(const Scenario& scenario, const Json& defense) {
  Json document = {
      {"gapsound", scenario.format},          {"title", scenario.title}, {"tags", scenario.tags},
      {"level", wordOf(scenario.level)},      {"clock", scenario.clock}, {"field", written(scenario.field)},
      {"offense", written(scenario.offense)}, {"defense", defense}};
  for (const auto& [id, man] : scenario.players) document["players"][id] = written(man);
  for (const auto& fault : scenario.faults) document["faults"].push_back(written(fault));
  if (scenario.start) document["start"] = written(*scenario.start);
  return document.dump(2) + "\n";
}

}  // namespace

std::string toJson(const Scenario& scenario) { return textOf(scenario, written(scenario.defense)); }

std::string toFile(const Scenario& scenario) {
  if (!scenario.kept) return toJson(scenario);
  return textOf(scenario, writtenOver(*scenario.kept, scenario.defense, scenario.source));
}

std::vector<Attribute> manAttributes() {
  std::vector<Attribute> attributes;
  for (const ManKey& key : kManKeys) {
    attributes.push_back({key.name, fmt::format("{} to {} {}", key.low, key.high, key.unit)});
  }
  attributes.push_back({"fit_off", "man_in_front, call"});
  attributes.push_back({"key", "single, triangle"});
  attributes.push_back(
      {"job", "a blocker's block, or a defender's part in the run (one, or left and right)"});
  attributes.push_back({"on", "the defender a blocker's job is for"});
  return attributes;
}

}  // namespace gapsound
