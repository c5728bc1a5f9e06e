#pragma once
#include "base/model.hpp"
#include "minds/glimpse.hpp"

namespace gapsound {

/// The velocity he wants, turned so that he runs round mates and blocked pairs in his way, on the nearer
/// side; yd/s. Left as it is where the way is free or too long round.
[[nodiscard]] Vec2 roundTraffic(const Glimpse& glimpse, const Model& model, Vec2 want);

}  // namespace gapsound
