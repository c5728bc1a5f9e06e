#include "study/versus.hpp"

#include <fmt/core.h>

#include <cmath>

#include "cli/outputs.hpp"
#include "cli/print.hpp"
#include "cli/session.hpp"
#include "cli/study_run.hpp"
#include "cli/verbs.hpp"
#include "io/csv.hpp"
#include "picture/chart.hpp"

namespace gapsound {
namespace {

StudyLooks looksFor(const VersusOptions& options, const Model& model) {
  StudyLooks looks;
  const auto& other = options.other.empty() ? options.file : options.other;
  looks.add(scenarioFor(options, options.file, joined(options.changes, {options.a, {}}), model), model);
  looks.add(scenarioFor(options, other, joined(options.changes, {options.b, {}}), model), model);
  return looks;
}

std::string sentenceFor(const Versus& sides) {
  const Paired& y = sides.yards;
  if (y.sd == 0.0 && y.difference == 0.0) return "Both sides are the same to the last inch.";
  const char* how = y.difference > 0.0 ? "more" : "less";
  if (y.p_value >= 0.05)
    return fmt::format(
        "No difference is sure: b gains {:.1f} yd a snap {} than a ({:+.1f} to {:+.1f} at 95 %).",
        std::abs(y.difference), how, y.ci.low, y.ci.high);
  return fmt::format("b gains {:.1f} yd a snap {} than a ({:+.1f} to {:+.1f} at 95 %).",
                     std::abs(y.difference), how, y.ci.low, y.ci.high);
}

Answer answerFor(const Versus& sides) {
  return {{"n", sides.n},
          {"a", asAnswer(sides.a)},
          {"b", asAnswer(sides.b)},
          {"mean_difference", sides.yards.difference},
          {"difference_ci", asPair(sides.yards.ci)},
          {"p_value", sides.yards.p_value},
          {"cutback_open_difference", sides.cutback_open.difference},
          {"cutback_open_difference_ci", asPair(sides.cutback_open.ci)},
          {"sentence", sentenceFor(sides)}};
}

void printRow(const char* side, const Distribution& d) {
  fmt::print("{:<6}{:>8.2f}{:>8.0f}{:>11}{:>11}{:>11}{:>11}{:>14}\n", side, d.mean, d.median,
             percent(d.stuffed), percent(d.four_plus), percent(d.ten_plus), percent(d.success),
             percent(d.cutback_open));
}

void printWords(const StudyLooks& looks, const Versus& sides) {
  fmt::print("{}\n\na: {}\nb: {}\n\n", sentenceFor(sides), looks.setups[0].title, looks.setups[1].title);
  fmt::print("{:<6}{:>8}{:>8}{:>11}{:>11}{:>11}{:>11}{:>14}\n", "side", "mean", "median", "0 or less",
             "4 or more", "10 or more", "success", "cutback open");
  printRow("a", sides.a);
  printRow("b", sides.b);
  const Paired& y = sides.yards;
  fmt::print(
      "\nb gains {:+.2f} yd against a, {:+.2f} to {:+.2f} at 95 %, p {:.2g}, {} pairs on the same luck\n",
      y.difference, y.ci.low, y.ci.high, y.p_value, sides.n);
}

std::vector<std::string> rowOf(const char* side, const Distribution& d) {
  const auto figure = [](double value) { return fmt::format("{}", value); };
  return {side,
          figure(d.n),
          figure(d.mean),
          figure(d.mean_ci.low),
          figure(d.mean_ci.high),
          figure(d.median),
          figure(d.stuffed),
          figure(d.four_plus),
          figure(d.ten_plus),
          figure(d.success),
          figure(d.cutback_open)};
}

std::string tableOf(const Versus& sides) {
  const Paired& y = sides.yards;
  return csvLine({"side", "n", "mean", "mean_low", "mean_high", "median", "stuffed", "four_plus", "ten_plus",
                  "success", "cutback_open"}) +
         csvLine(rowOf("a", sides.a)) + csvLine(rowOf("b", sides.b)) +
         csvLine({"b - a", fmt::format("{}", y.n), fmt::format("{}", y.difference),
                  fmt::format("{}", y.ci.low), fmt::format("{}", y.ci.high), "", "", "", "", "",
                  fmt::format("{}", sides.cutback_open.difference)});
}

DisplayList pageFor(const StudyLooks& looks, const Versus& sides) {
  const auto bar = [](const std::string& name, double value, const Interval& ci) {
    return BarData::Row{name, value, ci.low, ci.high, fmt::format("{:.2f}", value)};
  };
  return barPage({looks.setups[0].title,
                  sentenceFor(sides),
                  "mean gain, yd",
                  fmt::format("a: {}   b: {}   {} pairs on the same luck, intervals at 95 %",
                              looks.setups[0].title, looks.setups[1].title, sides.n),
                  {bar("a", sides.a.mean, sides.a.mean_ci), bar("b", sides.b.mean, sides.b.mean_ci),
                   bar("b - a", sides.yards.difference, sides.yards.ci)}});
}

}  // namespace

int runVersus(const VersusOptions& options) {
  requireFiles(options.files);
  const Model model = modelFor(options.model);
  const StudyLooks looks = looksFor(options, model);
  VersusTally tally(situationOf(looks.setups[0]), situationOf(looks.setups[1]));
  UntilNarrow narrow(options, 2);
  const auto take = [&](const RepPlace&, const Summary& rep) {
    tally.add(rep);
    return !narrow.reached([&] { return tally.interval().high - tally.interval().low; });
  };
  const StudyEnd end =
      runStudy({looks, model, Schedule(2, static_cast<std::size_t>(options.n)), take}, options);
  if (end == StudyEnd::part || tally.pairs() < 2) return exitCodeOf(end);
  const Versus sides = tally.versus();
  writeFiles(options.files, tableOf(sides), [&] { return pageFor(looks, sides); });
  if (options.json) {
    printAnswer(answerFor(sides));
  } else {
    printWords(looks, sides);
  }
  return exitCodeOf(end);
}

}  // namespace gapsound
