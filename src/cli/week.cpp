#include <fmt/core.h>

#include <algorithm>
#include <filesystem>
#include <set>

#include "base/error.hpp"
#include "cli/handout.hpp"
#include "cli/print.hpp"
#include "cli/quiz.hpp"
#include "cli/session.hpp"
#include "cli/verbs.hpp"
#include "cli/week_folder.hpp"
#include "io/assets.hpp"
#include "io/atomic_file.hpp"
#include "io/csv.hpp"
#include "io/plan_file.hpp"
#include "io/theme_file.hpp"
#include "painters/cairo_painter.hpp"
#include "painters/outputs.hpp"
#include "scenario/check.hpp"
#include "study/versus.hpp"
#include "teach/roles.hpp"
#include "teach/script.hpp"
#include "teach/week_summary.hpp"

namespace gapsound {
namespace {

constexpr int kFaultReps = 100;
constexpr int kQuizQuestions = 4, kQuizReps = 240;
constexpr std::size_t kQuizRuns = 3, kQuizCalls = 2, kClips = 3;
constexpr FitRole kQuizRoles[] = {FitRole::interior,    FitRole::edge,           FitRole::first_backer,
                                  FitRole::fill_backer, FitRole::overlap_backer, FitRole::force,
                                  FitRole::alley,       FitRole::cutback};

/// The week as it is being made: figures are worked out when the first part asks for them.
class Week {
 public:
  Week(const WeekOptions& options, Plan plan)
      : options_(options),
        plan_(std::move(plan)),
        model_(modelFor(options.model)),
        handout_(handoutOf(plan_, options, model_)),
        theme_(shippedTheme("paper")),
        paper_(paperOf(options)) {}

  void matrix(const std::string& file) {
    std::string text = csvLine({"run", "call", "reps", "mean", "stuffed", "ten_plus", "unowned_gaps"});
    for (std::size_t run = 0; run < plan_.runs.size(); ++run)
      for (std::size_t call = 0; call < plan_.calls.size(); ++call) {
        const Distribution& d = sheets()[run][call].gains;
        text += csvLine({plan_.runs[run].name, plan_.calls[call].name, std::to_string(d.n),
                         fmt::format("{:.2f}", d.mean), fmt::format("{:.3f}", d.stuffed),
                         fmt::format("{:.3f}", d.ten_plus), unowned(run, call)});
      }
    writeAtomically(file, text);
  }
  void master(const std::string& file) {
    MasterSheet sheet{plan_.title, options_.n, handout_.runs, handout_.calls, {}};
    for (std::size_t run = 0; run < plan_.runs.size(); ++run) {
      sheet.cells.emplace_back();
      for (std::size_t call = 0; call < plan_.calls.size(); ++call)
        sheet.cells.back().push_back(masterCellOf(handout_.setups[run][call], sheets()[run][call].gains));
    }
    writePdf({masterSheetPage(sheet, {paper_, false}).list}, theme_, file, paper_);
  }
  void fitSheets(std::size_t call, const std::string& file) {
    std::vector<DisplayList> pages;
    static_cast<void>(sheets());
    addFaults(call);
    for (const auto& row : sheets()) pages.push_back(fitSheetPage(row[call], {paper_, options_.large}).list);
    writePdf(pages, theme_, file, paper_);
  }
  void cards(std::size_t call, const std::string& file) {
    std::vector<DisplayList> pages;
    for (LaidPage& page :
         cardPages(cardsOf(handout_, call, true, model_, options_.seed, options_.jobs), {paper_, 4}))
      pages.push_back(std::move(page.list));
    writePdf(pages, theme_, file, paper_);
  }
  void script(const std::string& file) {
    std::vector<ScriptRun> runs;
    for (std::size_t run = 0; run < plan_.runs.size(); ++run)
      runs.push_back({plan_.runs[run].name, std::to_string(run + 1), intentsOf(run), plan_.runs[run].share});
    std::vector<DisplayList> pages;
    for (LaidPage& page : scriptPages(scriptsOf(plan_.practice, runs, handout_.calls), paper_))
      pages.push_back(std::move(page.list));
    writePdf(pages, theme_, file, paper_);
  }
  void clip(std::size_t rank, const std::string& file) {
    const Danger danger = dangersOf(plan_, pairReps())[rank];
    const auto& reps = pairReps()[danger.run][danger.call];
    std::size_t shown = 0;
    for (std::size_t i = 1; i < reps.size(); ++i)
      if (std::abs(reps[i].yards - danger.p90) < std::abs(reps[shown].yards - danger.p90)) shown = i;
    writeClip(clipOf(playTape(handout_.setups[danger.run][danger.call], model_, options_.seed + shown)),
              shippedTheme("evening"), file);
  }
  /// Both files of one man's quiz; they share the search.
  void quiz(const std::string& man, const std::string& file) {
    if (quiz_man_ != man) questions_ = questionsOf(man);
    quiz_man_ = man;
    writeQuiz(questions_, man + ": where do you fit?", paper_, file);
  }
  void summary(const std::string& file) {
    std::vector<std::string> unsound;
    for (std::size_t run = 0; run < plan_.runs.size(); ++run)
      for (std::size_t call = 0; call < plan_.calls.size(); ++call)
        if (const std::string gaps = unowned(run, call); !gaps.empty())
          unsound.push_back(
              fmt::format("{} against {}: {}.", plan_.runs[run].name, plan_.calls[call].name, gaps));
    writePdf({weekSummaryPage(plan_, pairReps(), unsound, paper_).list}, theme_, file, paper_);
  }

