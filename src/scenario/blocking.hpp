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

/// Jobs of the eleven against the front actually faced, for a run to the right.
[[nodiscard]] std::array<BlockJob, kOffense> blockingOf(const Look& look, const Scheme& scheme);

}  // namespace gapsound
