#pragma once
#include "cli/options.hpp"

namespace gapsound {

/// Reads the command line, runs the verb and gives the exit code. Every error ends here as one line on
/// standard error. `window` is empty in a program built without one.
int runProgram(int argc, char** argv, const WindowOpener& window);

}  // namespace gapsound