  [[nodiscard]] const Plan& plan() const { return plan_; }
  /// A man for each part of the run fit, as the first call gives it against the runs in order.
  [[nodiscard]] std::vector<std::string> quizMen() const {
    std::vector<std::string> men;
    for (const FitRole role : kQuizRoles)
      for (const auto& row : handout_.setups) {
        const int man = manIn(row.front(), role);
        if (man == kNobody) continue;
        const std::string& id = row.front().men[static_cast<std::size_t>(man)].id;
        if (std::find(men.begin(), men.end(), id) != men.end()) continue;
        men.push_back(id);
        break;
      }
    return men;
  }

 private:
  const std::vector<std::vector<FitSheet>>& sheets() {
    if (!sheets_.empty()) return sheets_;
    for (const auto& row : handout_.setups) {
      sheets_.emplace_back();
      for (const Setup& setup : row) {
        sheets_.back().push_back(
            fitSheetOf(setup, library().phrases, model_, options_.seed, options_.n, options_.jobs));
        tagRows(sheets_.back().back(), handout_.tags);
      }
    }
    return sheets_;
  }
  /// The costliest mistakes are worked out for the first call alone: it is the one that is played most.
  void addFaults(std::size_t call) {
    if (call != 0) return;
    for (std::size_t run = 0; run < handout_.setups.size(); ++run)
      sheets_[run][0].faults = costlyFaultsOf(handout_.setups[run][0], model_, options_.seed,
                                              std::min(options_.n, kFaultReps), options_.jobs);
  }
  const PairReps& pairReps() {
    if (reps_.empty())
      for (const auto& row : handout_.setups)
        reps_.push_back(playAll(row, model_, options_.seed, options_.n, options_.jobs));
    return reps_;
  }
  [[nodiscard]] std::string unowned(std::size_t run, std::size_t call) const {
    std::string gaps;
    for (const GapOwner& gap : gapsOf(handout_.setups[run][call]))
      if (gap.owners.empty()) gaps += (gaps.empty() ? "" : " ") + gap.gap;
    return gaps;
  }
  /// The second level's read that came about most, in each call.
  std::vector<std::string> intentsOf(std::size_t run) {
    std::vector<std::string> intents;
    for (const FitSheet& sheet : sheets()[run]) {
      const auto& reads = sheet.levels[1];
      intents.push_back(reads.empty()
                            ? plan_.runs[run].note
                            : fmt::format("{}: {}", reads.front().seen, reads.front().does.front()));
    }
    return intents;
  }
  /// From the first call that puts a clear question to him, the first two tried.
  std::vector<FitQuestion> questionsOf(const std::string& man) {
    std::vector<FitQuestion> questions;
    for (std::size_t call = 0; call < std::min(handout_.calls.size(), kQuizCalls) && questions.empty();
         ++call) {
      const Handout looks = quizLooks(call);
      if (isThere(looks, man))
        questions =
            questionsFor({man, kQuizQuestions, kQuizReps, options_.seed, options_.jobs}, looks, model_);
    }
    return questions;
  }
  static bool isThere(const Handout& looks, const std::string& man) {
    const auto& men = looks.setups.front().front().men;
    return std::any_of(men.begin(), men.end(), [&](const Man& m) { return m.id == man; });
  }
  /// A call against the runs seen most.
  [[nodiscard]] Handout quizLooks(std::size_t call) const {
    std::vector<std::size_t> order;
    for (std::size_t run = 0; run < plan_.runs.size(); ++run) order.push_back(run);
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t a, std::size_t b) { return plan_.runs[a].share > plan_.runs[b].share; });
    order.resize(std::min(order.size(), kQuizRuns));
    Handout looks{handout_.title, {}, {handout_.calls[call]}, {}, {}, handout_.tags};
    for (const std::size_t run : order) {
      looks.runs.push_back(handout_.runs[run]);
      looks.scenarios.push_back({handout_.scenarios[run][call]});
      looks.setups.push_back({handout_.setups[run][call]});
    }
    return looks;
  }

