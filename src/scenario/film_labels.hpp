#pragma once
#include <optional>
#include <string>

#include "football/groups.hpp"

namespace gapsound {

/// What a position label of a tracking file says about a man.
struct FilmLabel {
  Group group = Group::backer;
  std::string id;  // the library's man it names outright: "LT", "FS"; empty: by place
};
/// `depth`: yards from the line, for labels that mean two things ("S": a backer near, a safety deep; "T" is a
/// tackle, or the tailback when `line_full`: five linemen without him). Empty for no position.
[[nodiscard]] std::optional<FilmLabel> labelled(const std::string& label, bool attacks, double depth,
                                                bool line_full);

}  // namespace gapsound
