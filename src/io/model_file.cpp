#include "io/model_file.hpp"

#include <fmt/format.h>

#include <nlohmann/json.hpp>
#include <regex>

#include "base/error.hpp"
#include "io/json_reader.hpp"

namespace gapsound {
namespace {

double valueFrom(JsonReader entry) {
  const double low = entry.number("low");
  const double high = entry.number("high");
  const double value = entry.number("value", low, high);
  for (const auto* words : {"unit", "source"}) static_cast<void>(entry.text(words));
  static_cast<void>(entry.maybeText("fitted_to"));
  entry.finish();
  return value;
}

}  // namespace

Model readModel(const std::string& file) {
  const auto document = readJson(file);
  JsonReader root(file, document);
  auto constants = root.child("constants");
  Model model;
  for (const ModelField& field : kModelFields) {
    model.*field.value = valueFrom(constants.child(std::string(field.name)));
  }
  constants.finish();
  root.finish();
  return model;
}

std::vector<std::string> estimatedConstants(const std::string& file) {
  std::vector<std::string> names;
  const auto document = readJson(file);
  for (const auto& [name, entry] : document.at("constants").items())
    if (entry.at("source").get<std::string>().starts_with("estimate")) names.push_back(name);
  return names;
}

std::map<std::string, ConstantRange> constantRanges(const std::string& file) {
  std::map<std::string, ConstantRange> ranges;
  const auto document = readJson(file);
  JsonReader root(file, document);
  for (auto& [name, entry] : root.child("constants").members())
    ranges[name] = {entry.number("low"), entry.number("high")};
  return ranges;
}

std::string withValues(const std::string& content, const std::map<std::string, double>& values) {
  std::string changed = content;
  for (const auto& [name, value] : values) {
    const std::regex place("(\"" + name + "\": *\\{\"value\": *)[-+0-9.eE]+");
    std::smatch found;
    if (!std::regex_search(changed, found, place))
      throw InputError("model", "/constants/" + name, name, "a constant of the file");
    changed = found.prefix().str() + found[1].str() + fmt::format("{}", value) + found.suffix().str();
  }
  return changed;
}

}  // namespace gapsound
