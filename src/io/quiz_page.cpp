#include "io/quiz_page.hpp"

#include <nlohmann/json.hpp>

#include "base/error.hpp"
#include "io/assets.hpp"
#include "io/atomic_file.hpp"
#include "teach/caution.hpp"

namespace gapsound {
namespace {

using Json = nlohmann::ordered_json;

/// RFC 4648, section 4.
std::string base64(const std::string& bytes) {
  static constexpr std::string_view kLetters =
      "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
  std::string text;
  for (std::size_t i = 0; i < bytes.size(); i += 3) {
    std::uint32_t word = 0;
    for (std::size_t k = 0; k < 3; ++k)
      word = word << 8U | (i + k < bytes.size() ? static_cast<unsigned char>(bytes[i + k]) : 0U);
    for (std::size_t k = 0; k < 4; ++k)
      text += i + k > bytes.size() ? '=' : kLetters[word >> (18 - 6 * k) & 63U];
  }
  return text;
}

std::string asSource(const std::string& svg) { return "data:image/svg+xml;base64," + base64(svg); }

Json asJson(const DrawnQuestion& drawn) {
  const FitQuestion& question = drawn.question;
  Json letters = Json::array();
  for (const FitAnswer& answer : question.answers) letters.push_back(std::string(1, answer.letter));
  return {{"ask", question.ask},
          {"letters", letters},
          {"right", letters[question.right]},
          {"reason", question.reason},
          {"picture", asSource(drawn.picture)},
          {"answer", asSource(drawn.answer)}};
}

/// JSON that may stand inside a script element.
std::string scriptText(const Json& json) {
  std::string text = json.dump();
  for (std::size_t at = text.find("</"); at != std::string::npos; at = text.find("</", at + 3))
    text.replace(at, 2, "<\\/");
  return text;
}

}  // namespace

std::string quizPage(const std::string& title, const std::vector<DrawnQuestion>& questions) {
  Json quiz = {{"title", title}, {"caution", cautionText()}, {"questions", Json::array()}};
  for (const DrawnQuestion& question : questions) quiz["questions"].push_back(asJson(question));
  std::string page = readWhole(assetPath("quiz.html"));
  const std::string mark = "/*QUIZ*/";
  const auto at = page.find(mark);
  if (at == std::string::npos)
    throw Error(ExitCode::noAccess, assetPath("quiz.html") + ": has no place for the questions");
  return page.replace(at, mark.size(), scriptText(quiz));
}

}  // namespace gapsound
