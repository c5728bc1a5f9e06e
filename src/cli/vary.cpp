#include "study/vary.hpp"

#include <fmt/core.h>

#include <array>
#include <string_view>

#include "base/error.hpp"
#include "cli/print.hpp"
#include "cli/session.hpp"
#include "cli/verbs.hpp"
#include "io/atomic_file.hpp"
#include "io/theme_file.hpp"
#include "painters/cairo_painter.hpp"
#include "picture/chart.hpp"

namespace gapsound {
namespace {

struct SettingWords {
  std::string_view key, words, unit;
};

constexpr std::array<SettingWords, 6> kSettings = {{
    {"downhill_yps", "the downhill speed", "yd/s"},
    {"read_delay_s", "the read", "s"},
    {"depth_yd", "the depth", "yd"},
    {"mass_kg", "the weight", "kg"},
    {"forty_yd_s", "the forty", "s"},
    {"ten_yd_s", "the ten", "s"},
}};

std::string manIn(const std::string& path) {
  constexpr std::string_view kPlayers = "players.";
  if (path.rfind(kPlayers, 0) != 0) return "";
  return path.substr(kPlayers.size(), path.find('.', kPlayers.size()) - kPlayers.size());
}

SweepAxis axisFor(const Sweep& sweep) {
  const std::string key = sweep.path.substr(sweep.path.rfind('.') + 1);
  const std::string man = manIn(sweep.path);
  for (const auto& setting : kSettings) {
    if (man.empty() || setting.key != key) continue;
    return {sweep.path, std::string(setting.words) + " of " + man, std::string(setting.unit), sweep.values};
  }
  return {sweep.path, sweep.path, "", sweep.values};
}

bool isSafety(const Setup& setup, const std::string& id) {
  for (const Man& man : setup.men) {
    if (man.id == id) return man.group == Group::safety;
  }
  return false;
}

SweepPlan planFor(const VaryOptions& options, const Model& model) {
  const Sweep sweep = expandRange(options.over.front());
  SweepPlan plan;
  plan.axes = {axisFor(sweep)};
  for (const double value : sweep.values) {
    plan.setups.push_back(
        setupFor(options.file, joined(options.changes, {{settingText(sweep.path, value)}, {}}), model));
  }
  plan.first_seed = options.seed;
  plan.n = options.n;
  plan.threads = options.jobs;
  plan.about_safety = isSafety(plan.setups.front(), manIn(sweep.path));
  return plan;
}

Answer cellAnswer(const SweepCell& cell) {
  const Distribution& d = cell.gains;
  return {{"at", cell.at}, {"n", d.n}, {"mean", d.mean}, {"mean_ci", asPair(d.mean_ci)},
          {"cutback_open", d.cutback_open}, {"cutback_taken", d.cutback_taken}, {"stuffed", d.stuffed},
          {"ten_plus", d.ten_plus}};
}

Answer breakAnswer(const SweepResult& result) {
  if (!result.break_point) return nullptr;
  const BreakPoint& point = *result.break_point;
  return {{"path", result.axes.front().path}, {"value", point.value}, {"ci", asPair(point.ci)}};
}

Answer answerFor(const SweepResult& result) {
  Answer over = Answer::array();
  for (const SweepAxis& axis : result.axes) over.push_back(axis.path);
  Answer cells = Answer::array();
  for (const SweepCell& cell : result.cells) cells.push_back(cellAnswer(cell));
  const SweepCell& best = result.cells[result.best];
  return {{"over", over}, {"cells", cells}, {"break_point", breakAnswer(result)},
          {"best", {{"at", best.at}, {"mean", best.gains.mean}}}, {"sentence", result.sentence}};
}

std::string marks(const SweepResult& result, std::size_t cell) {
  if (cell == result.best) return "  best";
  return result.break_point && result.break_point->cell == cell ? "  breaks here" : "";
}

void printWords(const SweepResult& result) {
  const SweepAxis& axis = result.axes.front();
  fmt::print("{}\n\n", result.sentence);
  fmt::print("{} {}\n", axis.words, axis.unit.empty() ? "" : "(" + axis.unit + ")");
  fmt::print("{:>8}{:>9}{:>18}{:>11}{:>12}{:>14}{:>15}\n", "", "mean yd", "95 %", "0 or less", "10 or more",
             "cutback open", "cutback taken");
  for (std::size_t k = 0; k < result.cells.size(); ++k) {
    const auto& [at, d, past_best, opens_more] = result.cells[k];
    fmt::print("{:>8g}{:>9.2f}{:>18}{:>11}{:>12}{:>14}{:>15}{}\n", at.front(), d.mean,
               fmt::format("{:.2f} to {:.2f}", d.mean_ci.low, d.mean_ci.high), percent(d.stuffed),
               percent(d.ten_plus), percent(d.cutback_open), percent(d.cutback_taken), marks(result, k));
  }
}

std::string table(const SweepResult& result) {
  std::string text = result.axes.front().path + ",n,mean,mean_low,mean_high,cutback_open,cutback_taken,stuffed,ten_plus\n";
  for (const SweepCell& cell : result.cells) {
    const Distribution& d = cell.gains;
    text += fmt::format("{},{},{},{},{},{},{},{},{}\n", cell.at.front(), d.n, d.mean, d.mean_ci.low, d.mean_ci.high,
                        d.cutback_open, d.cutback_taken, d.stuffed, d.ten_plus);
  }
  return text;
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

ChartData chartFor(const std::string& title, const SweepResult& result) {
  const SweepAxis& axis = result.axes.front();
  const std::string unit = axis.unit.empty() ? "" : ", " + axis.unit;
  const std::string reps = fmt::format("{} reps a value, band at 95 %, the same luck for every value",
                                       result.cells.front().gains.n);
  return {title, result.sentence, axis.words + unit, "mean gain, yd", {meanCurve(result)}, marksOf(result), reps};
}

void writeFiles(const VaryOptions& options, const std::string& title, const SweepResult& result) {
  if (!options.csv.empty()) writeAtomically(options.csv, table(result));
  const DisplayList page = chartPage(chartFor(title, result));
  const Theme theme = shippedTheme("paper");
  if (!options.png.empty()) writePng(page, theme, options.png);
  if (!options.svg.empty()) writeSvg(page, theme, options.svg);
  if (!options.pdf.empty()) writePdf({page}, theme, options.pdf);
}

}  // namespace

int runVary(const VaryOptions& options) {
  for (const auto* file : {&options.csv, &options.png, &options.svg, &options.pdf}) {
    if (!file->empty()) requireWritable(*file);
  }
  const Model model = modelFor(options.model);
  const SweepPlan plan = planFor(options, model);
  SweepResult result;
  {
    ProgressLine progress("playing");
    result = vary(plan, model, progress.reporter());
  }
  writeFiles(options, plan.setups.front().title, result);
  if (options.json) {
    printAnswer(answerFor(result));
  } else {
    printWords(result);
  }
  return 0;
}

}  // namespace gapsound
