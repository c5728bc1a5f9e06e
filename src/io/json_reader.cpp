#include "io/json_reader.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>
#include <string_view>

#include "base/error.hpp"
#include "base/nearest.hpp"
#include "io/atomic_file.hpp"

namespace gapsound {
namespace {

using Json = nlohmann::json;

constexpr int kMostDepth = 32;
constexpr std::size_t kMostEntries = 10000;  // of a list or an object
constexpr std::size_t kMostText = 10000;     // bytes

std::string quotedList(const std::vector<std::string>& words) {
  std::string list;
  for (const auto& word : words) list += (list.empty() ? "\"" : ", \"") + word + '"';
  return list;
}

std::string shortDump(const Json& value) {
  constexpr std::size_t kMost = 60;
  const std::string text = value.dump(-1, ' ', false, Json::error_handler_t::replace);
  return text.size() <= kMost ? text : text.substr(0, kMost) + "...";
}

std::string rangeWords(const char* kind, double low, double high) {
  if (low == -JsonReader::kAny && high == JsonReader::kAny) return kind;
  if (high == JsonReader::kAny) return fmt::format("{} from {}", kind, low);
  if (low == -JsonReader::kAny) return fmt::format("{} up to {}", kind, high);
  return fmt::format("{} {} to {}", kind, low, high);
}

/// A key as a step of a JSON pointer.
std::string pointerStep(const std::string& key) {
  std::string step;
  for (const char c : key) step += c == '~' ? "~0" : c == '/' ? "~1" : std::string(1, c);
  return step;
}

/// Deepest nesting of lists and objects in a text that may be JSON.
int depthOf(std::string_view text) {
  int depth = 0, deepest = 0;
  bool quoted = false;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char c = text[i];
    if (c == '"') quoted = !quoted;
    if (quoted && c == '\\') ++i;
    if (quoted) continue;
    if (c == '[' || c == '{') deepest = std::max(deepest, ++depth);
    if (c == ']' || c == '}') --depth;
  }
  return deepest;
}

}  // namespace

nlohmann::json parsedJson(const std::string& file, const std::string& content) {
  if (depthOf(content) > kMostDepth)
    throw InputError(file, "/", "nested too deep", fmt::format("at most {} levels", kMostDepth));
  try {
    return Json::parse(content);
  } catch (const Json::parse_error& e) {
    throw InputError(file, "/", fmt::format("broken at byte {}", e.byte), "complete JSON");
  } catch (const Json::out_of_range&) {
    throw InputError(file, "/", "a number without end", "numbers up to 1e308");
  }
}

nlohmann::json readJson(const std::string& file) { return parsedJson(file, readWhole(file)); }

JsonReader::JsonReader(std::string file, const Json& value, std::string path)
    : file_(std::move(file)), path_(std::move(path)), value_(&value) {}

bool JsonReader::has(const std::string& key) const { return value_->is_object() && value_->contains(key); }

const Json* JsonReader::find(const std::string& key) {
  if (!value_->is_object()) refuse("an object");
  asked_.push_back(key);
  const auto found = value_->find(key);
  return found == value_->end() ? nullptr : &*found;
}

std::optional<JsonReader> JsonReader::maybeChild(const std::string& key) {
  const Json* found = find(key);
  if (!found) return std::nullopt;
  return JsonReader(file_, *found, path_ + "/" + pointerStep(key));
}

JsonReader JsonReader::child(const std::string& key) {
  auto found = maybeChild(key);
  if (!found) throw InputError(file_, path_ + "/" + pointerStep(key), "missing", "a value is needed here");
  return *found;
}

double JsonReader::number(const std::string& key, double low, double high) {
  return child(key).asNumber(low, high);
}
int JsonReader::whole(const std::string& key, int low, int high) { return child(key).asWhole(low, high); }
bool JsonReader::flag(const std::string& key) { return child(key).asFlag(); }
std::string JsonReader::text(const std::string& key) { return child(key).asText(); }
std::string JsonReader::word(const std::string& key, const std::vector<std::string>& words) {
  return child(key).asWord(words);
}

