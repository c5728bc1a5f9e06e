#pragma once
#include <cstdint>

#include "base/model.hpp"
#include "scenario/setup.hpp"
#include "sim/actors.hpp"

namespace gapsound {

/// What the snap's luck makes of a setup: alignments, a slant, a man who shoots, reaction times, strength.
/// `setup` is changed in place (spots, gaps); the actors point into it. Draws are keyed by seed, man and
/// purpose.
void rollSnap(Setup& setup, const Model& model, std::uint64_t seed, Actors& actors,
              std::vector<Event>& events);

}  // namespace gapsound
