#include <fmt/format.h>

#include <algorithm>
#include <nlohmann/json.hpp>

#include "base/nearest.hpp"
#include "io/library_parts.hpp"

namespace gapsound {
namespace {

void addAll(std::vector<std::string>& ids, const std::vector<std::string>& more) {
  for (const std::string& id : more) {
    if (std::find(ids.begin(), ids.end(), id) == ids.end()) ids.push_back(id);
  }
}

std::vector<std::string> menOf(const Library& library) {
  std::vector<std::string> ids;
  for (const Formation& formation : library.formations) {
    for (const FormationMan& man : formation.men) addAll(ids, {man.id});
  }
  for (const Front& front : library.fronts) {
    for (const FrontMan& man : front.men) addAll(ids, {man.id});
  }
  return ids;
}

/// Everything that may have a word of the coach's own.
std::vector<std::string> idsOf(const Library& library) {
  std::vector<std::string> ids;
  for (const auto& entry : library.formations) addAll(ids, {entry.id});
  for (const auto& entry : library.fronts) addAll(ids, {entry.id});
  for (const auto& entry : library.shells) addAll(ids, {entry.id});
  for (const auto& entry : library.schemes) addAll(ids, {entry.id});
  for (const auto& entry : library.motions) addAll(ids, {entry.id});
  for (const auto& scheme : library.schemes) addAll(ids, variantNames(scheme));
  for (const auto& front : library.fronts) addAll(ids, movementNames(front));
  addAll(ids, checkNames(library));
  addAll(ids, menOf(library));
  return ids;
}

template <class T>
void rename(std::vector<T>& entries, const Vocabulary& vocabulary) {
  for (T& entry : entries) {
    const std::string& word = vocabulary.shown(entry.id);
    if (word == entry.id) continue;
    entry.aliases.push_back(entry.name);
    entry.name = word;
  }
}

void requireNew(const JsonReader& place, const std::string& word, const std::vector<std::string>& taken) {
  const auto same = [&](const std::string& name) { return sameName(name, word); };
  if (word.empty() || std::any_of(taken.begin(), taken.end(), same))
    place.refuse(fmt::format("\"{}\"", word), "a word that nothing else is called by");
}

}  // namespace

void readVocabulary(JsonReader file, Library& library) {
  static_cast<void>(file.maybeText("$schema"));
  static_cast<void>(file.whole("gapsound", 1, 1));
  JsonReader words = file.child("words");
  const auto ids = idsOf(library);
  std::vector<std::string> taken = ids;
  for (const auto& [id, place] : words.members()) {
    if (std::find(ids.begin(), ids.end(), id) == ids.end()) place.refuse("\"" + id + "\"", nameHint(id, ids));
    const std::string word = place.asText();
    requireNew(place, word, taken);
    library.vocabulary.add(id, word);
    taken.push_back(word);
  }
  file.finish();
  rename(library.formations, library.vocabulary);
  rename(library.fronts, library.vocabulary);
  rename(library.shells, library.vocabulary);
  rename(library.schemes, library.vocabulary);
  rename(library.motions, library.vocabulary);
}

}  // namespace gapsound
