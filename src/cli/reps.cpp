#include <fmt/core.h>

#include <chrono>

#include "cli/print.hpp"
#include "cli/session.hpp"
#include "cli/verbs.hpp"
#include "study/distribution.hpp"
#include "study/reps.hpp"

namespace gapsound {
namespace {

void printOutcome(const Distribution& d) {
  fmt::print("{} reps: mean {:.2f} yd ({:.2f} to {:.2f}), sd {:.1f}, median {:.0f}, middle 80 % {:.0f} to {:.0f}\n",
             d.n, d.mean, d.mean_ci.low, d.mean_ci.high, d.sd, d.median, d.p10, d.p90);
  fmt::print("  0 or less {:>7}   4 or more {:>7}   10 or more {:>7}   20 or more {:>7}   success {:>7}\n",
             percent(d.stuffed), percent(d.four_plus), percent(d.ten_plus), percent(d.twenty_plus),
             percent(d.success));
  fmt::print("  cutback open {:>7}   taken {:>7}   bounced {:>7}   tries missed {:>7}\n", percent(d.cutback_open),
             percent(d.cutback_taken), percent(d.bounced), percent(d.missed_tackles));
  if (d.kept > 0.0) fmt::print("  the quarterback kept {:>7}\n", percent(d.kept));
}

void printTiming(const Timing& t) {
  fmt::print("  hand-off {:.2f} s, line {:.2f} s at {:.1f} yd/s, first contact {:.2f} s, over {:.2f} s, "
             "never crossed {}\n", t.t_handoff, t.t_line, t.line_speed, t.t_first_contact, t.t_end,
             percent(t.never_crossed));
}

void printLanes(const Distribution& d) {
  fmt::print("\n  {:<8}{:>8}{:>12}\n", "lane", "share", "mean yd");
  for (const auto& [gap, use] : d.lanes) fmt::print("  {:<8}{:>8}{:>12.1f}\n", gap, percent(use.share), use.mean);
}

void printWords(const Session& session, const Distribution& d, double reps_per_second) {
  fmt::print("{}\n", session.setup.title);
  printOutcome(d);
  printTiming(d.timing);
  printLanes(d);
  fmt::print(stderr, "{:.0f} reps a second\n", reps_per_second);
}

}  // namespace

int runReps(const ManyOptions& options) {
  const Session session = sessionFor(options);
  const auto start = std::chrono::steady_clock::now();
  std::vector<Summary> reps;
  {
    ProgressLine progress("playing");
    reps = playMany(session.setup, session.model, options.seed, options.n, options.jobs, progress.reporter());
  }
  const std::chrono::duration<double> spent = std::chrono::steady_clock::now() - start;
  const double reps_per_second = options.n / spent.count();
  const Distribution d = distributionOf(reps, {session.setup.down, session.setup.distance});
  if (options.json) {
    Answer answer = asAnswer(d);
    answer["reps_per_second"] = reps_per_second;
    printAnswer(answer);
  } else {
    printWords(session, d, reps_per_second);
  }
  return 0;
}

}  // namespace gapsound
