#pragma once
#include <string>
#include <vector>

#include "football/phrases.hpp"
#include "picture/paper.hpp"
#include "study/fit_choice.hpp"
#include "teach/layout.hpp"

namespace gapsound {

/// One place a player may point at.
struct FitAnswer {
  char letter = 'A';  // from the offense's left to its right
  FitOption option;
  std::string words;  // "inside the end, tight to the double team"
};

/// "Where do you fit?": a frozen picture, two to four places, one of them right by the simulation.
struct FitQuestion {
  Tape tape;  // the rep with the right fit
  FitChoice choice;
  std::string man, call;  // his id; our call as he hears it
  std::vector<FitAnswer> answers;
  std::size_t right = 0;            // of answers
  std::string ask;                  // one sentence
  std::vector<std::string> reason;  // sentences, the first says where and why
};

/// A place other than the right one is offered only when it costs at least this much, and surely something.
inline constexpr double kClearMargin = 0.5;  // yd

/// `choice` must be clear(kClearMargin). `tag`: his number or name, may be empty.
[[nodiscard]] FitQuestion questionOf(const Setup& setup, const FitChoice& choice, const std::string& call,
                                     const Phrases& phrases, const Model& model, const std::string& tag = "");
/// The picture alone: at the moment he decides without names, or after the answer with them.
[[nodiscard]] DisplayList questionPicture(const FitQuestion& question, bool answered, double width,
                                          double height);
/// In place of a quiz nobody can be asked.
[[nodiscard]] LaidPage noQuestionPage(const std::string& title, Paper paper);
/// Two upright pages: the question, then answer and reason.
[[nodiscard]] std::vector<LaidPage> questionPages(const FitQuestion& question, int number, Paper paper);

}  // namespace gapsound
