#pragma once
#include "cli/options.hpp"

namespace gapsound {

/// The window, until it is closed; or one picture of it when a shot is asked for. Throws Error(noAccess) in
/// one line without a display, and as readScenario does for the file.
int openWindow(const OpenOptions& options);

}  // namespace gapsound
