#include <fmt/format.h>

#include "base/error.hpp"
#include "base/nearest.hpp"
#include "io/library_parts.hpp"

namespace gapsound {
namespace {

constexpr std::pair<const char*, BlockRule> kRules[] = {{"down", BlockRule::down},
                                                        {"post", BlockRule::post},
                                                        {"base", BlockRule::base},
                                                        {"back", BlockRule::back},
                                                        {"back_shade", BlockRule::back_shade},
                                                        {"back_far", BlockRule::back_far},
                                                        {"cover", BlockRule::cover},
                                                        {"combo_out", BlockRule::combo_out},
                                                        {"combo_in", BlockRule::combo_in},
                                                        {"combo_back", BlockRule::combo_back},
                                                        {"climb", BlockRule::climb},
                                                        {"kick", BlockRule::kick},
                                                        {"log", BlockRule::log},
                                                        {"wrap", BlockRule::wrap},
                                                        {"lead", BlockRule::lead},
                                                        {"insert", BlockRule::insert},
                                                        {"hinge", BlockRule::hinge},
                                                        {"cutoff", BlockRule::cutoff},
                                                        {"scoop", BlockRule::scoop},
                                                        {"lock", BlockRule::lock},
                                                        {"lock_end", BlockRule::lock_end},
                                                        {"lock_gun", BlockRule::lock_gun},
                                                        {"arc", BlockRule::arc},
                                                        {"fan", BlockRule::fan},
                                                        {"stalk", BlockRule::stalk},
                                                        {"crack", BlockRule::crack},
                                                        {"wall", BlockRule::wall},
                                                        {"pull", BlockRule::pull},
                                                        {"influence", BlockRule::influence},
                                                        {"squeeze", BlockRule::squeeze},
                                                        {"wedge", BlockRule::wedge},
                                                        {"fake", BlockRule::fake}};
constexpr std::pair<const char*, Show> kShows[] = {{"pass_set", Show::pass_set}, {"past", Show::past}};
constexpr std::pair<const char*, SnapKind> kSnaps[] = {
    {"under_center", SnapKind::under_center}, {"pistol", SnapKind::pistol}, {"gun", SnapKind::gun}};

const std::vector<std::string>& targetWords() {
  static const std::vector<std::string> words = {"b1",        "b2",    "b3",          "last",       "next",
                                                 "force",     "alley", "back_safety", "back_force", "edge",
                                                 "back_edge", "trap",  "wham"};
  return words;
}

BlockRule ruleNamed(const JsonReader& value, const std::string& word) {
  std::vector<std::string> words;
  for (const auto& [name, rule] : kRules) {
    if (word == name) return rule;
    words.emplace_back(name);
  }
  value.refuse(nameHint(word, words));
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
  value.refuse(fmt::format("a rule, or a rule and one of {}", fmt::join(targetWords(), ", ")));
}

BlockStep readStep(JsonReader value) {
  if (value.isText()) return shortStep(value);
  BlockStep step;
  step.rule = choice(value.child("do"), kRules);
  step.at = value.maybeWord("at", targetWords()).value_or("");
  step.pull = value.maybeWord("pull", {"open", "skip", "flat"}).value_or("");
  step.depth = value.maybeNumber("depth", 0.0, 3.0).value_or(0.0);
  step.delay_s = value.maybeNumber("delay_s", 0.0, 2.0).value_or(0.0);
  step.from = value.maybeNumber("from", 0.0, 2.0).value_or(step.from);
  if (const auto show = value.maybeChild("show")) step.show = choice(*show, kShows);
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
  path.toss_s = value.maybeNumber("toss_s", 0.1, 2.0).value_or(0.0);
  value.finish();
  return path;
}

std::map<std::string, std::vector<std::string>> readParts(JsonReader value) {
  std::map<std::string, std::vector<std::string>> parts;
  for (const auto& [part, who] : value.members()) parts[part] = who.texts();
  return parts;
}

/// "edge", or {"man": "wham", "while": "kicker"}: only as long as somebody plays that part.
std::vector<Reserve> readReserves(const JsonReader& value) {
  static const std::vector<std::string> men = {"edge", "back_edge", "b1", "trap", "wham"};
  std::vector<Reserve> reserves;
  for (JsonReader man : value.items()) {
    if (man.isText()) {
      reserves.push_back({man.asWord(men), ""});
      continue;
    }
    reserves.push_back({man.word("man", men), man.text("while")});
    man.finish();
  }
  return reserves;
}

std::map<SnapKind, BallPath> readPaths(JsonReader value, bool all) {
  std::map<SnapKind, BallPath> paths;
  for (const auto& [name, snap] : kSnaps) {
    if (all || value.has(name)) paths[snap] = readPath(value.child(name));
  }
  value.finish();
  return paths;
}

/// "under_center": "pistol": who lines up under centre moves back for this scheme.
std::map<SnapKind, SnapKind> readSnaps(JsonReader value) {
  std::map<SnapKind, SnapKind> snaps;
  for (const auto& [name, snap] : kSnaps) {
    if (const auto to = value.maybeChild(name)) snaps[snap] = choice(*to, kSnaps);
  }
  value.finish();
  return snaps;
}

ReadPlay readRead(JsonReader value) {
  ReadPlay read;
  read.who = value.word("man", targetWords());
  read.keeps_if_wide = value.word("keeps_if", {"widens", "closes"}) == "widens";
  read.keep_aim_x = value.number("keep_aim_x", -15.0, 15.0);
  value.finish();
  return read;
}

SchemeChange readChange(JsonReader value) {
  SchemeChange change;
  if (const auto jobs = value.maybeChild("jobs")) change.jobs = readJobs(*jobs);
  if (const auto parts = value.maybeChild("parts")) change.parts = readParts(*parts);
  if (const auto carriers = value.maybeChild("carriers")) change.carriers = carriers->texts();
  if (const auto reserves = value.maybeChild("reserves")) change.reserves = readReserves(*reserves);
  if (const auto paths = value.maybeChild("paths")) change.paths = readPaths(*paths, false);
  if (const auto snaps = value.maybeChild("snaps")) change.snaps = readSnaps(*snaps);
  if (const auto read = value.maybeChild("read")) change.read = readRead(*read);
  change.aim_x = value.maybeNumber("aim_x", -15.0, 15.0);
  change.patient = value.maybeFlag("patient");
  change.bends = value.maybeFlag("bends");
  value.finish();
  return change;
}

Scheme readScheme(JsonReader value) {
  Scheme scheme;
  scheme.id = value.text("id");
  scheme.name = value.text("name");
  if (const auto aliases = value.maybeChild("aliases")) scheme.aliases = aliases->texts();
  scheme.carriers = value.child("carriers").texts();
  scheme.parts = readParts(value.child("parts"));
  scheme.jobs = readJobs(value.child("jobs"));
  scheme.reserves = readReserves(value.child("reserves"));
  if (const auto sniffer = value.maybeChild("sniffer_back")) scheme.sniffer_back = sniffer->texts();
  scheme.paths = readPaths(value.child("paths"), true);
  if (const auto snaps = value.maybeChild("snaps")) scheme.snaps = readSnaps(*snaps);
  if (const auto read = value.maybeChild("read")) scheme.read = readRead(*read);
  scheme.aim_x = value.number("aim_x", -15.0, 15.0);
  scheme.patient = value.flag("patient");
  scheme.bends = value.flag("bends");
  JsonReader variants = value.child("variants");
  for (const auto& [name, change] : variants.members()) scheme.variants[name] = readChange(change);
  value.finish();
  return scheme;
}

Group groupFrom(const JsonReader& value) {
  const auto group = groupNamed(value.asText());
  if (!group) value.refuse("a group: receiver, back, fullback, tight_end");
  return *group;
}

Motion readMotion(JsonReader value) {
  static constexpr std::pair<const char*, MotionPath> kMotionPaths[] = {
      {"across_front", MotionPath::across_front},
      {"behind_back", MotionPath::behind_back},
      {"other_side", MotionPath::other_side},
      {"trade", MotionPath::trade}};
  Motion motion;
  motion.id = value.text("id");
  motion.name = value.text("name");
  if (const auto aliases = value.maybeChild("aliases")) motion.aliases = aliases->texts();
  for (const JsonReader& who : value.child("who").items()) motion.who.push_back(groupFrom(who));
  motion.moves = choice(value.child("moves"), kMotionPaths);
  motion.spot = {value.number("x", 0.0, 15.0), value.number("y", -8.0, 0.0)};
  motion.speed_yps = value.number("speed_yps", 0.0, 10.0);
  motion.backers_follow_yd = value.maybeNumber("backers_follow_yd", 0.0, 2.0).value_or(0.0);
  value.finish();
  return motion;
}

}  // namespace

void readMotions(JsonReader file, Library& library) {
  for (const JsonReader& value : file.child("motions").items()) library.motions.push_back(readMotion(value));
  file.finish();
}

void readSchemes(JsonReader file, Library& library) {
  for (const JsonReader& value : file.child("schemes").items()) library.schemes.push_back(readScheme(value));
  file.finish();
}

}  // namespace gapsound
