#pragma once
#include "set.hpp"

namespace calibration {

/// Adds to both halves' cards what only whole tapes tell: how near blocked pairs stand, how deep the levels
/// line up, how fast the safeties get. A few reps a look are enough.
void addTapeFigures(const std::vector<SetLook>& looks, const Ground& ground,
                    std::vector<gapsound::CardLine>& fit, std::vector<gapsound::CardLine>& judge);

}  // namespace calibration
