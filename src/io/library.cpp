#include "io/library.hpp"

#include <cstdlib>
#include <nlohmann/json.hpp>
#include <utility>

#include "base/nearest.hpp"
#include "io/json_reader.hpp"
#include "io/library_parts.hpp"

namespace gapsound {
namespace {

using Part = void (*)(JsonReader, Library&);

constexpr std::pair<const char*, Part> kParts[] = {
    {"formations.json", readFormations}, {"fronts.json", readFronts},   {"shells.json", readShells},
    {"schemes.json", readSchemes},       {"motions.json", readMotions}, {"bodies.json", readBodies},
    {"calls.json", readCalls},           {"fits.json", readFits},       {"phrases.json", readPhrases}};

}  // namespace

Library readLibrary(const std::string& assetsDir) {
  Library library;
  for (const auto& [name, read] : kParts) {
    const std::string file = assetsDir + "/library/" + name;
    const nlohmann::json document = readJson(file);
    read(JsonReader(file, document), library);
  }
  const char* own = std::getenv("GAPSOUND_VOCABULARY");
  const std::string words = own != nullptr ? own : assetsDir + "/library/vocabulary.json";
  const nlohmann::json document = readJson(words);
  readVocabulary(JsonReader(words, document), library);
  return library;
}

}  // namespace gapsound
