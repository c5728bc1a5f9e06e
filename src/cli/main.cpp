#include "cli/program.hpp"

#ifdef GAPSOUND_WITH_WINDOW
#include "app/window.hpp"
#endif

int main(int argc, char** argv) {
#ifdef GAPSOUND_WITH_WINDOW
  return gapsound::runProgram(argc, argv, gapsound::openWindow);
#else
  return gapsound::runProgram(argc, argv, {});
#endif
}
