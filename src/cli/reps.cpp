#include "study/reps.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <chrono>

#include "cli/outputs.hpp"
#include "cli/print.hpp"
#include "cli/session.hpp"
#include "cli/study_run.hpp"
#include "cli/verbs.hpp"
#include "io/csv.hpp"
#include "picture/chart.hpp"
#include "study/outcome.hpp"
#include "study/tally.hpp"
#include "study/versus.hpp"

namespace gapsound {
namespace {

std::string sentenceFor(const Distribution& d) {
  return fmt::format(
      "The run gains {:.1f} yd a snap ({:.1f} to {:.1f} at 95 %); it is held to nothing in {} and goes ten "
      "or more in {}.",
      d.mean, d.mean_ci.low, d.mean_ci.high, percent(d.stuffed), percent(d.ten_plus));
}

void printOutcome(const Distribution& d) {
  fmt::print(
      "{} reps: mean {:.2f} yd ({:.2f} to {:.2f}), sd {:.1f}, median {:.0f}, middle 80 % {:.0f} to {:.0f}\n",
      d.n, d.mean, d.mean_ci.low, d.mean_ci.high, d.sd, d.median, d.p10, d.p90);
  fmt::print("  0 or less {:>7}   4 or more {:>7}   10 or more {:>7}   20 or more {:>7}   success {:>7}\n",
             percent(d.stuffed), percent(d.four_plus), percent(d.ten_plus), percent(d.twenty_plus),
             percent(d.success));
  fmt::print("  cutback open {:>7}   taken {:>7}   bounced {:>7}   tries missed {:>7}\n",
             percent(d.cutback_open), percent(d.cutback_taken), percent(d.bounced),
             percent(d.missed_tackles));
  if (d.kept > 0.0) fmt::print("  the quarterback kept {:>7}\n", percent(d.kept));
}

void printTiming(const Timing& t) {
  fmt::print(
      "  hand-off {:.2f} s, line {:.2f} s at {:.1f} yd/s, first contact {:.2f} s, over {:.2f} s, "
      "never crossed {}\n",
      t.t_handoff, t.t_line, t.line_speed, t.t_first_contact, t.t_end, percent(t.never_crossed));
}

void printLanes(const Distribution& d) {
  fmt::print("\n  {:<8}{:>8}{:>12}\n", "lane", "share", "mean yd");
  for (const auto& [gap, use] : d.lanes)
    fmt::print("  {:<8}{:>8}{:>12.1f}\n", gap, percent(use.share), use.mean);
}

void printWords(const std::string& title, const Distribution& d) {
  fmt::print("{}\n\n{}\n", sentenceFor(d), title);
  printOutcome(d);
  printTiming(d.timing);
  printLanes(d);
}

Answer answerFor(const Distribution& d, double reps_per_second) {
  Answer answer = asAnswer(d);
  answer["stuffed_ci"] = asPair(intervalOfShare(d.stuffed, d.n));
  answer["ten_plus_ci"] = asPair(intervalOfShare(d.ten_plus, d.n));
  answer["success_ci"] = asPair(intervalOfShare(d.success, d.n));
  answer["reps_per_second"] = reps_per_second;
  answer["sentence"] = sentenceFor(d);
  return answer;
}

std::string tableOf(const Tally& tally) {
  std::string table = csvLine({"gain_yd", "snaps", "share"});
  for (const auto& [yards, snaps] : tally.gains().counts())
    table += csvLine({fmt::format("{}", yards), fmt::format("{}", snaps),
                      fmt::format("{}", static_cast<double>(snaps) / tally.n())});
  return table;
}

/// Shares of snaps by gain, the long ones together.
DisplayList pageFor(const std::string& title, const Tally& tally) {
  struct Bin {
    const char* name;
    double from, to;
  };
  constexpr Bin kBins[] = {{"lost", -99, 0},  {"0", 0, 1},          {"1", 1, 2},
                           {"2", 2, 3},       {"3", 3, 4},          {"4 to 5", 4, 6},
                           {"6 to 9", 6, 10}, {"10 to 19", 10, 20}, {"20 or more", 20, 200}};
  const Distribution d = tally.distribution();
  BarData bars{title,
               sentenceFor(d),
               "snaps in a hundred",
               fmt::format("{} reps; intervals at 95 %; gains in whole yards", d.n),
               {}};
  for (const Bin& bin : kBins) {
    const double share =
        tally.gains().shareAtLeast(bin.from) - (bin.to > 110 ? 0.0 : tally.gains().shareAtLeast(bin.to));
    const Interval ci = intervalOfShare(share, d.n);
    bars.rows.push_back({bin.name, 100.0 * share, 100.0 * ci.low, 100.0 * ci.high, percent(share)});
  }
  return barPage(bars);
}

}  // namespace

int runReps(const ManyOptions& options) {
  requireFiles(options.files);
  const Model model = modelFor(options.model);
  StudyLooks looks;
  looks.add(scenarioFor(options, options.file, options.changes, model), model);
  Tally tally(situationOf(looks.setups.front()));
  UntilNarrow narrow(options, 1);
  const auto take = [&](const RepPlace&, const Summary& rep) {
    tally.add(rep);
    return !narrow.reached([&] { return tally.meanInterval().high - tally.meanInterval().low; });
  };
  const auto start = std::chrono::steady_clock::now();
  const StudyEnd end =
      runStudy({looks, model, Schedule(1, static_cast<std::size_t>(options.n)), take}, options);
  if (end == StudyEnd::part || tally.n() < 2) return exitCodeOf(end);
  const std::chrono::duration<double> spent = std::chrono::steady_clock::now() - start;
  const Distribution d = tally.distribution();
  const std::string title = looks.setups.front().title;
  writeFiles(options.files, tableOf(tally), [&] { return pageFor(title, tally); });
  if (options.json) {
    printAnswer(answerFor(d, d.n / spent.count()));
  } else {
    printWords(title, d);
    fmt::print(stderr, "{:.0f} reps a second\n", d.n / spent.count());
  }
  return exitCodeOf(end);
}

}  // namespace gapsound
