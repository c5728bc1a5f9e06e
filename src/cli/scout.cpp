#include <fmt/core.h>

#include "base/error.hpp"
#include "cli/print.hpp"
#include "cli/session.hpp"
#include "cli/verbs.hpp"
#include "io/atomic_file.hpp"
#include "io/charting_file.hpp"
#include "io/plan_file.hpp"
#include "io/scenario_file.hpp"

namespace gapsound {
namespace {

ChartingWords wordsOf(const ScoutOptions& options) {
  ChartingWords words;
  for (const std::string& text : options.columns) words.columns.push_back(wordPair(text, "--columns"));
  for (const std::string& text : options.names) words.names.push_back(wordPair(text, "--name"));
  return words;
}

/// Calls to start from when none are named.
std::vector<PlanCall> usualCalls() {
  const auto call = [](const char* name, const char* front, const char* shell, const char* structure) {
    PlanCall made;
    made.name = name;
    made.defense.front = front, made.defense.shell = shell, made.defense.structure = structure;
    return made;
  };
  return {call("Over, quarters", "D01", "quarters", "spill"),
          call("Nickel over, sky", "D03", "cover 3 sky", "spill"),
          call("Bear, man free", "D08", "cover 1", "box")};
}

/// Everything of the plan but their runs.
Plan oursFrom(const std::string& file) {
  Plan plan;
  if (file.empty()) {
    plan.calls = usualCalls();
  } else if (isPlanFile(file)) {
    plan = readPlan(file);
    plan.runs.clear();
  } else {
    const Scenario scenario = readScenario(file);
    plan.level = scenario.level, plan.clock = scenario.clock;
    plan.calls = {{fmt::format("{} {}", scenario.defense.front, scenario.defense.shell), scenario.defense}};
  }
  return plan;
}

void tell(const Charting& charting, const Plan& plan, std::size_t all) {
  fmt::print("{} rows: {} runs, {} passes, {} unreadable\n", charting.rows, charting.runs.size(),
             charting.passes, charting.unreadable.size());
  for (const PlanRun& run : plan.runs)
    fmt::print("  {:>4.0f} %  {:>3} snaps  {:>5.1f} yd  {}{}\n", 100.0 * run.share, run.seen, run.gain,
               run.name, run.thin ? "  (thin data)" : "");
  if (all > plan.runs.size())
    fmt::print("  {} more kinds of run are left out; --top keeps more\n", all - plan.runs.size());
}

Answer asAnswer(const Charting& charting, const Plan& plan, const std::string& out) {
  Answer answer = {{"written", out},
                   {"rows", charting.rows},
                   {"used", charting.runs.size()},
                   {"passes", charting.passes},
                   {"unreadable", Answer::array()},
                   {"runs", Answer::array()}};
  for (const auto& row : charting.unreadable)
    answer["unreadable"].push_back({{"row", row.row}, {"why", row.why}});
  for (const PlanRun& run : plan.runs)
    answer["runs"].push_back({{"name", run.name},
                              {"share", run.share},
                              {"seen", run.seen},
                              {"gain", run.gain},
                              {"thin", run.thin}});
  return answer;
}

}  // namespace

int runScout(const ScoutOptions& options) {
  requireWritable(options.out);
  const Charting charting = readCharting(options.file, wordsOf(options), library());
  for (const auto& row : charting.unreadable) fmt::print(stderr, "gapsound: row {}: {}\n", row.row, row.why);
  if (charting.runs.empty()) throw InputError(options.file, "rows", "no run can be read", "at least one run");
  Plan plan = oursFrom(options.ours);
  plan.title = options.title.empty() ? "Their runs as charted" : options.title;
  plan.runs = runsFrom(charting.runs, library());
  const std::size_t all = plan.runs.size();
  plan.runs.resize(std::min(all, static_cast<std::size_t>(options.top)));
  static_cast<void>(resolveAll(plan, library(), modelFor("")));
  writeAtomically(options.out, toJson(plan));
  if (options.ours.empty())
    fmt::print(stderr, "gapsound: our calls are three usual ones; --ours FILE takes yours\n");
  if (options.json) {
    printAnswer(asAnswer(charting, plan, options.out));
  } else {
    tell(charting, plan, all);
    fmt::print("{} written\n", options.out);
  }
  return 0;
}

}  // namespace gapsound
