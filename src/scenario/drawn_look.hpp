#pragma once
#include "scenario/align.hpp"
#include "scenario/names.hpp"

namespace gapsound {

/// x of the sidelines, the ball at 0.
struct Sidelines {
  double left = 0.0, right = 0.0;
};
[[nodiscard]] Sidelines sidelinesOf(const Scenario& scenario, const LevelKind& level);

/// The look turned over; men named by side keep their places in the order.
[[nodiscard]] Look turnedOver(const Look& look);
/// 22 men in the frame of the scenario, men placed by hand, checked for legality. Throws InputError.
[[nodiscard]] Look lookOf(const Scenario& scenario, const Names& names, const LevelKind& level);

}  // namespace gapsound
