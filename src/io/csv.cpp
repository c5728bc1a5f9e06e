#include "io/csv.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <utility>

#include "base/error.hpp"
#include "base/nearest.hpp"
#include "base/text.hpp"

namespace gapsound {
namespace {

constexpr std::size_t kMostColumns = 256, kMostRows = 100000;

std::string trimmed(std::string_view text) {
  const auto from = text.find_first_not_of(" \t\r\n");
  if (from == std::string_view::npos) return "";
  return std::string(text.substr(from, text.find_last_not_of(" \t\r\n") - from + 1));
}

std::string comparable(std::string_view name) {
  std::string key = lowered(trimmed(name));
  std::replace(key.begin(), key.end(), ' ', '_');
  return key;
}

/// The separator the header uses: whichever of the three it has most of.
char separatorOf(std::string_view content) {
  const auto header = content.substr(0, content.find('\n'));
  const auto count = [&](char c) { return std::count(header.begin(), header.end(), c); };
  char most = ',';
  for (const char c : {';', '\t'})
    if (count(c) > count(most)) most = c;
  return most;
}

/// Walks over the cells of a table.
class Scanner {
 public:
  Scanner(const std::string& file, std::string_view content, char separator)
      : file_(file), rest_(content), separator_(separator) {}
  [[nodiscard]] bool done() const { return rest_.empty(); }
  [[nodiscard]] int line() const { return line_; }

  std::vector<std::string> row() {
    std::vector<std::string> cells;
    do cells.push_back(trimmed(cell()));
    while (takeIf(separator_));
    takeIf('\r');
    takeIf('\n');
    return cells;
  }

 private:
  bool takeIf(char c) {
    if (rest_.empty() || rest_.front() != c) return false;
    take();
    return true;
  }
  char take() {
    const char c = rest_.front();
    rest_.remove_prefix(1);
    line_ += c == '\n';
    return c;
  }
  [[nodiscard]] bool ends() const {
    return rest_.empty() || rest_.front() == separator_ || rest_.front() == '\n' ||
           rest_.substr(0, 2) == "\r\n";
  }
  std::string cell() {
    std::string text;
    bool blank = true;
    while (!ends()) {
      if (blank && takeIf('"')) {
        text = quoted();
        blank = trimmed(text).empty();
        continue;
      }
      text += take();
      blank = blank && trimmed(text.substr(text.size() - 1)).empty();
    }
    return text;
  }
  std::string quoted() {
    const int from = line_;
    std::string text;
    while (!rest_.empty()) {
      const char c = take();
      if (c != '"')
        text += c;
      else if (takeIf('"'))
        text += '"';
      else
        return text;
    }
    throw InputError(file_, fmt::format("line {}", from), "a quote that is never closed", "\"text\"");
  }

