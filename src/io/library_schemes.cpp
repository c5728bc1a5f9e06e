#include "base/error.hpp"
#include "io/library_parts.hpp"

namespace gapsound {
namespace {

constexpr std::pair<const char*, BlockRule> kRules[] = {
    {"down", BlockRule::down},         {"post", BlockRule::post},
    {"base", BlockRule::base},         {"back", BlockRule::back},
    {"back_shade", BlockRule::back_shade},
    {"cover", BlockRule::cover},       {"combo_out", BlockRule::combo_out},
    {"combo_in", BlockRule::combo_in}, {"combo_back", BlockRule::combo_back},
    {"climb", BlockRule::climb},       {"kick", BlockRule::kick},
    {"log", BlockRule::log},           {"wrap", BlockRule::wrap},
    {"lead", BlockRule::lead},         {"insert", BlockRule::insert},
    {"hinge", BlockRule::hinge},       {"cutoff", BlockRule::cutoff},
    {"scoop", BlockRule::scoop},       {"lock", BlockRule::lock},
    {"arc", BlockRule::arc},           {"fan", BlockRule::fan},
    {"stalk", BlockRule::stalk},       {"crack", BlockRule::crack},
    {"wall", BlockRule::wall}};
constexpr std::pair<const char*, SnapKind> kSnaps[] = {
    {"under_center", SnapKind::under_center}, {"pistol", SnapKind::pistol}, {"gun", SnapKind::gun}};

const std::vector<std::string>& targetWords() {
  static const std::vector<std::string> words = {"b1",    "b2",    "b3",   "next",
                                                 "force", "alley", "edge", "back_edge"};
  return words;
}

BlockRule ruleNamed(const JsonReader& value, const std::string& word) {
  std::vector<std::string> words;
  for (const auto& [name, rule] : kRules) {
    if (word == name) return rule;
    words.emplace_back(name);
  }
  value.refuse("a block rule: down, post, base, back, cover, combo_out, climb, kick, wrap, ...");
}

/// "climb b2": the rule, then whom.
BlockStep shortStep(const JsonReader& value) {
  const std::string text = value.asText();
  const auto blank = text.find(' ');
  BlockStep step;
  step.rule = ruleNamed(value, text.substr(0, blank));
  if (blank == std::string::npos) return step;
  step.at = text.substr(blank + 1);
  for (const auto& word : targetWords()) {
    if (word == step.at) return step;
  }
  value.refuse("a rule, or a rule and one of b1, b2, b3, next, force, alley, edge, back_edge");
}

BlockStep readStep(JsonReader value) {
  if (value.isText()) return shortStep(value);
  BlockStep step;
  step.rule = choice(value.child("do"), kRules);
  step.at = value.maybeWord("at", targetWords()).value_or("");
  step.pull = value.maybeWord("pull", {"open", "skip", "flat"}).value_or("");
  step.depth = value.maybeNumber("depth", 0.0, 3.0).value_or(0.0);
  step.delay_s = value.maybeNumber("delay_s", 0.0, 2.0).value_or(0.0);
  step.reads_kick = value.maybeFlag("reads_kick").value_or(false);
  step.may_log = value.maybeFlag("may_log").value_or(false);
  value.finish();
  return step;
}

std::map<std::string, BlockSteps> readJobs(JsonReader value) {
  std::map<std::string, BlockSteps> jobs;
  for (const auto& [place, steps] : value.members()) {
    for (const JsonReader& step : steps.items()) jobs[place].push_back(readStep(step));
  }
  return jobs;
}

Vec2 readPoint(const JsonReader& value) {
  const auto parts = value.items();
  if (parts.size() != 2) value.refuse("[x, y]");
  return {parts[0].asNumber(-15.0, 15.0), parts[1].asNumber(-15.0, 15.0)};
}

BallPath readPath(JsonReader value) {
  BallPath path;
  if (const auto steps = value.maybeChild("steps")) {
    for (const JsonReader& step : steps->items()) path.steps.push_back(readPoint(step));
  }
  path.mesh = readPoint(value.child("mesh"));
  path.mesh_s = value.number("mesh_s", 0.2, 3.0);
  value.finish();
  return path;
}

SchemeChange readChange(JsonReader value) {
  SchemeChange change;
  if (const auto jobs = value.maybeChild("jobs")) change.jobs = readJobs(*jobs);
  change.aim_x = value.maybeNumber("aim_x", -15.0, 15.0);
  change.patient = value.maybeFlag("patient");
  change.bends = value.maybeFlag("bends");
  value.finish();
  return change;
}

void readReserves(JsonReader& value, Scheme& scheme) {
  for (const JsonReader& man : value.child("reserves").items()) {
    const std::string word = man.asWord({"edge", "back_edge", "b1"});
    scheme.reserves_edge |= word == "edge";
    scheme.reserves_back_edge |= word == "back_edge";
    scheme.reserves_b1 |= word == "b1";
  }
}

void readPaths(JsonReader value, Scheme& scheme) {
  for (const auto& [name, snap] : kSnaps) scheme.paths[snap] = readPath(value.child(name));
  value.finish();
}

Scheme readScheme(JsonReader value) {
  Scheme scheme;
  scheme.id = value.text("id");
  scheme.name = value.text("name");
  if (const auto aliases = value.maybeChild("aliases")) scheme.aliases = aliases->texts();
  scheme.carriers = value.child("carriers").texts();
  JsonReader parts = value.child("parts");
  for (const auto& [part, who] : parts.members()) scheme.parts[part] = who.texts();
  scheme.jobs = readJobs(value.child("jobs"));
  readReserves(value, scheme);
  if (const auto sniffer = value.maybeChild("sniffer_back")) scheme.sniffer_back = sniffer->texts();
  readPaths(value.child("paths"), scheme);
  scheme.aim_x = value.number("aim_x", -15.0, 15.0);
  scheme.patient = value.flag("patient");
  scheme.bends = value.flag("bends");
  JsonReader variants = value.child("variants");
  for (const auto& [name, change] : variants.members()) scheme.variants[name] = readChange(change);
  value.finish();
  return scheme;
}

}  // namespace

void readSchemes(JsonReader file, Library& library) {
  for (const JsonReader& value : file.child("schemes").items()) library.schemes.push_back(readScheme(value));
  file.finish();
}

}  // namespace gapsound
