#include "study/vary.hpp"

#include <fmt/core.h>

#include <algorithm>

#include "cli/outputs.hpp"
#include "cli/print.hpp"
#include "cli/session.hpp"
#include "cli/sweep_plan.hpp"
#include "cli/verbs.hpp"
#include "io/csv.hpp"
#include "picture/chart.hpp"
#include "picture/grid.hpp"
#include "study/sweep_words.hpp"

namespace gapsound {
namespace {

Answer cellAnswer(const SweepCell& cell) {
  const Gains& g = cell.gains;
  return {{"at", cell.at},
          {"n", g.n},
          {"mean", g.mean},
          {"mean_ci", asPair(g.mean_ci)},
          {"cutback_open", g.cutback_open},
          {"cutback_taken", g.cutback_taken},
          {"stuffed", g.stuffed},
          {"ten_plus", g.ten_plus},
          {"success", g.success},
          {"cutback_open_ci", asPair(intervalOfShare(g.cutback_open, g.n))},
          {"past_best", cell.past_best.difference},
          {"past_best_ci", asPair(cell.past_best.ci)},
          {"breaks", cell.breaks}};
}

Answer breakAnswer(const SweepResult& result) {
  if (!result.break_point) return nullptr;
  const BreakPoint& point = *result.break_point;
  return {{"path", result.axes.front().path},
          {"value", point.value},
          {"ci", asPair(point.ci)},
          {"found", point.found}};
}

Answer answerFor(const SweepResult& result) {
  Answer over = Answer::array();
  for (const SweepAxis& axis : result.axes) over.push_back(axis.path);
  Answer cells = Answer::array();
  for (const SweepCell& cell : result.cells) cells.push_back(cellAnswer(cell));
  const SweepCell& best = result.cells[result.best];
  return {{"over", over},
          {"cells", cells},
          {"break_point", breakAnswer(result)},
          {"best", {{"at", best.at}, {"mean", result.best_mean}}},
          {"sentence", result.sentence}};
}

std::string axisName(const SweepAxis& axis) {
  return axis.unit.empty() ? axis.words : axis.words + ", " + axis.unit;
}

std::string marks(const SweepResult& result, std::size_t cell) {
  if (cell == result.best) return "  best";
  return result.break_point && result.break_point->cell == cell ? "  breaks here" : "";
}

void printCurve(const SweepResult& result) {
  fmt::print("{}\n", axisName(result.axes.front()));
  fmt::print("{:>8}{:>9}{:>18}{:>11}{:>12}{:>10}{:>14}{:>15}\n", "", "mean yd", "95 %", "0 or less",
             "10 or more", "success", "cutback open", "cutback taken");
  for (std::size_t k = 0; k < result.cells.size(); ++k) {
    const SweepCell& cell = result.cells[k];
    const Gains& g = cell.gains;
    fmt::print("{:>8g}{:>9.2f}{:>18}{:>11}{:>12}{:>10}{:>14}{:>15}{}\n", cell.at.front(), g.mean,
               fmt::format("{:.2f} to {:.2f}", g.mean_ci.low, g.mean_ci.high), percent(g.stuffed),
               percent(g.ten_plus), percent(g.success), percent(g.cutback_open), percent(g.cutback_taken),
               marks(result, k));
  }
  fmt::print("\nbest: the least on other snaps; on these another may be lower by luck\n");
}

/// Means, the first setting down and the second across; * past the limit, [] the best.
void printMap(std::FILE* to, const SweepResult& result) {
  const auto& columns = result.axes[1].values;
  fmt::print(to, "{} down, {} across: mean gain, yd; [ ] least on these snaps, * costs too much\n{:>9}",
             axisName(result.axes[0]), axisName(result.axes[1]), "");
  for (const double value : columns) fmt::print(to, "{:>8g}", value);
  for (std::size_t k = 0; k < result.cells.size(); ++k) {
    const SweepCell& cell = result.cells[k];
    if (k % columns.size() == 0) fmt::print(to, "\n{:>9g}", cell.at[0]);
    const std::string mean = fmt::format("{:.1f}", cell.gains.mean);
    fmt::print(to, "{:>8}", k == result.best ? "[" + mean + "]" : cell.breaks ? mean + "*" : mean + " ");
  }
  fmt::print(to, "\n");
}

void printWords(const SweepResult& result) {
  fmt::print("{}\n\n", result.sentence);
  if (result.axes.size() > 1)
    printMap(stdout, result);
  else
    printCurve(result);
}

std::string tableOf(const SweepResult& result) {
  std::vector<std::string> header;
  for (const SweepAxis& axis : result.axes) header.push_back(axis.path);
  for (const char* name : {"n", "mean", "mean_low", "mean_high", "cutback_open", "cutback_taken", "stuffed",
                           "ten_plus", "success"})
    header.emplace_back(name);
  std::string table = csvLine(header);
  for (const SweepCell& cell : result.cells) {
    const Gains& g = cell.gains;
    std::vector<std::string> row;
    for (const double at : cell.at) row.push_back(fmt::format("{}", at));
    row.push_back(fmt::format("{}", g.n));
    for (const double value : {g.mean, g.mean_ci.low, g.mean_ci.high, g.cutback_open, g.cutback_taken,
                               g.stuffed, g.ten_plus, g.success})
      row.push_back(fmt::format("{}", value));
    table += csvLine(row);
  }
  return table;
}

Curve meanCurve(const SweepResult& result) {
  Curve curve;
  curve.name = "mean gain";
  for (const SweepCell& cell : result.cells) {
    curve.x.push_back(cell.at.front());
    curve.y.push_back(cell.gains.mean);
    curve.low.push_back(cell.gains.mean_ci.low);
    curve.high.push_back(cell.gains.mean_ci.high);
  }
  return curve;
}

std::vector<AxisMark> marksOf(const SweepResult& result) {
  std::vector<AxisMark> marks{{result.cells[result.best].at.front(), "best", {}}};
  if (result.break_point) {
    const BreakPoint& point = *result.break_point;
    marks.push_back({point.value, "breaks", std::pair(point.ci.low, point.ci.high)});
  }
  return marks;
}

DisplayList curvePage(const std::string& title, const SweepResult& result) {
  const std::string reps = fmt::format("{} reps a value, band at 95 %, the same luck for every value",
                                       result.cells.front().gains.n);
  return chartPage({title,
                    result.sentence,
                    axisName(result.axes.front()),
                    "mean gain, yd",
                    {meanCurve(result)},
                    marksOf(result),
                    reps});
}

DisplayList mapPage(const std::string& title, const SweepResult& result) {
  GridData grid{{title, result.sentence, ""},
                axisName(result.axes[0]),
                axisName(result.axes[1]),
                {},
                {},
                {},
                "mean gain, yd"};
  grid.words.footnote = fmt::format(
      "Frame: the least. Hatched corner: past the limit against it. {} reps a cell, the same luck for all.",
      result.cells.front().gains.n);
  for (const double value : result.axes[0].values) grid.rows.push_back(fmt::format("{:g}", value));
  for (const double value : result.axes[1].values) grid.columns.push_back(fmt::format("{:g}", value));
  for (std::size_t k = 0; k < result.cells.size(); ++k) {
    const SweepCell& cell = result.cells[k];
    grid.cells.push_back(
        {cell.gains.mean, fmt::format("{:.1f}", cell.gains.mean), "", k == result.best, cell.breaks, false});
  }
  return gridPage(grid);
}

DisplayList pageFor(const std::string& title, const SweepResult& result) {
  return result.axes.size() > 1 ? mapPage(title, result) : curvePage(title, result);
}

/// The coarse reps of a map, each standing for its neighbours.
Rows filledFromCoarse(const SweepPlan& plan, const Rows& rows) {
  const std::size_t columns = plan.axes[1].values.size(), lines = plan.axes[0].values.size();
  const auto coarse = [](std::size_t k, std::size_t n) { return k % 2 == 0 || k + 1 == n ? k : k - 1; };
  Rows filled(rows.size());
  for (std::size_t k = 0; k < rows.size(); ++k)
    filled[k] = rows[coarse(k / columns, lines) * columns + coarse(k % columns, columns)];
  return filled;
}

void showFirstLook(const VaryOptions& options, const SweepPlan& plan, const Rows& rows) {
  const SweepResult first = sweepOf(plan, filledFromCoarse(plan, rows));
  fmt::print(stderr, "first look, every other value, {} reps a cell:\n", first.cells.front().gains.n);
  printMap(stderr, first);
  writeFiles(options.files, tableOf(first),
             [&] { return pageFor(plan.setups.front().title + " (first look)", first); });
}

/// Two snaps to judge a cell by, and with one setting two to choose the best one by.
bool enough(const SweepPlan& plan, const Rows& rows) {
  const std::size_t least = plan.axes.size() > 1 ? 2 : 4;
  return std::all_of(rows.begin(), rows.end(), [&](const auto& row) { return row.size() >= least; });
}

}  // namespace

int runVary(const VaryOptions& options) {
  requireFiles(options.files);
  const Model model = modelFor(options.model);
  const SweepTask task = sweepTaskFor(options, model);
  Rows rows(task.plan.setups.size());
  UntilNarrow narrow(options, rows.size());
  const auto take = [&](const RepPlace& place, const Summary& rep) {
    rows[place.cell].push_back(outcomeOf(rep));
    return !narrow.reached([&] { return widestDifference(task.plan, rows); });
  };
  StudyJob job{task.looks, model, task.plan.schedule(), take};
  job.first_look = [&] { showFirstLook(options, task.plan, rows); };
  const StudyEnd end = runStudy(job, options);
  if (end == StudyEnd::part || !enough(task.plan, rows)) return exitCodeOf(end);
  SweepResult result = sweepOf(task.plan, rows);
  judgeBest(result, task.plan, model);
  writeFiles(options.files, tableOf(result), [&] { return pageFor(task.plan.setups.front().title, result); });
  if (options.json) {
    printAnswer(answerFor(result));
  } else {
    printWords(result);
  }
  return exitCodeOf(end);
}

}  // namespace gapsound