  const std::string& file_;
  std::string_view rest_;
  char separator_;
  int line_ = 1;
};

bool allEmpty(const std::vector<std::string>& cells) {
  return std::all_of(cells.begin(), cells.end(), [](const auto& cell) { return cell.empty(); });
}

}  // namespace

CsvTable::CsvTable(std::string file, std::string_view content) : file_(std::move(file)) {
  if (content.substr(0, 3) == "\xef\xbb\xbf") content.remove_prefix(3);
  if (content.find('\0') != std::string_view::npos)
    throw InputError(file_, "/", "no text of one byte a letter", "CSV in UTF-8");
  const std::string unicode = isUtf8(content) ? "" : fromLatin1(content);
  if (!unicode.empty()) content = unicode;
  const char separator = separatorOf(content);
  decimal_comma_ = separator != ',';
  Scanner scanner(file_, content, separator);
  while (!scanner.done()) {
    const int line = scanner.line();
    auto cells = scanner.row();
    if (!allEmpty(cells)) take({line, std::move(cells)});
  }
  if (columns_.empty()) throw InputError(file_, "line 1", "nothing", "a line with the names of the columns");
}

void CsvTable::take(Row row) {
  if (row.cells.size() > kMostColumns || rows_.size() == kMostRows)
    throw InputError(file_, fmt::format("line {}", row.line), "too many cells",
                     fmt::format("at most {} rows of {} cells", kMostRows, kMostColumns));
  if (columns_.empty()) {
    for (auto& name : row.cells) {
      if (!name.empty() && has(name))
        throw InputError(file_, fmt::format("line {}", row.line), name, "every column once");
      columns_.push_back(std::move(name));
    }
    return;
  }
  while (row.cells.size() > columns_.size() && row.cells.back().empty()) row.cells.pop_back();
  if (row.cells.size() > columns_.size())
    throw InputError(file_, fmt::format("line {}", row.line), fmt::format("{} cells", row.cells.size()),
                     fmt::format("at most {}, as the header has", columns_.size()));
  rows_.push_back(std::move(row));
}

std::optional<std::size_t> CsvTable::place(std::string_view column) const {
  const std::string key = comparable(column);
  const auto found = std::find_if(columns_.begin(), columns_.end(),
                                  [&](const auto& name) { return comparable(name) == key; });
  if (found == columns_.end()) return std::nullopt;
  return static_cast<std::size_t>(found - columns_.begin());
}

std::string CsvTable::text(std::size_t row, std::string_view column) const {
  const auto at = place(column);
  const auto& cells = rows_.at(row).cells;
  return at && *at < cells.size() ? cells[*at] : "";
}

std::optional<double> CsvTable::number(std::size_t row, std::string_view column, double low,
                                       double high) const {
  std::string cell = text(row, column);
  if (cell.empty()) return std::nullopt;
  if (decimal_comma_) std::replace(cell.begin(), cell.end(), ',', '.');
  double value = 0.0;
  const char* const end = cell.data() + cell.size();
  const auto [read, fault] = std::from_chars(cell.data(), end, value);
  if (fault != std::errc{} || read != end || !std::isfinite(value) || value < low || value > high)
    refuse(row, column,
           fmt::format("a number {:g} to {:g}{}", low, high,
                       cell.find(',') == std::string::npos ? "" : ", with a point for the comma"));
  return value;
}

std::optional<std::string> CsvTable::word(std::size_t row, std::string_view column,
                                          const std::vector<std::string>& words) const {
  const std::string cell = lowered(text(row, column));
  if (cell.empty()) return std::nullopt;
  if (std::find(words.begin(), words.end(), cell) == words.end())
    refuse(row, column, fmt::format("{}", fmt::join(words, ", ")));
  return cell;
}

void CsvTable::refuse(std::size_t row, std::string_view column, const std::string& allowed) const {
  const std::string cell = text(row, column);
  throw InputError(file_, fmt::format("line {}, column {}", rows_.at(row).line, column),
                   cell.empty() ? "nothing" : cell, allowed);
}

void CsvTable::requireColumns(const std::vector<std::string>& needed,
                              const std::vector<std::string>& known) const {
  for (const auto& column : needed)
    if (!has(column))
      throw InputError(file_, "line 1", "no column " + column, fmt::format("{}", fmt::join(columns_, ", ")));
  std::vector<std::string> all = needed;
  all.insert(all.end(), known.begin(), known.end());
  for (const auto& column : columns_) {
    const auto same = [&](const auto& name) { return comparable(name) == comparable(column); };
    if (!column.empty() && std::none_of(all.begin(), all.end(), same))
      throw InputError(file_, "line 1", "column " + column, nameHint(column, all));
  }
}

std::string csvLine(const std::vector<std::string>& cells) {
  std::string line;
  for (const auto& cell : cells) {
    if (!line.empty() || &cell != cells.data()) line += ',';
    if (cell.find_first_of(",;\t\"\r\n") == std::string::npos) {
      line += cell;
      continue;
    }
    line += '"';
    for (const char c : cell) line += c == '"' ? std::string("\"\"") : std::string(1, c);
    line += '"';
  }
  return line + '\n';
}

}  // namespace gapsound
