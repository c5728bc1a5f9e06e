#include "study/matrix.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "base/error.hpp"
#include "base/nearest.hpp"
#include "cli/outputs.hpp"
#include "cli/print.hpp"
#include "cli/session.hpp"
#include "cli/study_run.hpp"
#include "cli/verbs.hpp"
#include "io/csv.hpp"
#include "io/plan_file.hpp"
#include "io/roster.hpp"
#include "io/scenario_file.hpp"
#include "picture/grid.hpp"
#include "scenario/resolve.hpp"

namespace gapsound {
namespace {

using Names = std::vector<std::string>;

bool hasLists(const MatrixOptions& o) {
  return !(o.formations.empty() && o.fronts.empty() && o.schemes.empty() && o.variants.empty() &&
           o.shells.empty() && o.structures.empty());
}

Names orOne(const Names& names, const std::string& usual, const char* option, const char* form) {
  if (!names.empty()) return names;
  if (usual.empty()) throw InputError("options", option, "nothing", form);
  return {usual};
}

/// The scenario whose names the lists change: the file's, or a plain one.
Scenario baseFor(const MatrixOptions& options) {
  Scenario base;
  if (!options.file.empty()) base = readScenario(options.file, options.changes);
  base.source = options.file.empty() ? "options" : options.file;
  if (options.file.empty()) base.offense.direction = options.direction;
  if (options.level == "pro") base.level = Level::pro;
  if (options.level == "college") base.level = Level::college;
  if (options.level == "high_school") base.level = Level::high_school;
  return base;
}

/// Those of the asked-for variants that the scheme has; "all" for every one.
Names variantsOf(const std::string& scheme, const Names& asked) {
  const Scheme* found = findScheme(library(), scheme);
  if (!found) return {"base"};  // refused with its name when the pair is resolved
  Names variants;
  for (const auto& variant : variantNames(*found)) {
    const auto same = [&](const auto& name) { return sameName(name, variant) || sameName(name, "all"); };
    if (std::any_of(asked.begin(), asked.end(), same)) variants.push_back(variant);
  }
  return variants;
}

const std::string& shown(const std::string& id) { return library().vocabulary.shown(id); }

void addRuns(Plan& plan, const Scenario& base, const MatrixOptions& o) {
  const Names formations =
      orOne(o.formations, base.offense.formation, "--formations", "names, or a scenario or plan file");
  const Names schemes =
      orOne(o.schemes, base.offense.scheme, "--schemes", "names, or a scenario or plan file");
  const Names variants = orOne(o.variants, base.offense.variant, "--variants", "names or all");
  for (const auto& formation : formations) {
    for (const auto& scheme : schemes) {
      for (const auto& variant : variantsOf(scheme, variants)) {
        PlanRun run;
        run.offense = base.offense, run.field = base.field;
        run.offense.formation = formation, run.offense.scheme = scheme, run.offense.variant = variant;
        run.name = shown(scheme) + (variant == "base" ? "" : " " + shown(variant)) +
                   (formations.size() > 1 ? " " + shown(formation) : "");
        plan.runs.push_back(run);
      }
    }
  }
  if (plan.runs.empty())
    throw InputError("options", "--variants", fmt::format("{}", fmt::join(o.variants, ",")),
                     fmt::format("variants of {}: see gapsound list variants", fmt::join(schemes, ", ")));
}

void addCalls(Plan& plan, const Scenario& base, const MatrixOptions& o) {
  const Names shells = orOne(o.shells, base.defense.shell, "--shells", "names");
  const Names structures = orOne(o.structures, base.defense.structure, "--structures", "spill, box");
  for (const auto& front :
       orOne(o.fronts, base.defense.front, "--fronts", "names, or a scenario or plan file")) {
    for (const auto& shell : shells) {
      for (const auto& structure : structures) {
        PlanCall call{shown(front), base.defense};
        call.defense.front = front, call.defense.shell = shell, call.defense.structure = structure;
        if (shells.size() > 1) call.name += " " + shown(shell);
        if (structures.size() > 1) call.name += " " + structure;
        plan.calls.push_back(call);
      }
    }
  }
}

Plan planFor(const MatrixOptions& options) {
  if (!options.file.empty() && isPlanFile(options.file)) {
    if (hasLists(options))
      throw InputError("options", "--fronts and the like", "lists beside a plan",
                       "a plan alone, or lists with or without a scenario");
    return readPlan(options.file, options.changes);
  }
  const Scenario base = baseFor(options);
  Plan plan;
  plan.source = base.source;
  plan.title = base.title.empty() ? "Our calls against their runs" : base.title;
  plan.level = base.level;
  plan.clock = base.clock;
  plan.players = base.players;
  addRuns(plan, base, options);
  addCalls(plan, base, options);
  return plan;
}

Scenario withRoster(Scenario scenario, const MatrixOptions& options, const Model& model) {
  if (options.roster.empty()) return scenario;
  Names ids;
  for (const Man& man : resolve(scenario, library(), model).men) ids.push_back(man.drawn);
  layRoster(readRoster(options.roster), ids, scenario);
  return scenario;
}

Scenario pairFor(const MatrixOptions& options, const Plan& plan, std::size_t run, std::size_t call,
                 const Model& model) {
  return withRoster(pairWithPlayers(plan, run, call, library(), model), options, model);
}

StudyLooks looksFor(const MatrixOptions& options, const Plan& plan, const Model& model) {
  constexpr std::size_t kMost = 2000;
  const std::size_t cells = plan.runs.size() * plan.calls.size();
  if (cells > kMost)
    throw InputError("options", "matrix", fmt::format("{} cells", cells), fmt::format("at most {}", kMost));
  StudyLooks looks;
  for (std::size_t call = 0; call < plan.calls.size(); ++call)
    for (std::size_t run = 0; run < plan.runs.size(); ++run)
      looks.add(pairFor(options, plan, run, call, model), model);
  return looks;
}

/// The worst cell with its call as it is and with every single change; changes that the front cannot carry
/// are left out.
struct Trial {
  StudyLooks looks;
  std::vector<CallChange> changes;
};

Trial trialFor(const MatrixOptions& options, Plan plan, const MatrixCell& worst, const Model& model) {
  Trial trial;
  trial.looks.add(pairFor(options, plan, worst.column, worst.row, model), model);
  PlanCall& call = plan.calls[worst.row];
  for (const CallChange& change : callChanges(call.defense, library())) {
    call.defense = change.defense;
    try {
      trial.looks.add(pairFor(options, plan, worst.column, worst.row, model), model);
      trial.changes.push_back(change);
    } catch (const InputError&) {
      continue;
    }
  }
  return trial;
}

StudyJob jobFor(const StudyLooks& looks, const Model& model, int n, Rows& rows) {
  rows.resize(looks.setups.size());
  const auto take = [&rows](const RepPlace& place, const Summary& rep) {
    rows[place.cell].push_back(outcomeOf(rep));
    return true;
  };
  return {looks, model, Schedule(looks.setups.size(), static_cast<std::size_t>(n)), take};
}

void cutToCommon(Rows& rows) {
  std::size_t least = rows.front().size();
  for (const auto& row : rows) least = std::min(least, row.size());
  for (auto& row : rows) row.resize(least);
}

Answer cellAnswer(const MatrixResult& r, const Plan& plan, const MatrixCell& cell) {
  const PlanRun& run = plan.runs[cell.column];
  const DefensePlan& call = plan.calls[cell.row].defense;
  const Gains& g = cell.gains;
  Answer unsound = nullptr;
  if (!cell.unsound_gap.empty()) unsound = cell.unsound_gap;
  return {{"call", r.rows[cell.row]},
          {"run", r.columns[cell.column]},
          {"front", call.front},
          {"shell", call.shell},
          {"structure", call.structure},
          {"formation", run.offense.formation},
          {"scheme", run.offense.scheme},
          {"variant", run.offense.variant},
          {"n", g.n},
          {"mean", g.mean},
          {"mean_ci", asPair(g.mean_ci)},
          {"stuffed", g.stuffed},
          {"ten_plus", g.ten_plus},
          {"success", g.success},
          {"unsound_gap", unsound}};
}

Answer adviceAnswer(const MatrixResult& r) {
  if (!r.advice) return nullptr;
  return {{"change", r.advice->words},
          {"saves", r.advice->saves.difference},
          {"saves_ci", asPair(r.advice->saves.ci)},
          {"p_value", r.advice->saves.p_value}};
}

Answer answerFor(const MatrixResult& r, const Plan& plan) {
  Answer cells = Answer::array(), worst_of_row = Answer::array();
  for (const MatrixCell& cell : r.cells) cells.push_back(cellAnswer(r, plan, cell));
  for (const std::size_t cell : r.worst_of_row) worst_of_row.push_back(cellAnswer(r, plan, r.cells[cell]));
  return {{"rows", r.rows},
          {"columns", r.columns},
          {"cells", cells},
          {"worst", cellAnswer(r, plan, r.cells[r.worst])},
          {"worst_of_row", worst_of_row},
          {"best_row", r.rows[r.best_row]},
          {"advice", adviceAnswer(r)},
          {"sentence", r.sentence}};
}

std::size_t widestOf(const Names& names) {
  std::size_t widest = 8;
  for (const auto& name : names) widest = std::max(widest, name.size() + 2);
  return widest;
}

void printWords(const MatrixResult& r) {
  fmt::print("{}\n\nmean gain, yd; * the worst run of the call, ! a gap nobody has on paper\n\n", r.sentence);
  const std::size_t first = widestOf(r.rows), width = std::max<std::size_t>(widestOf(r.columns), 9);
  fmt::print("{:<{}}", "", first);
  for (const auto& column : r.columns) fmt::print("{:>{}}", column, width);
  for (const MatrixCell& cell : r.cells) {
    if (cell.column == 0) fmt::print("\n{:<{}}", r.rows[cell.row], first);
    const bool worst = r.worst_of_row[cell.row] == cell.row * r.columns.size() + cell.column;
    fmt::print(
        "{:>{}}",
        fmt::format("{:.2f}{}{}", cell.gains.mean, worst ? "*" : "", cell.unsound_gap.empty() ? "" : "!"),
        width);
  }
  fmt::print("\n");
  for (const MatrixCell& cell : r.cells)
    if (!cell.unsound_gap.empty())
      fmt::print("{} against {}: nobody has {}\n", r.rows[cell.row], r.columns[cell.column],
                 cell.unsound_gap);
}

std::string tableOf(const MatrixResult& r) {
  std::string table = csvLine(
      {"call", "run", "n", "mean", "mean_low", "mean_high", "stuffed", "ten_plus", "success", "unsound_gap"});
  for (const MatrixCell& cell : r.cells) {
    const Gains& g = cell.gains;
    Names row{r.rows[cell.row], r.columns[cell.column], fmt::format("{}", g.n)};
    for (const double value : {g.mean, g.mean_ci.low, g.mean_ci.high, g.stuffed, g.ten_plus, g.success})
      row.push_back(fmt::format("{}", value));
    row.push_back(cell.unsound_gap);
    table += csvLine(row);
  }
  return table;
}

DisplayList pageFor(const std::string& title, const MatrixResult& r) {
  GridData grid{{title, r.sentence, ""}, "our call", "their run", r.rows, r.columns, {}, "mean gain, yd"};
  grid.words.footnote = fmt::format(
      "Frame: the run that hurts the call most. Hatched corner: a gap nobody has on paper. Under the mean: "
      "held to nothing, ten or more. {} reps a cell, the same luck for all.",
      r.cells.front().gains.n);
  for (std::size_t k = 0; k < r.cells.size(); ++k) {
    const MatrixCell& cell = r.cells[k];
    const std::string note =
        fmt::format("{:.0f} % / {:.0f} %", 100 * cell.gains.stuffed, 100 * cell.gains.ten_plus);
    grid.cells.push_back({cell.gains.mean, fmt::format("{:.1f}", cell.gains.mean), note,
                          r.worst_of_row[cell.row] == k, !cell.unsound_gap.empty(), false});
  }
  return gridPage(grid);
}

void addAdvice(MatrixResult& result, const MatrixOptions& options, const Plan& plan, const Model& model) {
  const Trial trial = trialFor(options, plan, result.cells[result.worst], model);
  Rows rows;
  ManyOptions second = secondStage(options);
  second.seed += static_cast<std::uint64_t>(options.n);
  if (runStudy(jobFor(trial.looks, model, options.n, rows), second) != StudyEnd::whole) return;
  advise(result, trial.changes, rows);
}

}  // namespace

int runMatrix(const MatrixOptions& options) {
  requireFiles(options.files);
  const Model model = modelFor(options.model);
  const Plan plan = planFor(options);
  const StudyLooks looks = looksFor(options, plan, model);
  Rows rows;
  StudyJob job = jobFor(looks, model, options.n, rows);
  job.keep_log = true;
  const StudyEnd end = runStudy(job, options);
  cutToCommon(rows);
  if (end == StudyEnd::part || rows.front().size() < 2) return exitCodeOf(end);
  MatrixResult result = matrixOf(plan, looks.setups, rows);
  if (end == StudyEnd::whole) {
    addAdvice(result, options, plan, model);
    dropLog(job, options);
  }
  writeFiles(options.files, tableOf(result), [&] { return pageFor(plan.title, result); });
  if (options.json) {
    printAnswer(answerFor(result, plan));
  } else {
    printWords(result);
  }
  return exitCodeOf(end);
}

}  // namespace gapsound
