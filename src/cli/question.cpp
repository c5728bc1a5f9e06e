#include <fmt/core.h>

#include <algorithm>
#include <filesystem>
#include <set>

#include "base/error.hpp"
#include "base/nearest.hpp"
#include "cli/print.hpp"
#include "cli/quiz.hpp"
#include "cli/session.hpp"
#include "cli/verbs.hpp"
#include "io/atomic_file.hpp"
#include "io/quiz_page.hpp"
#include "io/theme_file.hpp"
#include "painters/cairo_painter.hpp"

namespace gapsound {
namespace {

struct Found {
  const Setup* setup;
  std::string call;
  FitChoice choice;
};

std::string endingOf(const std::string& file) { return std::filesystem::path(file).extension().string(); }

bool isCalled(const Man& man, const std::string& name) {
  return sameName(man.id, name) || sameName(man.drawn, name);
}

int manNamed(const Setup& setup, const std::string& id) {
  for (int man = kOffense; man < kMen; ++man)
    if (isCalled(setup.men[static_cast<std::size_t>(man)], id)) return man;
  return kNobody;
}

void requireMan(const QuizPlan& quiz, const Handout& handout) {
  std::set<std::string> known;
  for (const auto& row : handout.setups)
    for (const Setup& setup : row)
      for (int man = kOffense; man < kMen; ++man) known.insert(setup.men[static_cast<std::size_t>(man)].id);
  const auto has = [&](const Setup& setup) { return manNamed(setup, quiz.man) != kNobody; };
  const auto any = [&](const std::vector<Setup>& row) { return std::any_of(row.begin(), row.end(), has); };
  if (std::none_of(handout.setups.begin(), handout.setups.end(), any))
    throw InputError("command line", "--man", quiz.man, nameHint(quiz.man, {known.begin(), known.end()}));
}

/// What he saw, and what was right: two questions alike in both are one.
std::string kindOf(const FitChoice& choice) {
  return fmt::format("{} {} {}", choice.end ? static_cast<int>(*choice.end) : -1,
                     choice.backer ? static_cast<int>(*choice.backer) : -1,
                     static_cast<int>(choice.right.deed.fit));
}

std::string tagOf(const Handout& handout, const Setup& setup, int man) {
  const auto tag = handout.tags.find(setup.men[static_cast<std::size_t>(man)].id);
  return tag == handout.tags.end() ? "" : tag->second;
}

/// Clearest first, but a new kind before a second of the same.
void varied(std::vector<Found>& found) {
  const auto clearness = [](const Found& f) { return f.choice.others.back().ci.low; };
  std::stable_sort(found.begin(), found.end(),
                   [&](const Found& a, const Found& b) { return clearness(a) > clearness(b); });
  std::set<std::string> seen;
  std::stable_partition(found.begin(), found.end(),
                        [&](const Found& f) { return seen.insert(kindOf(f.choice)).second; });
}

}  // namespace

std::vector<FitQuestion> questionsFor(const QuizPlan& quiz, const Handout& handout, const Model& model,
                                      const Progress& progress) {
  requireMan(quiz, handout);
  std::vector<Found> found;
  double done = 0.0;
  for (const auto& row : handout.setups) {
    for (std::size_t call = 0; call < row.size(); ++call) {
      const int man = manNamed(row[call], quiz.man);
      if (man != kNobody)
        for (FitChoice& choice : choicesOf(row[call], man, model, quiz.seed, quiz.reps, quiz.jobs))
          if (choice.clear(kClearMargin))
            found.push_back({&row[call], handout.calls[call], std::move(choice)});
      if (progress) progress(++done / static_cast<double>(handout.setups.size() * row.size()));
    }
  }
  varied(found);
  std::vector<FitQuestion> questions;
  for (const Found& f : found)
    if (static_cast<int>(questions.size()) < quiz.questions)
      questions.push_back(questionOf(*f.setup, f.choice, f.call, library().phrases, model,
                                     tagOf(handout, *f.setup, f.choice.man)));
  return questions;
}

void writeQuiz(const std::vector<FitQuestion>& questions, const std::string& title, Paper paper,
               const std::string& file) {
  const Theme theme = shippedTheme("paper");
  if (endingOf(file) == ".html") {
    std::vector<DrawnQuestion> drawn;
    drawn.reserve(questions.size());
    for (const FitQuestion& question : questions)
      drawn.push_back({question, svgText(questionPicture(question, false, 900.0, 900.0), theme, file),
                       svgText(questionPicture(question, true, 900.0, 900.0), theme, file)});
    return writeAtomically(file, quizPage(title, drawn));
  }
  std::vector<DisplayList> pages;
  if (questions.empty()) pages.push_back(noQuestionPage(title, paper).list);
  for (std::size_t i = 0; i < questions.size(); ++i)
    for (LaidPage& page : questionPages(questions[i], static_cast<int>(i) + 1, paper))
      pages.push_back(std::move(page.list));
  writePdf(pages, theme, file, paper);
}

int runQuestion(const QuestionOptions& options) {
  requireWritable(options.out);
  const std::string ending = endingOf(options.out);
  if (ending != ".pdf" && ending != ".html")
    throw InputError(options.out, "ending", ending.empty() ? "none" : ending, ".pdf, .html");
  const Model model = modelFor(options.model);
  const Handout handout = handoutOf(options, model);
  std::vector<FitQuestion> questions;
  {
    ProgressLine progress("looking for clear answers");
    questions = questionsFor({options.man, options.quiz, options.n, options.seed, options.jobs}, handout,
                             model, progress.reporter());
  }
  if (questions.empty())
    throw Error(ExitCode::badInput,
                fmt::format("{}: --man: {}: no fit of his wins by a clear margin in {} reps; allowed: "
                            "another man, another look, or more reps with -n",
                            options.file, options.man, options.n));
  writeQuiz(questions, fmt::format("{}: where do you fit?", options.man), paperOf(options), options.out);
  if (static_cast<int>(questions.size()) < options.quiz)
    fmt::print(stderr, "gapsound: {} of {} questions have a clear answer\n", questions.size(), options.quiz);
  return sayWritten(options.out, options.json);
}

}  // namespace gapsound
