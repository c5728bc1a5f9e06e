#include <fmt/core.h>

#include "cli/print.hpp"
#include "cli/session.hpp"
#include "cli/verbs.hpp"
#include "io/atomic_file.hpp"
#include "io/theme_file.hpp"
#include "painters/outputs.hpp"
#include "study/reps.hpp"
#include "teach/clip.hpp"

namespace gapsound {
namespace {

bool isBeside(const ClipOptions& options) {
  return !options.beside.empty() || options.beside_seed || !options.beside_changes.sets.empty() ||
         !options.beside_changes.faults.empty();
}

std::string sideName(const ClipOptions& options, std::size_t side, const std::string& otherwise) {
  return options.names.size() == 2 ? options.names[side] : otherwise;
}

ClipScript scriptFor(const ClipOptions& options) {
  const Changes changes = pictureChanges(options);
  const Model model = modelFor(options.model);
  const Tape tape = playTape(setupFor(options.file, changes, model), model, options.seed);
  if (!isBeside(options)) return clipOf(tape);
  const auto& other = options.beside.empty() ? options.file : options.beside;
  const Tape beside = playTape(setupFor(other, joined(changes, options.beside_changes), model), model,
                               options.beside_seed.value_or(options.seed));
  return clipOf(tape, sideName(options, 0, "first"), beside, sideName(options, 1, "second"), options.difference);
}

}  // namespace

int runClip(const ClipOptions& options) {
  requireWritable(options.out);
  const ClipScript script = scriptFor(options);
  {
    ProgressLine progress("drawing");
    const auto report = progress.reporter();
    writeClip(script, shippedTheme("evening"), options.out, [&](double share) { report(share); });
  }
  if (options.json) {
    printAnswer({{"written", options.out}});
  } else {
    fmt::print("{} written\n", options.out);
  }
  return 0;
}

}  // namespace gapsound
