// Plays the calibration set and prints the calibration card: outcomes, timings, speeds and surroundings
// beside what real runs show, on the looks constants are fitted on and on those that judge. With --each the
// looks one by one, with --effects the paired effects, with --drift how far engaged pairs move,
// with --sensitivity what each estimate moves.
#include <fmt/core.h>
#include <unistd.h>

#include <CLI/CLI.hpp>

#include "base/error.hpp"
#include "calibration/options.hpp"
#include "io/assets.hpp"
#include "io/library.hpp"
#include "io/model_file.hpp"

using namespace gapsound;
using namespace calibration;

namespace calibration {

bool tellProgress(double share) {
  static const bool watched = isatty(STDERR_FILENO) != 0;
  if (!watched) return true;
  fmt::print(stderr, "\r{:3.0f} %", 100.0 * share);
  if (share >= 1.0) fmt::print(stderr, "\r     \r");
  std::fflush(stderr);
  return true;
}

}  // namespace calibration

int main(int argc, char** argv) {
  Options options;
  CLI::App app("Plays the calibration looks and prints the card");
  auto* n = app.add_option("--n,-n", options.n, "reps of each look")->check(CLI::Range(1, 1000000));
  app.add_option("--looks", options.looks, "shell pattern of the looks' names");
  app.add_option("--scenarios", options.scenarios, "folder of the shipped looks");
  app.add_option("--model", options.model, "file of model constants");
  app.add_option("--jobs", options.jobs, "threads, 0 for all cores");
  app.add_option("--seed", options.seed, "first seed");
  app.add_flag("--each", options.each, "every sound look by itself instead of the calibration set");
  app.add_flag("--markdown", options.markdown, "the card or the sensitivities as tables for README.md");
  auto* fit = app.add_flag(
      "--fit", options.fit,
      "move the constants that are estimates toward the bands of the card (60 reps a look unless --n)");
  app.add_flag("--write", options.write, "with --fit: write what it found into the model file")->needs(fit);
  app.add_option("--constants", options.constants, "shell patterns of the constants --fit may move")
      ->delimiter(',')
      ->needs(fit);
  app.add_option("--evaluations", options.evaluations, "cards --fit may play")
      ->check(CLI::Range(1, 100000))
      ->needs(fit);
  app.add_flag("--effects", options.effects, "the paired effects instead of the card");
  app.add_option("--items", options.items, "letters of the effects to run, all when absent");
  app.add_flag("--drift", options.drift, "how far engaged pairs move instead of the card (try --n 40)");
  app.add_flag("--sensitivity", options.sensitivity,
               "what every estimated constant moves by itself, 20 % either way (30 reps a side unless --n)");
  app.add_option("--minutes", options.minutes, "with --sensitivity: no further constant is begun after that")
      ->check(CLI::Range(0.1, 1000.0));
  CLI11_PARSE(app, argc, argv);
  try {
    const Model model = readModel(options.model.empty() ? assetPath("model.json") : options.model);
    const Library library = readLibrary(assetPath(""));
    const Ground ground{options, library, model};
    if (options.effects)
      printEffects(ground, n->count() > 0);
    else if (options.sensitivity)
      printSensitivity(ground, n->count() > 0);
    else if (options.drift)
      printDrift(ground);
    else if (options.fit)
      fitConstants(ground, n->count() > 0);
    else if (options.each)
      printEachLook(ground);
    else
      printCard(ground);
  } catch (const Error& error) {
    fmt::print(stderr, "calibrate: {}\n", error.what());
    return static_cast<int>(error.code());
  }
  return 0;
}
