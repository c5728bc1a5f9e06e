#include "teach/question.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>

#include "analysis/cast.hpp"
#include "picture/field.hpp"
#include "teach/roles.hpp"
#include "teach/view.hpp"

namespace gapsound {
namespace {

constexpr double kMargin = 50.0, kTitle = 44.0, kText = 28.0, kCaution = 14.0;  // page units
constexpr FieldView kView{{-9.6, -7.6}, {9.6, 10.4}};
constexpr double kSpot = 0.52;  // yd, radius of a place to point at

const Man& at(const Setup& setup, int man) { return setup.men[static_cast<std::size_t>(man)]; }

std::string wordsOf(const FitDeed& deed, const Phrases& phrases, const FitRole role) {
  if (deed.fault)
    return fmt::format("{} ({:g} {})", factsOf(deed.fault->kind).words, deed.fault->amount,
                       factsOf(deed.fault->kind).unit == "share" ? "of 1" : factsOf(deed.fault->kind).unit);
  if (deed.fit != Fit::called) return phrases.fits[static_cast<std::size_t>(deed.fit)];
  const bool by_state = role == FitRole::first_backer || role == FitRole::fill_backer ||
                        role == FitRole::overlap_backer || role == FitRole::alley;
  return by_state ? "the called spot, whatever happened" : "";
}

std::string rightWords(const Setup& setup, const FitChoice& choice, const Phrases& phrases) {
  std::string words = wordsOf(choice.right.deed, phrases, choice.role);
  if (!words.empty()) return words;
  const Man& man = at(setup, choice.man);
  if (choice.role == FitRole::interior && !man.fit.gap.empty())
    return fmt::format("his gap, {}", man.fit.gap);
  return wayOf(setup, man, phrases).landmark;
}

std::string whatHeSaw(const Setup& setup, const FitChoice& choice, const Phrases& phrases) {
  const Cast cast = castOf(setup);
  if (choice.end && cast.end != kNobody)
    return fmt::format("{} {}", at(setup, cast.end).id, phrases.ends[static_cast<std::size_t>(*choice.end)]);
  if (choice.backer && cast.first_backer != kNobody)
    return fmt::format("{} {}", at(setup, cast.first_backer).id,
                       phrases.backers[static_cast<std::size_t>(*choice.backer)]);
  return {};
}

std::vector<FitAnswer> answersOf(const Setup& setup, const FitChoice& choice, const Phrases& phrases) {
  std::vector<FitAnswer> answers{{'A', choice.right, rightWords(setup, choice, phrases)}};
  for (const FitOption& option : choice.wrong(kClearMargin))
    if (answers.size() < 4) answers.push_back({'A', option, wordsOf(option.deed, phrases, choice.role)});
  std::stable_sort(answers.begin(), answers.end(), [](const FitAnswer& a, const FitAnswer& b) {
    return a.option.place.x < b.option.place.x;
  });
  for (std::size_t i = 0; i < answers.size(); ++i) answers[i].letter = static_cast<char>('A' + i);
  return answers;
}

std::vector<std::string> reasonOf(const FitQuestion& question, const Setup& setup, const Phrases& phrases) {
  const FitChoice& choice = question.choice;
  const std::string saw = whatHeSaw(setup, choice, phrases);
  const FitAnswer& right = question.answers[question.right];
  std::vector<std::string> lines;
  lines.push_back(saw.empty() ? fmt::format("{}: {}.", right.letter, right.words)
                              : fmt::format("{}: {}, so {}.", right.letter, saw, right.words));
  lines.push_back(
      fmt::format("On {} reps that came to this, {} gave up {:.1f} yd; a run over {:.0f} counts as {:.0f}.",
                  choice.n, right.letter, right.option.mean, kLongestCounted, kLongestCounted));
  for (const FitAnswer& answer : question.answers)
    if (answer.letter != right.letter)
      lines.push_back(fmt::format("{}, {}: {:.1f} yd more ({:.1f} to {:.1f}).", answer.letter, answer.words,
                                  answer.option.difference, answer.option.ci.low, answer.option.ci.high));
  return lines;
}

FieldLook fieldLook(const FitQuestion& question, const PageRect& box, bool answered, double t) {
  const FieldView view = viewAt(question.tape, t, kView);
  FieldLook look;
  look.box = box;
  look.low = view.low, look.high = view.high;
  look.text = box.width / 58.0;
  look.symbol = symbolFor(box, view, box.width / 90.0);
  look.names = answered;
  look.yard_numbers = false;
  look.lanes = false;
  return look;
}

void drawLetter(Panel& panel, Vec2 at, char letter) {
  const double size = 1.3 * kSpot * panel.camera.scale_x;
  panel.shapes.push_back(Disc{at, kSpot, StyleId::option});
  panel.shapes.push_back(Label{at, std::string(1, letter), size, StyleId::option_letter});
}

/// The places to point at; the man asked is ringed, above the letters, so that none hides him.
void drawQuestion(Panel& panel, const FitQuestion& question, const Frame& frame) {
  for (const FitAnswer& answer : question.answers) drawLetter(panel, answer.option.place, answer.letter);
  const Vec2 self = frame.men[static_cast<std::size_t>(question.choice.man)].pos;
  panel.shapes.push_back(Disc{self, 1.35 * kSpot, StyleId::option_ring});
}

/// The man stands where he fits: a ring around him, its letter on the ring.
void drawAnswer(Panel& panel, const FitQuestion& question) {
  constexpr double kRing = 1.35 * kSpot;
  const FitAnswer& right = question.answers[question.right];
  for (const FitAnswer& answer : question.answers)
    if (answer.letter != right.letter) drawLetter(panel, answer.option.place, answer.letter);
  panel.shapes.push_back(Disc{right.option.place, kRing, StyleId::option_ring});
  drawLetter(panel, right.option.place + (kRing + 0.5 * kSpot) * unit(Vec2{-1.0, 1.0}), right.letter);
}

Panel pictureOf(const FitQuestion& question, const PageRect& box, bool answered) {
  const double t = answered ? crossingOf(question.tape) : question.choice.t;
  const Frame frame = frameAt(question.tape, t);
  Panel panel = fieldPanel(question.tape.setup, frame, fieldLook(question, box, answered, t), {},
                           framesBefore(question.tape, t, answered ? 0.8 : 0.5));
  if (answered)
    drawAnswer(panel, question);
  else
    drawQuestion(panel, question, frame);
  return panel;
}

LaidPage pageOf(const FitQuestion& question, int number, Paper paper, bool answered) {
  const Vec2 size = sheetSize(paper);
  const double width = size.x - 2.0 * kMargin;
  Layout layout(size.x, size.y);
  const double foot = layout.caution(kMargin, kCaution) - 10.0;
  const std::string title = answered ? fmt::format("{}. {} fits at {}", number, question.man,
                                                   question.answers[question.right].letter)
                                     : fmt::format("{}. Where do you fit?", number);
  double y = layout.line(kMargin, kMargin, width, title, kTitle, StyleId::title);
  std::vector<std::string> lines{question.ask};
  if (answered) lines = question.reason;
  double below = 0.0;
  for (const auto& line : lines) below += Layout::heightOf(line, kText, width) + 6.0;
  const PageRect box{kMargin, y + 10.0, width, std::min(foot - y - below - 30.0, 0.95 * width)};
  layout.picture(pictureOf(question, box, answered));
  y = box.bottom() + 14.0;
  for (const auto& line : lines) y = layout.words(kMargin, y, width, line, kText, StyleId::text) + 6.0;
  return std::move(layout).done();
}

}  // namespace

FitQuestion questionOf(const Setup& setup, const FitChoice& choice, const std::string& call,
                       const Phrases& phrases, const Model& model, const std::string& tag) {
  FitQuestion question{
      playTape(setup, model, choice.seed), choice, at(setup, choice.man).id, call, {}, 0, {}, {}};
  question.answers = answersOf(setup, choice, phrases);
  for (std::size_t i = 0; i < question.answers.size(); ++i)
    if (question.answers[i].option.deed == choice.right.deed) question.right = i;
  std::vector<std::string> letters;
  for (const FitAnswer& answer : question.answers) letters.emplace_back(1, answer.letter);
  question.ask = fmt::format(
      "You are {}{}, ringed. The call is {}. Where must you be when the ball gets to the line: {}?",
      question.man, tag.empty() ? "" : " (" + tag + ")", call, fmt::join(letters, ", "));
  question.reason = reasonOf(question, setup, phrases);
  return question;
}

DisplayList questionPicture(const FitQuestion& question, bool answered, double width, double height) {
  return {width, height, {pictureOf(question, {0.0, 0.0, width, height}, answered)}};
}

LaidPage noQuestionPage(const std::string& title, Paper paper) {
  const Vec2 size = sheetSize(paper);
  const double width = size.x - 2.0 * kMargin;
  Layout layout(size.x, size.y);
  static_cast<void>(layout.caution(kMargin, kCaution));
  const double y = layout.line(kMargin, kMargin, width, title, kTitle, StyleId::title) + 10.0;
  layout.words(
      kMargin, y, width,
      "In none of these looks does one place win by a clear margin, so there is nothing to ask this week.",
      kText, StyleId::text);
  return std::move(layout).done();
}

std::vector<LaidPage> questionPages(const FitQuestion& question, int number, Paper paper) {
  return {pageOf(question, number, paper, false), pageOf(question, number, paper, true)};
}

}  // namespace gapsound
