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

}  // namespace gapsound
