#include "io/charting_file.hpp"

#include <algorithm>
#include <map>
#include <nlohmann/json.hpp>

#include "base/error.hpp"
#include "base/nearest.hpp"
#include "io/assets.hpp"
#include "io/atomic_file.hpp"
#include "io/csv.hpp"
#include "io/json_reader.hpp"

namespace gapsound {
namespace {

using Spellings = std::map<std::string, std::vector<std::string>>;
constexpr double kLongestGain = 99.0;  // yd

Spellings spellingsFrom(JsonReader place) {
  Spellings spellings;
  for (const auto& [word, others] : place.members()) spellings[word] = others.texts();
  return spellings;
}

/// A table read by our names of its columns.
class Breakdown {
 public:
  Breakdown(const std::string& file, const ChartingWords& words, const Library& library)
      : table_(file, readWhole(file)), words_(words), library_(library), file_(file) {
    const std::string source = assetPath("charting.json");
    const auto document = readJson(source);
    JsonReader root(source, document);
    columns_ = spellingsFrom(root.child("columns"));
    values_ = spellingsFrom(root.child("words"));
    for (const char* needed : {"formation", "play", "side", "gain"})
      if (columnOf(needed).empty()) refuseMissing(needed);
  }

  Charting read() const {
    Charting charting;
    charting.rows = table_.rows();
    for (std::size_t row = 0; row < table_.rows(); ++row) {
      try {
        if (wordIn(row, "type", {"run", "pass"}, "run") == "pass")
          ++charting.passes;
        else
          charting.runs.push_back(runIn(row));
      } catch (const InputError& error) {
        charting.unreadable.push_back({row + 1, error.what()});
      }
    }
    return charting;
  }

 private:
  /// The table's own name of one of our columns; "" when it has none.
  [[nodiscard]] std::string columnOf(const std::string& ours) const {
    for (const auto& [our, theirs] : words_.columns)
      if (our == ours) return table_.has(theirs) ? theirs : "";
    if (table_.has(ours)) return ours;
    for (const std::string& other : columns_.at(ours))
      if (table_.has(other)) return other;
    return {};
  }
  [[noreturn]] void refuseMissing(const std::string& ours) const {
    std::string has;
    for (const std::string& column : table_.columns()) has += (has.empty() ? "" : ", ") + column;
    throw InputError(file_, "header", "no column " + ours,
                     "name yours with --columns " + ours + "=NAME; there are " + has);
  }
  [[nodiscard]] std::string cell(std::size_t row, const std::string& ours) const {
    const std::string column = columnOf(ours);
    return column.empty() ? "" : table_.text(row, column);
  }
  /// One of `allowed` in any of its spellings.
  [[nodiscard]] std::string wordIn(std::size_t row, const std::string& ours,
                                   const std::vector<std::string>& allowed,
                                   const std::string& otherwise) const {
    const std::string text = cell(row, ours);
    if (text.empty()) return otherwise;
    for (const std::string& word : allowed) {
      const auto& others = values_.at(word);
      const bool other =
          std::any_of(others.begin(), others.end(), [&](const auto& o) { return sameName(o, text); });
      if (other || sameName(word, text)) return word;
    }
    table_.refuse(row, columnOf(ours), nameHint(text, allowed));
  }
  [[nodiscard]] std::string ourName(const std::string& theirs) const {
    for (const auto& [our, their] : words_.names)
      if (sameName(their, theirs)) return our;
    return theirs;
  }
  [[nodiscard]] ChartedRun runIn(std::size_t row) const {
    ChartedRun run;
    const Formation* formation = findFormation(library_, ourName(cell(row, "formation")));
    if (formation == nullptr)
      table_.refuse(row, columnOf("formation"), nameHint(cell(row, "formation"), formationNames(library_)));
    const Scheme* scheme = findScheme(library_, ourName(cell(row, "play")));
    if (scheme == nullptr)
      table_.refuse(row, columnOf("play"), nameHint(cell(row, "play"), schemeNames(library_)));
    run.offense.formation = formation->id, run.offense.scheme = scheme->id;
    run.offense.variant = variantIn(row, *scheme);
    run.offense.direction = wordIn(row, "side", {"left", "right"}, "");
    if (run.offense.direction.empty()) table_.refuse(row, columnOf("side"), "left, right");
    run.offense.strength = wordIn(row, "strength", {"left", "right"}, "right");
    run.hash = wordIn(row, "hash", {"left_hash", "middle", "right_hash"}, "");
    const auto gain = table_.number(row, columnOf("gain"), -kLongestGain, kLongestGain);
    if (!gain) table_.refuse(row, columnOf("gain"), "a number");
    run.gain = *gain;
    return run;
  }
  [[nodiscard]] std::string variantIn(std::size_t row, const Scheme& scheme) const {
    const std::string text = cell(row, "variant");
    if (text.empty()) return "base";
    for (const std::string& name : variantNames(scheme))
      if (sameName(name, ourName(text))) return name;
    table_.refuse(row, columnOf("variant"), nameHint(text, variantNames(scheme)));
  }

  CsvTable table_;
  const ChartingWords& words_;
  const Library& library_;
  std::string file_;
  Spellings columns_, values_;
};

}  // namespace

std::pair<std::string, std::string> wordPair(const std::string& text, const std::string& option) {
  const auto at = text.find('=');
  if (at == std::string::npos || at == 0 || at + 1 == text.size())
    throw InputError("command line", option, text, "OURS=THEIRS");
  return {text.substr(0, at), text.substr(at + 1)};
}

Charting readCharting(const std::string& file, const ChartingWords& words, const Library& library) {
  return Breakdown(file, words, library).read();
}

}  // namespace gapsound
