#pragma once
#include <nlohmann/json.hpp>
#include <optional>
#include <string>

#include "io/json_reader.hpp"
#include "scenario/scenario.hpp"

namespace gapsound {

/// A defense kept in a file of its own: front, shell, call and fit_off as a scenario has them, and a title.
/// Throws InputError about that file, Error(noAccess) when it cannot be read.
[[nodiscard]] DefensePlan readDefenseFile(const std::string& file);

/// The defense of a scenario or a call of a plan. Where it names a file (as seen from the folder of the
/// document), what the place itself says is laid over what the file says.
class DefensePlace {
 public:
  /// Throws like readDefenseFile(). Borrows the document, which must outlive it.
  explicit DefensePlace(const JsonReader& place);
  /// Over the whole of it, without "file"; borrows this.
  [[nodiscard]] JsonReader reader() const { return {file_, whole_, path_}; }
  [[nodiscard]] const std::optional<KeptDefense>& kept() const { return kept_; }

 private:
  std::string file_, path_;
  nlohmann::json whole_;
  std::optional<KeptDefense> kept_;
};

/// The plan as a scenario's file has it: what the kept defense says already is left out, its file named from
/// the folder of `document`. A document that lies elsewhere has the whole plan.
[[nodiscard]] nlohmann::ordered_json writtenOver(const KeptDefense& kept, const DefensePlan& plan,
                                                 const std::string& document);

}  // namespace gapsound
