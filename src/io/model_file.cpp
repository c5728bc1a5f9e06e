#include "io/model_file.hpp"

#include <nlohmann/json.hpp>

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

}  // namespace gapsound
