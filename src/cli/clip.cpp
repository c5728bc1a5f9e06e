#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cmath>

#include "base/error.hpp"
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
#include "study/statistics.hpp"
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

constexpr int kPickReps = 100;

/// What each rep is picked by: its yards, or with a second side how many yards more that one gives up.
std::vector<double> yardsOf(const std::vector<std::vector<Summary>>& reps) {
  std::vector<double> yards;
  for (std::size_t rep = 0; rep < reps.front().size(); ++rep)
    yards.push_back(reps.back()[rep].yards - (reps.size() > 1 ? reps.front()[rep].yards : 0.0));
  return yards;
}

/// The first rep that is the typical (nearest the median), best or worst one for the defense.
std::size_t pickedFrom(const std::vector<double>& yards, const std::string& pick) {
  const double wanted = pick == "typical" ? medianOf(yards)
                        : pick == "best"  ? *std::min_element(yards.begin(), yards.end())
                                          : *std::max_element(yards.begin(), yards.end());
  const auto nearer = [&](double a, double b) { return std::abs(a - wanted) < std::abs(b - wanted); };
  return static_cast<std::size_t>(std::min_element(yards.begin(), yards.end(), nearer) - yards.begin());
}

std::uint64_t seedFor(const ClipOptions& options, const std::vector<Setup>& sides, const Model& model) {
  if (options.pick.empty()) return options.seed;
  const auto yards = yardsOf(playAll(sides, model, options.seed, kPickReps));
  return options.seed + pickedFrom(yards, options.pick);
}

/// Says which rep is shown, after the subtitle.
std::string pickWords(const std::string& pick, std::uint64_t seed, bool two_sides) {
  if (pick.empty()) return "";
  if (!two_sides) return fmt::format("; the {} of {} reps, seed {}", pick, kPickReps, seed);
  const char* const which = pick == "typical" ? "with the usual difference"
                            : pick == "best"  ? "in which it helped most"
                                              : "in which it cost most";
  return fmt::format(" The rep of {} {}, seed {}.", kPickReps, which, seed);
}

ClipScript oneSided(const ClipOptions& options, const Scenario& scenario, const Model& model) {
  const Setup setup = resolve(scenario, library(), model);
  const std::uint64_t seed = seedFor(options, {setup}, model);
  ClipScript script = clipOf(playTape(setup, model, seed));
  script.subtitle += pickWords(options.pick, seed, false);
  return script;
}

ClipScript twoSided(const ClipOptions& options, const Scenario& a, const Scenario& b, const Model& model) {
  const Setup first = resolve(a, library(), model), second = resolve(b, library(), model);
  const std::uint64_t seed = seedFor(options, {first, second}, model);
  const std::string difference = options.difference.empty() ? differenceWords(a, b) : options.difference;
  ClipScript script = clipOf(playTape(first, model, seed), sideName(options, 0, "first"),
                             playTape(second, model, options.b_seed.value_or(seed)),
                             sideName(options, 1, "second"), difference);
  script.subtitle += pickWords(options.pick, seed, true);
  return script;
}

ClipScript sidesFor(const ClipOptions& options) {
  if (options.b_seed && !options.pick.empty())
    throw InputError("command line", "--pick", options.pick, "without --b-seed: both sides on the same luck");
  const Changes changes = pictureChanges(options);
  const Model model = modelFor(options.model);
  const Scenario a = readScenario(options.file, changes);
  if (!hasTwoSides(options)) return oneSided(options, a, model);
  const auto& file = options.versus.empty() ? options.file : options.versus;
  return twoSided(options, a, readScenario(file, joined(changes, options.b)), model);
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
