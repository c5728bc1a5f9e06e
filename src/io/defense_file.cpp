#include "io/defense_file.hpp"

#include <filesystem>

#include "base/error.hpp"
#include "io/scenario_parts.hpp"

namespace gapsound {
namespace {

namespace fs = std::filesystem;
using Json = nlohmann::json;

Json checkedDocument(const std::string& file, DefensePlan& plan) {
  Json document = readJson(file);
  JsonReader root(file, document);
  static_cast<void>(root.maybeText("$schema"));
  static_cast<void>(root.whole("gapsound", 1, 1));
  static_cast<void>(root.maybeText("title"));
  plan = readDefense(root);
  root.finish();
  for (const char* key : {"$schema", "gapsound", "title"}) document.erase(key);
  return document;
}

bool leavesFolder(const fs::path& named) {
  return named.is_absolute() || *named.lexically_normal().begin() == "..";
}

/// A file named in a document lies where the document says, seen from the document's folder, and never
/// outside it: a document may come from a stranger.
std::string besideDocument(const JsonReader& place) {
  const std::string named = filledText(place);
  if (leavesFolder(named))
    throw InputError(place.file(), place.path(), named, "a file in the folder of this one or below");
  return (fs::path(place.file()).parent_path() / named).lexically_normal().string();
}

/// Objects member by member, everything else as `own` has it.
void layOver(Json& whole, const Json& own) {
  if (!whole.is_object() || !own.is_object()) {
    whole = own;
    return;
  }
  for (const auto& [key, value] : own.items()) {
    if (whole.contains(key))
      layOver(whole[key], value);
    else
      whole[key] = value;
  }
}

/// Members of `plan` that `kept` has with the same value are dropped.
nlohmann::ordered_json without(const nlohmann::ordered_json& plan, const nlohmann::ordered_json& kept) {
  nlohmann::ordered_json rest = nlohmann::ordered_json::object();
  for (const auto& [key, value] : plan.items()) {
    if (kept.contains(key) && kept[key] == value) continue;
    rest[key] = value;
  }
  return rest;
}

}  // namespace

DefensePlan readDefenseFile(const std::string& file) {
  DefensePlan plan;
  static_cast<void>(checkedDocument(file, plan));
  return plan;
}

DefensePlace::DefensePlace(const JsonReader& place)
    : file_(place.file()), path_(place.path()), whole_(place.value()) {
  if (!whole_.is_object() || !whole_.contains("file")) return;
  JsonReader here(file_, whole_, path_);
  kept_.emplace();
  kept_->file = besideDocument(here.child("file"));
  Json own = whole_;
  own.erase("file");
  whole_ = checkedDocument(kept_->file, kept_->plan);
  layOver(whole_, own);
}

nlohmann::ordered_json writtenOver(const KeptDefense& kept, const DefensePlan& plan,
                                   const std::string& document) {
  const auto now = written(plan), then = written(kept.plan);
  const auto named = fs::path(kept.file).lexically_proximate(fs::path(document).parent_path());
  if (leavesFolder(named)) return now;
  nlohmann::ordered_json object = {{"file", named.string()}};
  auto rest = without(now, then);
  if (rest.contains("call")) {
    rest["call"] = without(now["call"], then["call"]);
    if (!now["call"].contains("checks") && then["call"].contains("checks"))
      rest["call"]["checks"] = Json::array();
  }
  object.update(rest);
  return object;
}

}  // namespace gapsound
