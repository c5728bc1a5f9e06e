#include "schema_check.hpp"

#include <nlohmann/json.hpp>
#include <valijson/adapters/nlohmann_json_adapter.hpp>
#include <valijson/schema.hpp>
#include <valijson/schema_parser.hpp>
#include <valijson/validator.hpp>

#include "io/assets.hpp"
#include "io/atomic_file.hpp"

namespace gapsound {

bool passesSchema(const nlohmann::json& document, const std::string& name) {
  using Adapter = valijson::adapters::NlohmannJsonAdapter;
  const auto description = nlohmann::json::parse(readWhole(assetPath("schema/" + name + ".schema.json")));
  valijson::Schema schema;
  valijson::SchemaParser parser;
  parser.populateSchema(Adapter(description), schema);
  valijson::Validator validator;
  return validator.validate(schema, Adapter(document), nullptr);
}

}  // namespace gapsound
