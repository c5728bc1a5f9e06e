#include "io/plan_file.hpp"

#include <fmt/format.h>

#include <nlohmann/json.hpp>

#include "io/atomic_file.hpp"
#include "io/defense_file.hpp"
#include "io/scenario_parts.hpp"

namespace gapsound {
namespace {

using Json = nlohmann::ordered_json;

constexpr double kLongestPeriod = 240.0;  // minutes

std::string runName(const OffensePlan& offense) {
  const std::string variant = offense.variant == "base" ? "" : " " + offense.variant;
  return fmt::format("{} {}{} {}", offense.formation, offense.scheme, variant, offense.direction);
}

PlanRun runFrom(JsonReader place) {
  PlanRun run;
  run.offense = readOffense(place);
  run.field = readField(place);
  const auto name = place.maybeChild("name");
  run.name = name ? filledText(*name) : runName(run.offense);
  run.share = place.maybeNumber("share", 0.0, 1.0).value_or(run.share);
  run.seen = place.maybeWhole("seen", 0, 10000).value_or(run.seen);
  run.gain = place.maybeNumber("gain", -99.0, 99.0).value_or(run.gain);
  run.thin = place.maybeFlag("thin").value_or(run.thin);
  run.note = place.maybeText("note").value_or(run.note);
  place.finish();
  return run;
}

PlanCall callFrom(const JsonReader& entry) {
  const DefensePlace defense(entry);
  JsonReader place = defense.reader();
  PlanCall call;
  call.defense = readDefense(place);
  const auto name = place.maybeChild("name");
  call.name = name ? filledText(*name)
                   : fmt::format("{} {} {}", call.defense.front, call.defense.shell, call.defense.structure);
  place.finish();
  return call;
}

PracticeDay dayFrom(JsonReader place) {
  PracticeDay day;
  day.day = filledText(place.child("day"));
  day.reps = place.maybeWhole("reps", 1, 100).value_or(day.reps);
  day.minutes = place.maybeNumber("minutes", 1.0, kLongestPeriod).value_or(day.minutes);
  day.contact = place.maybeWord("contact", {"air", "bag", "control", "thud", "live"}).value_or(day.contact);
  day.other_full_contact_minutes = place.maybeNumber("other_full_contact_minutes", 0.0, kLongestPeriod)
                                       .value_or(day.other_full_contact_minutes);
  place.finish();
  return day;
}

std::vector<JsonReader> filledList(const JsonReader& place) {
  auto items = place.items();
  if (items.empty()) place.refuse("[]", "a list with at least one entry");
  return items;
}

Plan planFrom(JsonReader root) {
  Plan plan;
  static_cast<void>(root.maybeText("$schema"));
  plan.format = root.whole("gapsound", 1, 1);
  plan.title = filledText(root.child("title"));
  plan.level = readLevel(root);
  plan.clock = root.maybeWord("clock", {"hand", "electronic"}).value_or(plan.clock);
  for (const JsonReader& item : filledList(root.child("runs"))) plan.runs.push_back(runFrom(item));
  for (const JsonReader& item : filledList(root.child("calls"))) plan.calls.push_back(callFrom(item));
  if (auto players = root.maybeChild("players"))
    for (const auto& [id, settings] : players->members()) plan.players[id] = manFrom(settings);
  if (const auto practice = root.maybeChild("practice"))
    for (const JsonReader& item : practice->items()) plan.practice.push_back(dayFrom(item));
  root.finish();
  return plan;
}

Json written(const PlanRun& run) {
  Json object = {{"name", run.name}};
  object.update(written(run.offense));
  object.update(written(run.field));
  if (run.share > 0.0) object["share"] = run.share;
  if (run.seen > 0) object["seen"] = run.seen, object["gain"] = run.gain;
  if (run.thin) object["thin"] = true;
  if (!run.note.empty()) object["note"] = run.note;
  return object;
}

Json written(const PlanCall& call) {
  Json object = {{"name", call.name}};
  object.update(written(call.defense));
  return object;
}

Json written(const PracticeDay& day) {
  return {{"day", day.day},
          {"reps", day.reps},
          {"minutes", day.minutes},
          {"contact", day.contact},
          {"other_full_contact_minutes", day.other_full_contact_minutes}};
}

}  // namespace

Plan parsePlan(std::string_view text, const std::string& source, const Changes& changes) {
  auto document = parsedJson(source, std::string(text));
  applyChanges(document, changes);
  Plan plan = planFrom(JsonReader(source, document));
  plan.source = source;
  return plan;
}

Plan readPlan(const std::string& file, const Changes& changes) {
  return parsePlan(readWhole(file), file, changes);
}

std::string toJson(const Plan& plan) {
  Json document = {
      {"gapsound", plan.format}, {"title", plan.title}, {"level", wordOf(plan.level)}, {"clock", plan.clock}};
  for (const PlanRun& run : plan.runs) document["runs"].push_back(written(run));
  for (const PlanCall& call : plan.calls) document["calls"].push_back(written(call));
  for (const auto& [id, man] : plan.players) document["players"][id] = written(man);
  for (const PracticeDay& day : plan.practice) document["practice"].push_back(written(day));
  return document.dump(2) + "\n";
}

bool isPlanFile(const std::string& file) {
  const auto document = readJson(file);
  return document.is_object() && document.contains("runs") && document.contains("calls");
}

}  // namespace gapsound
