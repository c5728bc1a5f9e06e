#include <fmt/format.h>

#include <algorithm>

#include "analysis/account.hpp"
#include "analysis/as_run.hpp"
#include "cli/print.hpp"
#include "cli/session.hpp"
#include "cli/verbs.hpp"
#include "io/atomic_file.hpp"
#include "io/tape_file.hpp"
#include "study/reps.hpp"

namespace gapsound {
namespace {

Answer laneAnswer(const Account& account) {
  const Summary& summary = account.summary;
  if (summary.t_line < 0) return nullptr;
  return {{"gap", summary.lane_gap},
          {"side", summary.cross_x >= 0 ? "right" : "left"},
          {"relation", wordOf(summary.lane_relation)}};
}

Answer runnerAnswer(const Tape& tape) {
  const int man = runnerOf(tape);
  return man == kNobody ? Answer(nullptr) : Answer(tape.setup.men[static_cast<std::size_t>(man)].id);
}

Answer fitAnswer(const Setup& setup, const FitLine& fit) {
  return {{"player", setup.men[static_cast<std::size_t>(fit.man)].id},
          {"level", fit.level},
          {"called", fit.called},
          {"saw", fit.saw},
          {"did", fit.did},
          {"gap", fit.gap},
          {"t", orNull(fit.t)},
          {"result", fit.result}};
}

Answer repAnswer(const Tape& tape, const Account& account) {
  const Summary& s = account.summary;
  Answer fits = Answer::array();
  for (const FitLine& fit : account.fits) fits.push_back(fitAnswer(tape.setup, fit));
  return {{"seed", tape.seed},
          {"yards", s.yards},
          {"ended", wordOf(s.ending)},
          {"runner", runnerAnswer(tape)},
          {"t_handoff", orNull(s.t_handoff)},
          {"t_line", orNull(s.t_line)},
          {"t_first_contact", orNull(s.t_first_contact)},
          {"t_end", s.t_end},
          {"lane", laneAnswer(account)},
          {"tacklers", account.tacklers},
          {"missed_tackles", s.tackle_misses},
          {"fits", fits},
          {"why", account.why},
          {"hash", fmt::format("{:016x}", s.hash)}};
}

std::string timeWord(double t) { return t < 0 ? "never" : fmt::format("{:.2f} s", t); }

void printHead(const Tape& tape, const Account& account) {
  const Summary& s = account.summary;
  fmt::print("{}\n", tape.setup.title);
  fmt::print("seed {}: {:+.1f} yd, {}{}{}\n", tape.seed, s.yards, wordOf(s.ending),
             account.tacklers.empty() ? "" : " by ", fmt::join(account.tacklers, ", "));
  fmt::print("hand-off {}, crosses the line {}, first contact {}, over {}\n", timeWord(s.t_handoff),
             timeWord(s.t_line), timeWord(s.t_first_contact), timeWord(s.t_end));
  if (s.t_line >= 0) {
    fmt::print("through {} ({}), {:.1f} yd {} of the ball\n", s.lane_gap.empty() ? "no gap" : s.lane_gap,
               wordOf(s.lane_relation), s.cross_x < 0 ? -s.cross_x : s.cross_x,
               s.cross_x < 0 ? "left" : "right");
  }
}

using Row = std::vector<std::string>;

Row rowFor(const Setup& setup, const FitLine& fit) {
  return {setup.men[static_cast<std::size_t>(fit.man)].id,
          std::to_string(fit.level),
          fit.called,
          fit.saw,
          fit.did,
          fit.gap,
          fit.t < 0 ? "" : fmt::format("{:.2f}", fit.t),
          fit.result};
}

void printFits(const Setup& setup, const Account& account) {
  std::vector<Row> rows{{"who", "level", "called", "saw", "did", "gap", "at s", "result"}};
  for (const FitLine& fit : account.fits) rows.push_back(rowFor(setup, fit));
  std::vector<std::size_t> widths(rows.front().size(), 0);
  for (const Row& row : rows) {
    for (std::size_t k = 0; k < row.size(); ++k) widths[k] = std::max(widths[k], row[k].size());
  }
  for (const Row& row : rows) {
    std::string line;
    for (std::size_t k = 0; k + 1 < row.size(); ++k) line += fmt::format("{:<{}}  ", row[k], widths[k]);
    fmt::print("{}{}\n", line, row.back());
  }
}

void printWords(const Tape& tape, const Account& account) {
  printHead(tape, account);
  fmt::print("\n");
  printFits(tape.setup, account);
  fmt::print("\n");
  for (const auto& sentence : account.why) fmt::print("{}\n", sentence);
}

}  // namespace

int runRep(const RepOptions& options) {
  if (!options.tape.empty()) requireWritable(options.tape);
  const Session session = sessionFor(options);
  const Tape tape = playTape(session.setup, session.model, options.seed);
  const Account account = accountOf(tape);
  if (!options.tape.empty()) writeTape(options.tape, tape);
  if (options.json) {
    printAnswer(repAnswer(tape, account));
  } else {
    printWords(tape, account);
  }
  return 0;
}

}  // namespace gapsound
