#pragma once
#include <string>
#include <vector>

#include "teach/question.hpp"

namespace gapsound {

/// A question with its two pictures as SVG documents.
struct DrawnQuestion {
  FitQuestion question;
  std::string picture, answer;
};

/// The quiz as one HTML page that needs nothing else: pictures and script inside, no network. The script asks
/// question after question and tells the score. Throws Error(noAccess) when assets/quiz.html is missing.
[[nodiscard]] std::string quizPage(const std::string& title, const std::vector<DrawnQuestion>& questions);

}  // namespace gapsound
