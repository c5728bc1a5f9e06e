#include "io/calibration_file.hpp"

#include <nlohmann/json.hpp>

#include "io/json_reader.hpp"
#include "io/scenario_file.hpp"

namespace gapsound {
namespace {

const std::vector<std::string> kKinds{"zone", "gap", "man", "other"};

CalibrationLook lookFrom(JsonReader entry) {
  CalibrationLook look;
  look.judges = entry.word("half", {"fit", "judge"}) == "judge";
  const std::string kind = entry.word("kind", kKinds);
  look.kind = static_cast<RunKind>(std::find(kKinds.begin(), kKinds.end(), kind) - kKinds.begin());
  const JsonReader scenario = entry.child("scenario");
  look.scenario = parseScenario(scenario.value().dump(), entry.file() + entry.path());
  entry.finish();
  return look;
}

}  // namespace

CalibrationSet readCalibrationSet(const std::string& file) {
  const auto document = readJson(file);
  JsonReader root(file, document);
  static_cast<void>(root.whole("gapsound", 1, 1));
  CalibrationSet set;
  JsonReader kinds = root.child("kinds");
  for (std::size_t k = 0; k < kKinds.size(); ++k) set.kinds[k] = kinds.number(kKinds[k], 0.0, 1.0);
  kinds.finish();
  JsonReader boxes = root.child("box");
  for (int box = kLeastBox; box <= kMostBox; ++box)
    set.boxes[static_cast<std::size_t>(box - kLeastBox)] = boxes.number(std::to_string(box), 0.0, 1.0);
  boxes.finish();
  for (const JsonReader& entry : root.child("looks").items()) set.looks.push_back(lookFrom(entry));
  root.finish();
  return set;
}

}  // namespace gapsound
