#include "football/vocabulary.hpp"

#include "base/nearest.hpp"

namespace gapsound {
namespace {

bool partOfWord(char c) { return (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9'); }

}  // namespace

const std::string& Vocabulary::shown(const std::string& id) const {
  const auto found = words_.find(id);
  return found == words_.end() ? id : found->second;
}

const std::string& Vocabulary::meant(const std::string& word) const {
  for (const auto& [id, own] : words_) {
    if (sameName(own, word)) return id;
  }
  return word;
}

std::string Vocabulary::told(const std::string& sentence) const {
  std::string out, word;
  for (const char c : sentence + " ") {
    if (partOfWord(c)) {
      word += c;
      continue;
    }
    out += shown(word) + c;
    word.clear();
  }
  out.pop_back();
  return out;
}

}  // namespace gapsound
