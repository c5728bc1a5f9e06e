#pragma once
#include <array>
#include <optional>
#include <string>

#include "scenario/counts.hpp"

namespace gapsound {

/// Scheme with a variant laid over it.
[[nodiscard]] Scheme varied(const Scheme& scheme, const std::string& variant);

/// Who carries the ball: the first of the scheme's carriers who is there.
[[nodiscard]] int carrierOf(const Look& look, const Scheme& scheme);

struct Assignments {
  std::array<BlockJob, kOffense> jobs;
  ReadJob read;
  std::vector<std::string> notes;  // who stands in for whom
};
/// Jobs of the eleven against the front actually faced, for a run to the right.
[[nodiscard]] Assignments blockingOf(const Look& look, const Scheme& scheme);

}  // namespace gapsound
