#pragma once
#include <limits>
#include <nlohmann/json_fwd.hpp>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace gapsound {

/// The document in a file. Error(noAccess) when it cannot be read, InputError when it is not JSON or is
/// nested deeper than 32 levels.
[[nodiscard]] nlohmann::json readJson(const std::string& file);
[[nodiscard]] nlohmann::json parsedJson(const std::string& file, const std::string& content);

/// Strict reading of one JSON value: every getter throws InputError with file, JSON path, value and what is
/// allowed. Getters by key remember the key; finish() refuses the keys nobody asked for.
/// Lists and tables have at most 10,000 entries, texts 10,000 bytes. Borrows the document, which must outlive
/// it.
class JsonReader {
 public:
  static constexpr double kAny = std::numeric_limits<double>::max();

  JsonReader(std::string file, const nlohmann::json& value, std::string path = "");

  // Members of an object. Required ones throw when missing.
  [[nodiscard]] bool has(const std::string& key) const;
  [[nodiscard]] JsonReader child(const std::string& key);
  [[nodiscard]] double number(const std::string& key, double low = -kAny, double high = kAny);
  [[nodiscard]] int whole(const std::string& key, int low, int high);
  [[nodiscard]] bool flag(const std::string& key);
  [[nodiscard]] std::string text(const std::string& key);
  /// A text that must be one of `words`.
  [[nodiscard]] std::string word(const std::string& key, const std::vector<std::string>& words);

  // The same, empty when the key is absent.
  [[nodiscard]] std::optional<JsonReader> maybeChild(const std::string& key);
  [[nodiscard]] std::optional<double> maybeNumber(const std::string& key, double low = -kAny,
                                                  double high = kAny);
  [[nodiscard]] std::optional<int> maybeWhole(const std::string& key, int low, int high);
  [[nodiscard]] std::optional<bool> maybeFlag(const std::string& key);
  [[nodiscard]] std::optional<std::string> maybeText(const std::string& key);
  [[nodiscard]] std::optional<std::string> maybeWord(const std::string& key,
                                                     const std::vector<std::string>& words);

  // This value itself.
  [[nodiscard]] double asNumber(double low = -kAny, double high = kAny) const;
  [[nodiscard]] int asWhole(int low, int high) const;
  [[nodiscard]] bool asFlag() const;
  [[nodiscard]] std::string asText() const;
  [[nodiscard]] std::string asWord(const std::vector<std::string>& words) const;
  [[nodiscard]] bool isObject() const;
  [[nodiscard]] bool isArray() const;
  [[nodiscard]] bool isText() const;
  [[nodiscard]] bool isNumber() const;
  /// Elements of an array, in order.
  [[nodiscard]] std::vector<JsonReader> items() const;
  /// Members of an object used as a table, in order of their names. Marks them all as asked for.
  [[nodiscard]] std::vector<std::pair<std::string, JsonReader>> members();
  [[nodiscard]] std::vector<std::string> texts() const;

  /// Refuses keys of this object that no getter asked for, with the nearest key that was.
  void finish() const;
  /// Throws InputError about this value; `value` is the value as written.
  [[noreturn]] void refuse(const std::string& allowed) const;
  [[noreturn]] void refuse(const std::string& value, const std::string& allowed) const;

  [[nodiscard]] const std::string& file() const { return file_; }
  [[nodiscard]] std::string path() const { return path_.empty() ? "/" : path_; }
  [[nodiscard]] const nlohmann::json& value() const { return *value_; }

 private:
  const nlohmann::json* find(const std::string& key);
  void refuseLength() const;

  std::string file_, path_;
  const nlohmann::json* value_;
  std::vector<std::string> asked_;
};

}  // namespace gapsound
