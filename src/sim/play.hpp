#pragma once
#include <cstdint>

#include "base/model.hpp"
#include "scenario/setup.hpp"
#include "sim/record.hpp"

namespace gapsound {

/// Plays one snap: same setup, model and seed give the same bits, on any thread.
/// A run to the left is played as its mirror image, so left and right are the same game.
[[nodiscard]] Record play(const Setup& setup, const Model& model, std::uint64_t seed);

}  // namespace gapsound
