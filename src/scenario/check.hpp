#pragma once
#include <string>
#include <vector>

#include "scenario/setup.hpp"

namespace gapsound {

/// A gap the run makes and the ids of the defenders the call gives it to. Line gaps are written "B+"; a lead
/// back or a puller makes one more where he arrives, written "lead+", "pull+", "pull2+" by the side of the
/// run.
struct GapOwner {
  std::string gap;
  std::vector<std::string> owners;  // empty: nobody has it
};

/// Every gap from the offense's left to its right, then the ones made by leads and pullers.
/// Attached blockers + 1 line gaps; the man freed by a puller, then the safety called down, own the extra
/// ones.
[[nodiscard]] std::vector<GapOwner> gapsOf(const Setup& setup);
/// What a coach should know before he runs it: gaps without an owner, an end man nobody blocks.
[[nodiscard]] std::vector<std::string> concernsOf(const Setup& setup);

}  // namespace gapsound
