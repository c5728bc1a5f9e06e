#include "study/faults.hpp"

#include <fmt/format.h>

#include "cli/outputs.hpp"
#include "cli/print.hpp"
#include "cli/session.hpp"
#include "cli/study_run.hpp"
#include "cli/verbs.hpp"
#include "io/csv.hpp"
#include "picture/chart.hpp"

namespace gapsound {
namespace {

constexpr std::size_t kPaired = 10;  // mistakes that are put together in pairs
constexpr std::size_t kBars = 16;

std::string idOf(const Setup& look, int man) { return look.men[static_cast<std::size_t>(man)].id; }

std::string playersOf(const Setup& look, const FaultRow& row) {
  std::vector<std::string> ids;
  for (const Mistake& m : row.mistakes) ids.push_back(idOf(look, m.man));
  return fmt::format("{}", fmt::join(ids, "+"));
}

std::string kindsOf(const FaultRow& row) {
  std::vector<std::string_view> names;
  for (const Mistake& m : row.mistakes) names.push_back(factsOf(m.fault.kind).name);
  return fmt::format("{}", fmt::join(names, "+"));
}

std::string repairerOf(const Setup& look, const FaultRow& row) {
  return row.repaired_by == kNobody ? "" : idOf(look, row.repaired_by);
}

Answer rowAnswer(const Setup& look, const FaultRow& row) {
  Answer repaired_by = nullptr;
  if (row.repaired_by != kNobody) repaired_by = repairerOf(look, row);
  return {{"player", playersOf(look, row)},
          {"kind", kindsOf(row)},
          {"mean_fixed", row.mean_fixed},
          {"mean_called", row.mean_called},
          {"loss", row.loss.difference},
          {"loss_ci", asPair(row.loss.ci)},
          {"loss_p", row.loss.p_value},
          {"loss_fixed", row.loss_fixed.difference},
          {"loss_fixed_ci", asPair(row.loss_fixed.ci)},
          {"loss_fixed_p", row.loss_fixed.p_value},
          {"won_back", row.won_back.difference},
          {"won_back_ci", asPair(row.won_back.ci)},
          {"won_back_p", row.won_back.p_value},
          {"share_won_back", row.share_won_back},
          {"repaired_by", repaired_by},
          {"repairs", row.repairs}};
}

Answer answerFor(const Setup& look, const FaultResult& result, int n) {
  Answer rows = Answer::array();
  for (const FaultRow& row : result.rows) rows.push_back(rowAnswer(look, row));
  return {{"n", n},
          {"mean_fixed", result.mean_fixed},
          {"mean_called", result.mean_called},
          {"rows", rows},
          {"sentence", result.sentence}};
}

void printWords(const Setup& look, const FaultResult& result, int n) {
  fmt::print(
      "{}\n\n{}, {} reps each on the same luck; without a mistake {:.2f} yd off the man in front, {:.2f} on "
      "the call\n\n",
      result.sentence, look.title, n, result.mean_fixed, result.mean_called);
  fmt::print("{:<7}{:<16}{:>9}{:>18}{:>13}{:>13}{:>18}  {}\n", "player", "mistake", "costs yd", "95 %",
             "on the call", "off the man", "won back", "repaired by");
  for (const FaultRow& row : result.rows)
    fmt::print("{:<7}{:<16}{:>+9.2f}{:>18}{:>13.2f}{:>13.2f}{:>18}  {}\n", playersOf(look, row), kindsOf(row),
               row.loss.difference, fmt::format("{:+.2f} to {:+.2f}", row.loss.ci.low, row.loss.ci.high),
               row.mean_called, row.mean_fixed,
               fmt::format("{:+.2f} to {:+.2f}", row.won_back.ci.low, row.won_back.ci.high),
               repairerOf(look, row));
}

std::string tableOf(const Setup& look, const FaultResult& result) {
  std::string table =
      csvLine({"player", "kind", "mean_fixed", "mean_called", "loss", "loss_low", "loss_high", "loss_p",
               "won_back", "won_back_low", "won_back_high", "won_back_p", "repaired_by"});
  for (const FaultRow& row : result.rows) {
    std::vector<std::string> cells{playersOf(look, row), kindsOf(row)};
    for (const double value : {row.mean_fixed, row.mean_called, row.loss.difference, row.loss.ci.low,
                               row.loss.ci.high, row.loss.p_value, row.won_back.difference,
                               row.won_back.ci.low, row.won_back.ci.high, row.won_back.p_value})
      cells.push_back(fmt::format("{}", value));
    cells.push_back(repairerOf(look, row));
    table += csvLine(cells);
  }
  return table;
}

DisplayList pageFor(const Setup& look, const FaultResult& result, int n) {
  BarData bars{look.title,
               result.sentence,
               "what it costs on the call, yd a snap",
               fmt::format("The {} costliest of {}; {} reps each on the same luck, intervals at 95 %. In "
                           "brackets: what is left of it "
                           "when all fit off the man in front, and who repairs it.",
                           std::min(kBars, result.rows.size()), result.rows.size(), n),
               {}};
  for (const FaultRow& row : result.rows) {
    if (bars.rows.size() == kBars) break;
    const std::string by = repairerOf(look, row);
    bars.rows.push_back({playersOf(look, row) + " " + kindsOf(row), row.loss.difference, row.loss.ci.low,
                         row.loss.ci.high,
                         fmt::format("{:+.1f} ({:+.1f}{})", row.loss.difference, row.loss_fixed.difference,
                                     by.empty() ? "" : ", " + by)});
  }
  return barPage(bars);
}

/// The look as options have it, with the mistakes on it.
struct FaultTask {
  std::vector<Mistakes> mistakes;
  StudyLooks looks;
  Rows rows;
};

FaultTask taskFor(const Setup& look, const std::string& text, std::vector<Mistakes> mistakes) {
  FaultTask task{std::move(mistakes), {}, {}};
  task.looks.setups = faultSetups(look, task.mistakes);
  task.looks.texts = {text};
  for (const Mistakes& m : task.mistakes) {
    for (const Mistake& one : m)
      task.looks.texts.push_back(
          fmt::format("{} {} {}", one.man, factsOf(one.fault.kind).name, one.fault.amount));
  }
  task.rows.resize(task.looks.setups.size());
  return task;
}

/// Reps come in the order of the seeds for all looks: cut to those every look has.
int cutToCommon(Rows& rows) {
  std::size_t least = rows.front().size();
  for (const auto& row : rows) least = std::min(least, row.size());
  for (auto& row : rows) row.resize(least);
  return static_cast<int>(least);
}

StudyJob jobFor(FaultTask& task, const Model& model, int n) {
  const auto take = [&task](const RepPlace& place, const Summary& rep) {
    task.rows[place.cell].push_back(outcomeOf(rep));
    return true;
  };
  return {task.looks, model, Schedule(task.looks.setups.size(), static_cast<std::size_t>(n)), take};
}

int tell(const FaultsOptions& options, const Setup& look, FaultTask& task, StudyEnd end) {
  const int n = cutToCommon(task.rows);
  if (end == StudyEnd::part || n < 2) return exitCodeOf(end);
  const FaultResult result = faultsOf(look, task.mistakes, task.rows);
  writeFiles(options.files, tableOf(look, result), [&] { return pageFor(look, result, n); });
  if (options.json) {
    printAnswer(answerFor(look, result, n));
  } else {
    printWords(look, result, n);
  }
  return exitCodeOf(end);
}

}  // namespace

int runFaults(const FaultsOptions& options) {
  requireFiles(options.files);
  const Model model = modelFor(options.model);
  const Scenario scenario = scenarioFor(options, options.file, options.changes, model);
  StudyLooks plain;
  plain.add(scenario, model);
  const Setup& look = plain.setups.front();
  FaultTask single = taskFor(look, plain.texts.front(), everyMistake(look, options.blockers));
  StudyJob job = jobFor(single, model, options.n);
  job.keep_log = options.pairs;
  const StudyEnd end = runStudy(job, options);
  if (!options.pairs || end != StudyEnd::whole) return tell(options, look, single, end);
  const FaultResult ranked = faultsOf(look, single.mistakes, single.rows);
  FaultTask pairs = taskFor(look, plain.texts.front() + "pairs", pairsOf(ranked.rows, kPaired));
  const StudyEnd second = runStudy(jobFor(pairs, model, options.n), secondStage(options));
  if (second == StudyEnd::whole) dropLog(job, options);
  return tell(options, look, pairs, second);
}

}  // namespace gapsound
