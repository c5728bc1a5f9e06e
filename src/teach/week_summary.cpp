#include "teach/week_summary.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "study/distribution.hpp"
#include "study/statistics.hpp"
#include "teach/script.hpp"

namespace gapsound {
namespace {

constexpr double kMargin = 50.0, kTitle = 34.0, kHead = 24.0, kText = 21.0, kCaution = 14.0;  // page units
constexpr std::size_t kMostChanges = 3, kMostDangers = 6;

double weightOf(const Plan& plan, std::size_t run) {
  double charted = 0.0;
  for (const PlanRun& each : plan.runs) charted += each.share;
  return charted > 0.0 ? plan.runs[run].share / charted : 1.0 / static_cast<double>(plan.runs.size());
}

std::string shareWords(const Plan& plan, std::size_t run) {
  return plan.runs[run].share > 0.0 ? fmt::format(", {:.0f} % of their runs", 100.0 * plan.runs[run].share)
                                    : "";
}

std::string changeSentence(const Plan& plan, const PairReps& reps, const CallSwap& change) {
  const double first = meanOf(yardsOf(reps[change.run][0])),
               other = meanOf(yardsOf(reps[change.run][change.call]));
  return fmt::format(
      "Against {}{}: play {} in place of {}. It gives up {:.1f} yd in place of {:.1f}, {:.1f} less "
      "({:.1f} to {:.1f}).",
      plan.runs[change.run].name, shareWords(plan, change.run), plan.calls[change.call].name,
      plan.calls[0].name, other, first, change.saves, change.ci.low, change.ci.high);
}

class Page {
 public:
  Page(Paper paper, const std::string& title) : size_(sheetSize(paper)), layout_(size_.x, size_.y) {
    foot_ = layout_.caution(kMargin, kCaution);
    y_ = layout_.line(kMargin, kMargin, width(), title, kTitle, StyleId::title) + 8.0;
  }
  void head(const std::string& words) { say(words, kHead, StyleId::strong, 10.0); }
  void text(const std::string& words) { say(words, kText, StyleId::text, 6.0); }
  void table(Table table) {
    while (table.size > 9.0 && heightOf(table) > foot_ - y_) table.size *= 0.97;
    if (heightOf(table) <= foot_ - y_) y_ = put(layout_, table, kMargin, y_) + 16.0;
  }
  [[nodiscard]] double width() const { return size_.x - 2.0 * kMargin; }
  LaidPage done() && { return std::move(layout_).done(); }

 private:
  void say(const std::string& words, double size, StyleId style, double after) {
    if (y_ + Layout::heightOf(words, size, width()) <= foot_)
      y_ = layout_.words(kMargin, y_, width(), words, size, style) + after;
  }
  Vec2 size_;
  Layout layout_;
  double foot_ = 0.0, y_ = 0.0;
};

Table dangerTable(const Plan& plan, const PairReps& reps, double width) {
  Table table;
  table.size = kText;
  table.widths = {0.36 * width, 0.28 * width, 0.12 * width, 0.12 * width, 0.12 * width};
  table.rows.push_back({"run", "our call", "mean yd", "one in ten", "share"});
  for (const Danger& danger : dangersOf(plan, reps))
    if (table.rows.size() <= kMostDangers)
      table.rows.push_back({plan.runs[danger.run].name, plan.calls[danger.call].name,
                            fmt::format("{:.1f}", danger.mean), fmt::format("{:.0f} or more", danger.p90),
                            fmt::format("{:.0f} %", 100.0 * danger.weight)});
  return table;
}

}  // namespace

std::vector<CallSwap> changesOf(const Plan& plan, const PairReps& reps) {
  std::vector<CallSwap> changes;
  for (std::size_t run = 0; run < reps.size(); ++run) {
    CallSwap best;
    for (std::size_t call = 1; call < reps[run].size(); ++call) {
      const Paired paired = pairedDifference(yardsOf(reps[run][call]), yardsOf(reps[run][0]));
      if (paired.ci.low > 0.0 && paired.difference > best.saves)
        best = {run, call, paired.difference, paired.ci, weightOf(plan, run)};
    }
    if (best.call != 0) changes.push_back(best);
  }
  std::stable_sort(changes.begin(), changes.end(), [](const CallSwap& a, const CallSwap& b) {
    return a.saves * a.weight > b.saves * b.weight;
  });
  return changes;
}

std::vector<Danger> dangersOf(const Plan& plan, const PairReps& reps) {
  std::vector<Danger> dangers;
  for (std::size_t run = 0; run < reps.size(); ++run) {
    for (std::size_t call = 0; call < reps[run].size(); ++call) {
      const Distribution gains = distributionOf(reps[run][call]);
      dangers.push_back({run, call, gains.mean, gains.p90, weightOf(plan, run)});
    }
  }
  std::stable_sort(dangers.begin(), dangers.end(),
                   [](const Danger& a, const Danger& b) { return a.mean * a.weight > b.mean * b.weight; });
  return dangers;
}

std::vector<std::string> adviceOf(const Plan& plan, const PairReps& reps) {
  std::vector<std::string> advice;
  for (const CallSwap& change : changesOf(plan, reps))
    if (advice.size() < kMostChanges) advice.push_back(changeSentence(plan, reps, change));
  if (advice.empty())
    advice.push_back(
        fmt::format("No other call of the plan surely gives up less than {} against any of their runs.",
                    plan.calls[0].name));
  return advice;
}

LaidPage weekSummaryPage(const Plan& plan, const PairReps& reps, const std::vector<std::string>& unsound,
                         Paper paper) {
  Page page(paper, plan.title);
  page.head("What to change first");
  for (const std::string& sentence : adviceOf(plan, reps)) page.text(sentence);
  page.head("What hurts most, by mean gain and share");
  page.table(dangerTable(plan, reps, page.width()));
  if (!unsound.empty()) page.head("Gaps nobody has");
  for (const std::string& sentence : unsound) page.text(sentence);
  for (const PlanRun& run : plan.runs)
    if (run.thin) page.text(fmt::format("Thin data: {} was charted {} times.", run.name, run.seen));
  for (const std::string& warning : contactWarnings(plan.practice)) page.text(warning);
  const std::size_t n = reps.front().front().size();
  page.text(fmt::format(
      "Every figure is of {} reps a pair, seed by seed on the same luck, in brackets the 95 % interval. "
      "No pass threat is in these numbers.",
      n));
  return std::move(page).done();
}

}  // namespace gapsound
