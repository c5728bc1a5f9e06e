#include "io/differences.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <nlohmann/json.hpp>

#include "io/scenario_file.hpp"

namespace gapsound {
namespace {

using Json = nlohmann::json;

/// Every value by its path, faults as one value each: "/faults/SE kicked_out".
Json flat(const Scenario& scenario) {
  Json document = Json::parse(toJson(scenario));
  document.erase("title"), document.erase("tags");
  Json faults = Json::object();
  for (const PlacedFault& fault : scenario.faults)
    faults[fault.player + " " + std::string(factsOf(fault.fault.kind).name)] = fault.fault.amount;
  document["faults"] = faults;
  return document.flatten();
}

std::string wordsOf(const Json& value) {
  return value.is_string()   ? value.get<std::string>()
         : value.is_number() ? fmt::format("{:g}", value.get<double>())
                             : value.dump();
}

/// "/players/SS/downhill_yps" as "SS downhill yps", "/defense/call/structure" as "structure".
std::string nameOf(const std::string& path) {
  std::string name = path.rfind("/players/", 0) == 0  ? path.substr(9)
                     : path.rfind("/faults/", 0) == 0 ? path.substr(8)
                                                      : path.substr(path.rfind('/') + 1);
  std::replace(name.begin(), name.end(), '/', ' ');
  std::replace(name.begin(), name.end(), '_', ' ');
  return name;
}

}  // namespace

std::vector<std::string> differencesOf(const Scenario& a, const Scenario& b) {
  const Json first = flat(a), second = flat(b);
  std::vector<std::string> found;
  for (const auto& [path, value] : second.items()) {
    if (value.is_structured() || value.is_null() || (first.contains(path) && first[path] == value)) continue;
    const bool had = first.contains(path) && !first[path].is_null();
    const bool fault = path.rfind("/faults/", 0) == 0;
    found.push_back(fault ? nameOf(path)
                    : had ? fmt::format("{} {}, not {}", nameOf(path), wordsOf(value), wordsOf(first[path]))
                          : fmt::format("{} {}", nameOf(path), wordsOf(value)));
  }
  for (const auto& [path, value] : first.items()) {
    if (value.is_structured() || value.is_null() || second.contains(path)) continue;
    found.push_back(fmt::format("without {} {}", nameOf(path), wordsOf(value)));
  }
  return found;
}

}  // namespace gapsound
