#pragma once
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace gapsound {

/// A table with a header line, as spreadsheets save it (RFC 4180): comma, semicolon or tab between cells,
/// text in double quotes, either end of line, a byte order mark or none. Empty lines are left out. With
/// semicolons or tabs a decimal comma is read as a point. Column names are compared without case, blanks
/// count as "_". Text that is no UTF-8 is taken for ISO 8859-1, as older spreadsheets save it.
class CsvTable {
 public:
  /// `file` is for messages. Throws InputError for a table without a header, a quote that is never closed, a
  /// column named twice, a row with more cells than the header, more than 100,000 rows or 256 columns.
  CsvTable(std::string file, std::string_view content);

  [[nodiscard]] const std::vector<std::string>& columns() const { return columns_; }
  [[nodiscard]] std::size_t rows() const { return rows_.size(); }
  [[nodiscard]] bool has(std::string_view column) const { return place(column).has_value(); }
  /// The cell without blanks around it; "" where the column or the cell is missing.
  [[nodiscard]] std::string text(std::size_t row, std::string_view column) const;
  /// Empty for an empty cell; InputError for text and for numbers outside [low, high].
  [[nodiscard]] std::optional<double> number(std::size_t row, std::string_view column, double low,
                                             double high) const;
  /// The word in lower case, empty for an empty cell; InputError for any but `words`.
  [[nodiscard]] std::optional<std::string> word(std::size_t row, std::string_view column,
                                                const std::vector<std::string>& words) const;
  /// Throws InputError "FILE: line L, column C: VALUE; allowed: ...".
  [[noreturn]] void refuse(std::size_t row, std::string_view column, const std::string& allowed) const;
  /// Throws InputError for the first of `needed` that is no column, and for the first column that is neither
  /// in `needed` nor in `known`, with the nearest one that is.
  void requireColumns(const std::vector<std::string>& needed, const std::vector<std::string>& known) const;

 private:
  struct Row {
    int line = 0;  // of the file, from 1
    std::vector<std::string> cells;
  };
  [[nodiscard]] std::optional<std::size_t> place(std::string_view column) const;
  void take(Row row);

  std::string file_;
  bool decimal_comma_ = false;
  std::vector<std::string> columns_;  // as written
  std::vector<Row> rows_;
};

/// One line of a comma-separated table, quoted where needed, with its end of line.
[[nodiscard]] std::string csvLine(const std::vector<std::string>& cells);

}  // namespace gapsound
