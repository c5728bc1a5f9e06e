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

/// What a man's setting is called in a sentence about him; {} is the value.
struct SettingWords {
  std::string_view key;
  const char* told;
};
constexpr SettingWords kSettings[] = {{"downhill_yps", "comes downhill at {} yd/s"},
                                      {"read_delay_s", "reads after {} s"},
                                      {"depth_yd", "is {} yd deep"},
                                      {"ten_yd_s", "runs ten yards in {} s"},
                                      {"forty_yd_s", "runs forty yards in {} s"},
                                      {"mass_kg", "weighs {} kg"},
                                      {"tackling", "tackles {}"},
                                      {"fit_off", "fits off {}"},
                                      {"key", "keys {}"}};

/// "/players/SS/downhill_yps" as "SS downhill yps", "/defense/call/structure" as "structure".
std::string nameOf(const std::string& path) {
  std::string name = path.rfind("/players/", 0) == 0  ? path.substr(9)
                     : path.rfind("/faults/", 0) == 0 ? path.substr(8)
                                                      : path.substr(path.rfind('/') + 1);
  std::replace(name.begin(), name.end(), '/', ' ');
  std::replace(name.begin(), name.end(), '_', ' ');
  return name;
}

/// A value where it stands: "SS comes downhill at 9 yd/s", "structure box".
std::string toldOf(const std::string& path, const std::string& value) {
  const std::string name = nameOf(path), key = path.substr(path.rfind('/') + 1);
  const auto known = std::find_if(std::begin(kSettings), std::end(kSettings),
                                  [&](const SettingWords& words) { return words.key == key; });
  if (path.rfind("/players/", 0) != 0 || known == std::end(kSettings))
    return fmt::format("{} {}", name, value);
  return fmt::format("{} {}", name.substr(0, name.find(' ')), fmt::format(fmt::runtime(known->told), value));
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
                    : had ? fmt::format("{}, not {}", toldOf(path, wordsOf(value)), wordsOf(first[path]))
                          : toldOf(path, wordsOf(value)));
  }
  for (const auto& [path, value] : first.items()) {
    if (value.is_structured() || value.is_null() || second.contains(path)) continue;
    found.push_back(fmt::format("without: {}", toldOf(path, wordsOf(value))));
  }
  return found;
}

}  // namespace gapsound
