#pragma once
#include <map>
#include <string>

namespace gapsound {

/// The coach's own words for ids of the library: formations, fronts, shells, schemes, variants, motions,
/// movements, checks and men. Shown in place of the id and understood wherever a file may use the id.
class Vocabulary {
 public:
  void add(const std::string& id, const std::string& word) { words_[id] = word; }
  /// The coach's word, or the id itself where he has none.
  [[nodiscard]] const std::string& shown(const std::string& id) const;
  /// The id behind a word of his, whatever the case; anything else unchanged.
  [[nodiscard]] const std::string& meant(const std::string& word) const;
  /// A sentence with every id in it that stands as a word of its own replaced.
  [[nodiscard]] std::string told(const std::string& sentence) const;
  [[nodiscard]] const std::map<std::string, std::string>& words() const { return words_; }

 private:
  std::map<std::string, std::string> words_;  // id -> word
};

}  // namespace gapsound
