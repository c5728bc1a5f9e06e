#pragma once
#include <string>
#include <utility>
#include <vector>

#include "football/library.hpp"
#include "scenario/charting.hpp"

namespace gapsound {

/// How the staff's table speaks: pairs of our word and theirs.
struct ChartingWords {
  std::vector<std::pair<std::string, std::string>> columns;  // "formation", "Their set"
  std::vector<std::pair<std::string, std::string>> names;    // "F04", "TREY": formations, plays, variants
};
/// "formation=Their set", split; InputError for a text without "=". `option` is for messages.
[[nodiscard]] std::pair<std::string, std::string> wordPair(const std::string& text,
                                                           const std::string& option);

struct Charting {
  struct Unreadable {
    std::size_t row = 0;  // of the table, from 1, the header not counted
    std::string why;      // one line: column, value, what is allowed
  };
  std::size_t rows = 0, passes = 0;
  std::vector<ChartedRun> runs;
  std::vector<Unreadable> unreadable;  // rows = runs + passes + unreadable
};

/// Reads a breakdown as the staff charts it, columns in any order: formation, play, side and gain are needed,
/// type (run or pass), variant, strength and hash are used where they are given. Columns and words have the
/// other spellings of assets/charting.json. A row that cannot be read is listed with its reason.
/// Throws InputError for a missing column or a table that is none, Error(noAccess) when it cannot be read.
[[nodiscard]] Charting readCharting(const std::string& file, const ChartingWords& words,
                                    const Library& library);

}  // namespace gapsound