std::optional<double> JsonReader::maybeNumber(const std::string& key, double low, double high) {
  const auto found = maybeChild(key);
  return found ? std::optional(found->asNumber(low, high)) : std::nullopt;
}
std::optional<int> JsonReader::maybeWhole(const std::string& key, int low, int high) {
  const auto found = maybeChild(key);
  return found ? std::optional(found->asWhole(low, high)) : std::nullopt;
}
std::optional<bool> JsonReader::maybeFlag(const std::string& key) {
  const auto found = maybeChild(key);
  return found ? std::optional(found->asFlag()) : std::nullopt;
}
std::optional<std::string> JsonReader::maybeText(const std::string& key) {
  const auto found = maybeChild(key);
  return found ? std::optional(found->asText()) : std::nullopt;
}
std::optional<std::string> JsonReader::maybeWord(const std::string& key,
                                                 const std::vector<std::string>& words) {
  const auto found = maybeChild(key);
  return found ? std::optional(found->asWord(words)) : std::nullopt;
}

double JsonReader::asNumber(double low, double high) const {
  const double value = value_->is_number() ? value_->get<double>() : std::nan("");
  if (!(low <= value && value <= high)) refuse(rangeWords("a number", low, high));
  return value;
}

int JsonReader::asWhole(int low, int high) const {
  const double value = value_->is_number() ? value_->get<double>() : std::nan("");
  if (!(low <= value && value <= high) || value != std::floor(value))
    refuse(rangeWords("a whole number", low, high));
  return static_cast<int>(value);
}

bool JsonReader::asFlag() const {
  if (!value_->is_boolean()) refuse("true or false");
  return value_->get<bool>();
}

std::string JsonReader::asText() const {
  if (!value_->is_string()) refuse("a text");
  const auto& text = value_->get_ref<const std::string&>();
  if (text.size() > kMostText) refuse(fmt::format("at most {} bytes", kMostText));
  return text;
}

std::string JsonReader::asWord(const std::vector<std::string>& words) const {
  if (!value_->is_string()) refuse(quotedList(words));
  auto text = value_->get<std::string>();
  if (std::find(words.begin(), words.end(), text) == words.end()) refuse(nameHint(text, words));
  return text;
}

bool JsonReader::isObject() const { return value_->is_object(); }
bool JsonReader::isArray() const { return value_->is_array(); }
bool JsonReader::isText() const { return value_->is_string(); }
bool JsonReader::isNumber() const { return value_->is_number(); }

std::vector<JsonReader> JsonReader::items() const {
  if (!value_->is_array()) refuse("a list");
  refuseLength();
  std::vector<JsonReader> found;
  for (std::size_t i = 0; i < value_->size(); ++i) {
    found.emplace_back(file_, (*value_)[i], path_ + "/" + std::to_string(i));
  }
  return found;
}

std::vector<std::pair<std::string, JsonReader>> JsonReader::members() {
  if (!value_->is_object()) refuse("an object");
  refuseLength();
  std::vector<std::pair<std::string, JsonReader>> found;
  for (const auto& [key, value] : value_->items()) {
    asked_.push_back(key);
    found.emplace_back(key, JsonReader(file_, value, path_ + "/" + pointerStep(key)));
  }
  return found;
}

std::vector<std::string> JsonReader::texts() const {
  std::vector<std::string> found;
  for (const auto& item : items()) found.push_back(item.asText());
  return found;
}

void JsonReader::refuseLength() const {
  if (value_->size() > kMostEntries)
    refuse(fmt::format("{} entries", value_->size()), fmt::format("at most {}", kMostEntries));
}

void JsonReader::finish() const {
  if (!value_->is_object()) refuse("an object");
  for (const auto& [key, value] : value_->items()) {
    if (std::find(asked_.begin(), asked_.end(), key) != asked_.end()) continue;
    throw InputError(file_, path_ + "/" + pointerStep(key), "unknown key", nameHint(key, asked_));
  }
}

void JsonReader::refuse(const std::string& allowed) const { refuse(shortDump(*value_), allowed); }

void JsonReader::refuse(const std::string& value, const std::string& allowed) const {
  throw InputError(file_, path(), value, allowed);
}

}  // namespace gapsound