  const WeekOptions& options_;
  Plan plan_;
  Model model_;
  Handout handout_;
  Theme theme_;
  Paper paper_;
  std::vector<std::vector<FitSheet>> sheets_;
  PairReps reps_;
  std::string quiz_man_;
  std::vector<FitQuestion> questions_;
};

std::vector<WeekStep> stepsOf(Week& week) {
  std::vector<WeekStep> steps{
      {"summary", "summary.pdf", [&](const std::string& file) { week.summary(file); }},
      {"matrix", "matrix.csv", [&](const std::string& file) { week.matrix(file); }},
      {"matrix", "matrix.pdf", [&](const std::string& file) { week.master(file); }}};
  std::set<std::string> taken;
  for (std::size_t call = 0; call < week.plan().calls.size(); ++call) {
    const std::string name = fileNameOf(week.plan().calls[call].name, taken);
    steps.push_back({"sheets", "sheets/" + name + ".pdf",
                     [&week, call](const std::string& file) { week.fitSheets(call, file); }});
    steps.push_back({"cards", "cards/" + name + ".pdf",
                     [&week, call](const std::string& file) { week.cards(call, file); }});
  }
  if (!week.plan().practice.empty())
    steps.push_back(
        {"cards", "cards/inside-run-script.pdf", [&](const std::string& file) { week.script(file); }});
  const std::size_t pairs = week.plan().runs.size() * week.plan().calls.size();
  for (std::size_t rank = 0; rank < std::min(kClips, pairs); ++rank)
    steps.push_back({"clips", fmt::format("clips/{}.mp4", rank + 1),
                     [&week, rank](const std::string& file) { week.clip(rank, file); }});
  for (const std::string& man : week.quizMen()) {
    const std::string name = fileNameOf(man, taken);
    for (const char* ending : {".pdf", ".html"})
      steps.push_back(
          {"quiz", "quiz/" + name + ending, [&week, man](const std::string& file) { week.quiz(man, file); }});
  }
  return steps;
}

}  // namespace

int runWeek(const WeekOptions& options) {
  const Plan plan = readPlan(options.file, options.changes);
  Week week(options, plan);
  const std::string key =
      fmt::format("{}\n{} {} {} {} {} {} {}", toJson(plan), options.n, options.seed, options.paper,
                  options.large, options.names, options.roster.empty() ? "" : readWhole(options.roster),
                  readWhole(options.model.empty() ? assetPath("model.json") : options.model));
  WeekFolder folder(options.out, key);
  folder.make(stepsOf(week), options.only);
  if (options.json) {
    Answer written = Answer::array();
    for (const std::string& file : folder.files()) written.push_back(file);
    printAnswer({{"written", written}});
  } else {
    const std::vector<std::string> files = folder.files();
    const std::string first = files.empty() ? "" : std::filesystem::path(files.front()).filename().string();
    fmt::print("{}: {} files{}{}\n", options.out, files.size(), first.empty() ? "" : ", begin with ", first);
  }
  return 0;
}

}  // namespace gapsound
