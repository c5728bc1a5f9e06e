#include <fmt/format.h>
#include <fmt/ranges.h>

#include "cli/print.hpp"
#include "cli/session.hpp"
#include "cli/verbs.hpp"
#include "io/atomic_file.hpp"
#include "io/differences.hpp"
#include "io/scenario_file.hpp"
#include "io/theme_file.hpp"
#include "painters/outputs.hpp"
#include "scenario/resolve.hpp"
#include "study/reps.hpp"
#include "teach/clip.hpp"

namespace gapsound {
namespace {

bool hasTwoSides(const ClipOptions& options) {
  return !options.versus.empty() || options.b_seed || !options.b.sets.empty() || !options.b.faults.empty();
}

std::string sideName(const ClipOptions& options, std::size_t side, const std::string& otherwise) {
  return options.names.size() == 2 ? options.names[side] : otherwise;
}

/// At most three differences, as one sentence; "" where only the seed differs.
std::string differenceWords(const Scenario& a, const Scenario& b) {
  std::vector<std::string> found = differencesOf(a, b);
  if (found.empty()) return "";
  const std::size_t more = found.size() > 3 ? found.size() - 3 : 0;
  found.resize(found.size() - more);
  return fmt::format("Second: {}{}.", fmt::join(found, "; "), more > 0 ? fmt::format("; {} more", more) : "");
}

Tape playedFrom(const Scenario& scenario, const Model& model, std::uint64_t seed) {
  return playTape(resolve(scenario, library(), model), model, seed);
}

ClipScript sidesFor(const ClipOptions& options) {
  const Changes changes = pictureChanges(options);
  const Model model = modelFor(options.model);
  const Scenario a = readScenario(options.file, changes);
  const Tape tape = playedFrom(a, model, options.seed);
  if (!hasTwoSides(options)) return clipOf(tape);
  const auto& file = options.versus.empty() ? options.file : options.versus;
  const Scenario b = readScenario(file, joined(changes, options.b));
  const Tape other = playedFrom(b, model, options.b_seed.value_or(options.seed));
  const std::string difference = options.difference.empty() ? differenceWords(a, b) : options.difference;
  return clipOf(tape, sideName(options, 0, "first"), other, sideName(options, 1, "second"), difference);
}

void setAspect(ClipScript& script, const std::string& aspect) {
  if (aspect == "1:1") script.width = script.height = 1080.0;
  if (aspect == "9:16") script.width = 720.0, script.height = 1280.0;
}

ClipScript scriptFor(const ClipOptions& options) {
  ClipScript script = sidesFor(options);
  if (!options.line.empty()) script.line = options.line;
  script.loops = options.loops;
  script.names = !options.hide_names;
  if (!options.only.empty()) script.shown = {true, false, false, false};
  for (const int level : options.only) script.shown[static_cast<std::size_t>(level)] = true;
  setAspect(script, options.aspect);
  return script;
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
