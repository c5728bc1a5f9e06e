#pragma once
#include <optional>
#include <string>
#include <vector>

#include "app/screen.hpp"

namespace gapsound {

// Rows of a card: a word on the left, something to change on the right. Each notes its place under its word.

void cardTitle(Screen& screen, const std::string& title);
/// Small grey text that wraps.
void cardWords(Screen& screen, const std::string& text);
/// One of `names`, opened as a list with a line to search in. What was picked, if it is another one.
[[nodiscard]] std::optional<std::string> choiceRow(Screen& screen, const std::string& word,
                                                   const std::string& now,
                                                   const std::vector<std::string>& names);
/// A number typed in or stepped; given back when the typing is done or a step is made.
[[nodiscard]] std::optional<double> numberRow(Screen& screen, const std::string& word, double now,
                                              double step, const char* unit, int digits = 2);
/// A text typed in; given back when the typing is done.
[[nodiscard]] std::optional<std::string> textRow(Screen& screen, const std::string& word,
                                                 const std::string& now);
/// Two or three words of which one is on.
[[nodiscard]] std::optional<std::string> switchRow(Screen& screen, const std::string& word,
                                                   const std::string& now,
                                                   const std::vector<std::string>& words);

}  // namespace gapsound
