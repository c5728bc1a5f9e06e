#pragma once
#include "cli/options.hpp"
#include "cli/study_run.hpp"
#include "study/vary.hpp"

namespace gapsound {

/// What `vary` was asked for: the plan and the looks behind it. Throws InputError for ranges, settings and
/// limits that make no sense and for more cells than can be told apart.
struct SweepTask {
  SweepPlan plan;
  StudyLooks looks;
};
[[nodiscard]] SweepTask sweepTaskFor(const VaryOptions& options, const Model& model);

}  // namespace gapsound
