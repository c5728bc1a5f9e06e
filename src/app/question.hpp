#pragma once
#include <optional>
#include <string>

#include "app/rep.hpp"

namespace gapsound {

/// "Where do you fit?", put to one man at the moment he decides.
struct PutQuestion {
  int man = kNobody;
  double t = 0.0;             // s
  std::optional<Vec2> guess;  // yd, as clicked
};

/// The next moment after `after` at which a backer or a man of the secondary decides; only `man` is asked
/// when he is named.
[[nodiscard]] std::optional<PutQuestion> nextQuestion(const Rep& rep, double after, const std::string& man);
/// Where he fits in this rep: where he is when the ball crosses the line, or at the end.
[[nodiscard]] Vec2 fitSpot(const Rep& rep, int man);
/// The question; with a guess, how far off it is, and what he did.
[[nodiscard]] std::string questionWords(const Rep& rep, const PutQuestion& question);

}  // namespace gapsound
