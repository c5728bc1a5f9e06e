#pragma once
#include "scenario/setup.hpp"

namespace gapsound {

inline constexpr double kPullSpeed = 2.0;  // yd/s along the line that make a lineman behind it a puller

/// Who gives the ball to whom, where and when; the runner's aim when the scheme is not known.
void giveBall(Setup& setup, bool infer_run);
/// Blockers by what they are at: men in contact have each other, pullers kick and wrap, the others take the
/// nearest threat on their way that nobody has. The setup goes right and has its opening.
void inferBlocks(Setup& setup);
/// Jobs the file gives. Throws InputError for names that are none.
void takeGivenJobs(Setup& setup, const Scenario& right);

}  // namespace gapsound
