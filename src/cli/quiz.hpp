#pragma once
#include "cli/handout.hpp"
#include "teach/question.hpp"

namespace gapsound {

/// What a quiz is made from.
struct QuizPlan {
  std::string man;  // id
  int questions = 1;
  int reps = 600;  // for each look, to find and judge a choice
  std::uint64_t seed = 1;
  int jobs = 0;
};

/// Questions for one man from the looks that have him, clearest first, one for each thing he may see before a
/// second of the same; fewer than asked for when the simulation gives no clear answer.
[[nodiscard]] std::vector<FitQuestion> questionsFor(const QuizPlan& quiz, const Handout& handout,
                                                    const Model& model, const Progress& progress = {});
/// By the ending: .pdf two pages a question, .html one page for a phone.
void writeQuiz(const std::vector<FitQuestion>& questions, const std::string& title, Paper paper,
               const std::string& file);

}  // namespace gapsound
