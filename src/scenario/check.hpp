#pragma once
#include <string>
#include <vector>

#include "scenario/look.hpp"
#include "scenario/setup.hpp"

namespace gapsound {

/// A gap the run makes and the ids of the defenders the call gives it to. Line gaps are written "B+"; a lead
/// back or a puller makes one more where he arrives, written "lead+", "pull+", "pull2+" by the side he
/// arrives on; so does a quarterback who may run, "quarterback-" by the side he runs to.
struct GapOwner {
  std::string gap;
  std::vector<std::string> owners;  // empty: nobody has it
};

/// Every gap from the offense's left to its right, then the ones made by leads, pullers and the quarterback.
/// Attached blockers + 1 line gaps; the man freed by a puller, then the safety called down, own the extra
/// ones. A back who leads for his quarterback is the gap of the quarterback, not one more.
[[nodiscard]] std::vector<GapOwner> gapsOf(const Setup& setup);
/// What a coach should know before he runs it: gaps without an owner, a puller or lead with nobody on one
/// side of him, an end man nobody blocks.
[[nodiscard]] std::vector<std::string> concernsOf(const Setup& setup);

/// The blockers on the line, from a resolved look.
[[nodiscard]] LineShape lineShapeOf(const Setup& setup);

}  // namespace gapsound
