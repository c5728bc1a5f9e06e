#include <fmt/core.h>

#include "cli/print.hpp"
#include "cli/session.hpp"
#include "cli/verbs.hpp"
#include "io/atomic_file.hpp"
#include "io/theme_file.hpp"
#include "painters/cairo_painter.hpp"
#include "study/reps.hpp"
#include "teach/strip.hpp"

namespace gapsound {

int runStrip(const StripOptions& options) {
  requireWritable(options.out);
  const Model model = modelFor(options.model);
  const Tape tape = playTape(setupFor(options.file, pictureChanges(options), model), model, options.seed);
  const auto frames = options.frames ? evenFrames(tape, *options.frames) : momentsForStrip(tape);
  const StripLook look = options.wide ? judgingStrip() : handoutStrip();
  writePicture(stripPage(tape, frames, look), shippedTheme("paper"), options.out);
  if (options.json) {
    printAnswer({{"written", options.out}});
  } else {
    fmt::print("{} written\n", options.out);
  }
  return 0;
}

}  // namespace gapsound
