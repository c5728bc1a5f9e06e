#include <fmt/core.h>

#include "cli/print.hpp"
#include "cli/session.hpp"
#include "cli/verbs.hpp"
#include "study/versus.hpp"

namespace gapsound {
namespace {

Changes sideChanges(const VersusOptions& options, const std::vector<std::string>& own) {
  return joined(options.changes, {own, {}});
}

Versus played(const VersusOptions& options) {
  const Model model = modelFor(options.model);
  const Setup a = setupFor(options.file, sideChanges(options, options.a), model);
  const auto& other = options.other.empty() ? options.file : options.other;
  const Setup b = setupFor(other, sideChanges(options, options.b), model);
  ProgressLine progress("playing");
  return versus(a, b, model, options.seed, options.n, options.jobs, progress.reporter());
}

Answer answerFor(const Versus& sides) {
  return {{"n", sides.n}, {"a", asAnswer(sides.a)}, {"b", asAnswer(sides.b)},
          {"mean_difference", sides.yards.difference}, {"difference_ci", asPair(sides.yards.ci)},
          {"p_value", sides.yards.p_value}, {"cutback_open_difference", sides.cutback_open.difference}};
}

void printRow(const char* side, const Distribution& d) {
  fmt::print("{:<6}{:>8.2f}{:>8.0f}{:>11}{:>11}{:>11}{:>14}\n", side, d.mean, d.median, percent(d.stuffed),
             percent(d.four_plus), percent(d.ten_plus), percent(d.cutback_open));
}

void printWords(const Versus& sides) {
  fmt::print("{:<6}{:>8}{:>8}{:>11}{:>11}{:>11}{:>14}\n", "side", "mean", "median", "0 or less", "4 or more",
             "10 or more", "cutback open");
  printRow("a", sides.a);
  printRow("b", sides.b);
  const Paired& y = sides.yards;
  fmt::print("\nb gains {:+.2f} yd against a, {:+.2f} to {:+.2f} at 95 %, p {:.2g}, {} pairs on the same luck\n",
             y.difference, y.ci.low, y.ci.high, y.p_value, sides.n);
}

}  // namespace

int runVersus(const VersusOptions& options) {
  const Versus sides = played(options);
  if (options.json) {
    printAnswer(answerFor(sides));
  } else {
    printWords(sides);
  }
  return 0;
}

}  // namespace gapsound
