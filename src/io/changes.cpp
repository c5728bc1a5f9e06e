#include "io/changes.hpp"

#include <fmt/format.h>

#include <charconv>
#include <cmath>
#include <nlohmann/json.hpp>
#include <optional>
#include <sstream>
#include <string_view>

#include "base/error.hpp"

namespace gapsound {
namespace {

using Json = nlohmann::json;

constexpr const char* kSetForm = "PATH=VALUE, as in players.SS.downhill_yps=6";
constexpr const char* kFaultForm = "MAN=KIND[:AMOUNT], as in WE=kicked_out:1.5";
constexpr const char* kRangeForm = "PATH=LO:HI:STEP with STEP > 0, HI >= LO, at most 1000 values";
constexpr double kMostValues = 1000;

std::vector<std::string> parts(const std::string& text, char separator) {
  std::vector<std::string> found;
  std::istringstream in(text + separator);
  for (std::string part; std::getline(in, part, separator);) found.push_back(part);
  return found;
}

struct NameAndRest {
  std::string name, rest;
};

NameAndRest splitAtEquals(const std::string& option, const std::string& text, const char* form) {
  const auto at = text.find('=');
  if (at == std::string::npos || at == 0 || at + 1 == text.size()) {
    throw InputError("options", option, text.empty() ? "nothing" : text, form);
  }
  return {text.substr(0, at), text.substr(at + 1)};
}

std::optional<double> numberIn(std::string_view text) {
  double value = 0.0;
  const auto [end, fault] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (fault != std::errc{} || end != text.data() + text.size() || !std::isfinite(value)) return std::nullopt;
  return value;
}

Json& stepInto(Json& place, const std::string& key, const std::string& text) {
  if (place.is_array()) {
    const auto index = numberIn(key);
    if (index && *index >= 0 && *index < static_cast<double>(place.size())) {
      return place[static_cast<std::size_t>(*index)];
    }
  }
  if (key.empty() || !(place.is_object() || place.is_null())) {
    throw InputError("options", "--set", text, kSetForm);
  }
  return place[key];
}

/// "defense.structure" is short for "defense.call.structure", and so for every key of the call.
std::string fullPath(const std::string& path) {
  constexpr std::string_view kDefense = "defense.";
  for (const auto* key :
       {"structure", "strength", "checks", "movement", "bs_backer", "overlap", "force", "key", "mix"}) {
    const std::string full = std::string(kDefense) + "call." + key;
    const std::string brief = std::string(kDefense) + key;
    if (path == brief || path.rfind(brief + ".", 0) == 0) return full + path.substr(brief.size());
  }
  return path;
}

void applySet(Json& document, const std::string& text) {
  const auto [path, value] = splitAtEquals("--set", text, kSetForm);
  Json* place = &document;
  for (const auto& key : parts(fullPath(path), '.')) place = &stepInto(*place, key, text);
  const Json parsed = Json::parse(value, nullptr, false);
  *place = parsed.is_discarded() ? Json(value) : parsed;
}

void applyFault(Json& document, const std::string& text) {
  const auto [man, rest] = splitAtEquals("--fault", text, kFaultForm);
  const auto colon = rest.find(':');
  Json fault = {{"player", man}, {"kind", rest.substr(0, colon)}};
  if (colon != std::string::npos) {
    const auto amount = numberIn(std::string_view(rest).substr(colon + 1));
    if (!amount) throw InputError("options", "--fault", text, kFaultForm);
    fault["amount"] = *amount;
  }
  document["faults"].push_back(fault);
}

}  // namespace

void applyChanges(nlohmann::json& document, const Changes& changes) {
  if (!document.is_object()) return;  // the checked reading refuses it with its own words
  for (const auto& text : changes.sets) applySet(document, text);
  if (document.contains("faults") && !document["faults"].is_array()) return;
  for (const auto& text : changes.faults) applyFault(document, text);
}

Sweep expandRange(const std::string& text) {
  const auto [path, rest] = splitAtEquals("--over", text, kRangeForm);
  const auto numbers = parts(rest, ':');
  if (numbers.size() != 3) throw InputError("options", "--over", text, kRangeForm);
  const auto low = numberIn(numbers[0]);
  const auto high = numberIn(numbers[1]);
  const auto step = numberIn(numbers[2]);
  const bool sound =
      low && high && step && *step > 0 && *high >= *low && (*high - *low) / *step < kMostValues;
  if (!sound) throw InputError("options", "--over", text, kRangeForm);
  Sweep sweep{path, {}};
  const auto count = std::lround((*high - *low) / *step) + 1;
  for (long k = 0; k < count; ++k) {
    sweep.values.push_back(std::round((*low + static_cast<double>(k) * *step) * 1e9) / 1e9);
  }
  return sweep;
}

std::string settingText(const std::string& path, double value) { return fmt::format("{}={}", path, value); }

}  // namespace gapsound
