#include "base/nearest.hpp"

#include <algorithm>
#include <numeric>

namespace gapsound {

std::string lowered(std::string_view text) {
  std::string out(text);
  for (char& c : out) {
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  }
  return out;
}

bool sameName(std::string_view a, std::string_view b) { return lowered(a) == lowered(b); }

int editDistance(std::string_view a, std::string_view b) {
  const std::string left = lowered(a), right = lowered(b);
  std::vector<int> row(right.size() + 1);
  std::iota(row.begin(), row.end(), 0);
  for (std::size_t i = 1; i <= left.size(); ++i) {
    int diagonal = row[0];
    row[0] = static_cast<int>(i);
    for (std::size_t j = 1; j <= right.size(); ++j) {
      const int swapped = diagonal + (left[i - 1] == right[j - 1] ? 0 : 1);
      diagonal = row[j];
      row[j] = std::min({swapped, row[j] + 1, row[j - 1] + 1});
    }
  }
  return row.back();
}

std::vector<std::string> nearestNames(std::string_view text, const std::vector<std::string>& known,
                                      std::size_t most) {
  constexpr std::size_t kMostCompared = 64;
  text = text.substr(0, kMostCompared);
  std::vector<std::string> names = known;
  std::stable_sort(names.begin(), names.end(), [&](const std::string& a, const std::string& b) {
    return editDistance(text, a) < editDistance(text, b);
  });
  if (names.size() > most) names.resize(most);
  return names;
}

std::string nameHint(std::string_view text, const std::vector<std::string>& known) {
  constexpr std::size_t kShort = 12;
  const bool whole = known.size() <= kShort;
  std::string hint = whole ? "" : "nearest ";
  const auto names = whole ? known : nearestNames(text, known);
  for (std::size_t i = 0; i < names.size(); ++i) hint += (i ? ", \"" : "\"") + names[i] + '"';
  return whole ? hint : hint + " (of " + std::to_string(known.size()) + ")";
}

}  // namespace gapsound
