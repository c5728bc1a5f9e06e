#include "app/question.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "base/tick.hpp"
#include "study/fit_choice.hpp"
#include "teach/view.hpp"

namespace gapsound {

std::optional<PutQuestion> nextQuestion(const Rep& rep, double after, const std::string& man) {
  const int only = manNamed(rep.tape.setup, man);
  const auto asks = [&](const LadderTick& tick) {
    return tick.kind == LadderKind::decided && tick.row >= 2 && tick.t > after + kStep &&
           (only == kNobody || tick.man == only);
  };
  const auto found = std::find_if(rep.ticks.begin(), rep.ticks.end(), asks);
  if (found == rep.ticks.end()) return std::nullopt;
  return PutQuestion{found->man, found->t, std::nullopt, {}};
}

Vec2 fitSpot(const Rep& rep, int man) {
  return frameAt(rep.tape, crossingOf(rep.tape)).men[static_cast<std::size_t>(man)].pos;
}

std::vector<LetteredPlace> placesFor(const Rep& rep, int man, const Model& model) {
  constexpr double kDearer = 1.0;  // yd
  const auto others = otherPlacesIn(rep.tape, man, model, kDearer);
  if (others.empty()) return {};
  std::vector<LetteredPlace> places{{'A', fitSpot(rep, man), rep.tape.record.yards, true}};
  for (const OtherPlace& other : others) places.push_back({'A', other.place, other.yards, false});
  std::stable_sort(places.begin(), places.end(),
                   [](const LetteredPlace& a, const LetteredPlace& b) { return a.place.x < b.place.x; });
  for (std::size_t i = 0; i < places.size(); ++i) places[i].letter = static_cast<char>('A' + i);
  return places;
}

Vec2 guessAt(const PutQuestion& question, Vec2 spot) {
  constexpr double kNear = 0.8;  // yd
  const auto nearer = [&](const LetteredPlace& a, const LetteredPlace& b) {
    return distance(a.place, spot) < distance(b.place, spot);
  };
  const auto nearest = std::min_element(question.places.begin(), question.places.end(), nearer);
  return nearest != question.places.end() && distance(nearest->place, spot) < kNear ? nearest->place : spot;
}

namespace {

std::string askWords(const std::string& id, const PutQuestion& question) {
  if (question.places.empty()) return id + ": where do you fit? Click the spot; space goes on.";
  std::string letters;
  for (std::size_t i = 0; i < question.places.size(); ++i)
    letters += (i == 0                            ? ""
                : i + 1 == question.places.size() ? " or "
                                                  : ", ") +
               std::string(1, question.places[i].letter);
  return fmt::format("{}: where do you fit, {}? Click a letter, or any spot; space goes on.", id, letters);
}

std::string verdictWords(const Rep& rep, const PutQuestion& question, const std::string& id) {
  for (const LetteredPlace& place : question.places) {
    if (place.place != *question.guess) continue;
    if (place.right) return fmt::format("{} is right.", place.letter);
    const std::string gains = place.yards >= kLongestCounted
                                  ? fmt::format("{:.0f} yd or more", kLongestCounted)
                                  : fmt::format("{:.1f} yd", place.yards);
    return fmt::format("No: with {} at {} this run gains {}, not {:.1f}.", id, place.letter, gains,
                       rep.tape.record.yards);
  }
  const double off = distance(*question.guess, fitSpot(rep, question.man));
  return fmt::format("{:.1f} yd from where {} is when the ball crosses the line.", off, id);
}

}  // namespace

std::string questionWords(const Rep& rep, const PutQuestion& question) {
  const std::string& id = rep.tape.setup.men[static_cast<std::size_t>(question.man)].id;
  if (!question.guess) return askWords(id, question);
  const auto& fits = rep.account.fits;
  const auto fit =
      std::find_if(fits.begin(), fits.end(), [&](const FitLine& line) { return line.man == question.man; });
  const std::string did = fit == fits.end() || fit->did.empty() ? "" : fmt::format(" {} {}.", id, fit->did);
  return verdictWords(rep, question, id) + did;
}

}  // namespace gapsound
