#pragma once
#include <optional>
#include <string>
#include <vector>

#include "app/rep.hpp"

namespace gapsound {

/// A place with a letter, so that a room can answer aloud.
struct LetteredPlace {
  char letter = 'A';   // from left to right
  Vec2 place;          // yd
  double yards = 0.0;  // what the run gains with him there
  bool right = false;  // where he fits
};

/// "Where do you fit?", put to one man at the moment he decides.
struct PutQuestion {
  int man = kNobody;
  double t = 0.0;                     // s
  std::optional<Vec2> guess;          // yd, as clicked
  std::vector<LetteredPlace> places;  // none where no other place cost clearly more in this rep
};

/// The next moment after `after` at which a backer or a man of the secondary decides; only `man` is asked
/// when he is named.
[[nodiscard]] std::optional<PutQuestion> nextQuestion(const Rep& rep, double after, const std::string& man);
/// Where he fits and up to three places that cost a yard or more in this very rep.
[[nodiscard]] std::vector<LetteredPlace> placesFor(const Rep& rep, int man, const Model& model);
/// What a click means: the place of a letter nearby, else the spot itself.
[[nodiscard]] Vec2 guessAt(const PutQuestion& question, Vec2 spot);
/// Where he fits in this rep: where he is when the ball crosses the line, or at the end.
[[nodiscard]] Vec2 fitSpot(const Rep& rep, int man);
/// The question; with a guess, how far off it is, and what he did.
[[nodiscard]] std::string questionWords(const Rep& rep, const PutQuestion& question);

}  // namespace gapsound
