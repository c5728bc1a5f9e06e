#pragma once
#include "football/library.hpp"
#include "io/json_reader.hpp"

namespace gapsound {

// One file of the library each; what is read is added to the library. All throw InputError.
void readFormations(JsonReader file, Library& library);
void readFronts(JsonReader file, Library& library);
void readShells(JsonReader file, Library& library);
void readSchemes(JsonReader file, Library& library);
void readMotions(JsonReader file, Library& library);
void readBodies(JsonReader file, Library& library);
void readCalls(JsonReader file, Library& library);
void readFits(JsonReader file, Library& library);
void readPhrases(JsonReader file, Library& library);
/// After all others: names what they brought.
void readVocabulary(JsonReader file, Library& library);

/// A name a table must know, or InputError with the nearest ones.
template <class T, std::size_t N>
T choice(const JsonReader& value, const std::pair<const char*, T> (&table)[N]) {
  std::vector<std::string> words;
  for (const auto& [word, meaning] : table) words.emplace_back(word);
  const std::string text = value.asWord(words);
  for (const auto& [word, meaning] : table) {
    if (text == word) return meaning;
  }
  value.refuse("a known word");
}

}  // namespace gapsound
