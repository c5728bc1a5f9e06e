#include "app/question.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "base/tick.hpp"
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
  return PutQuestion{found->man, found->t, std::nullopt};
}

Vec2 fitSpot(const Rep& rep, int man) {
  return frameAt(rep.tape, crossingOf(rep.tape)).men[static_cast<std::size_t>(man)].pos;
}

std::string questionWords(const Rep& rep, const PutQuestion& question) {
  const std::string& id = rep.tape.setup.men[static_cast<std::size_t>(question.man)].id;
  if (!question.guess) return id + ": where do you fit? Click the spot; space goes on.";
  const double off = distance(*question.guess, fitSpot(rep, question.man));
  const auto& fits = rep.account.fits;
  const auto fit =
      std::find_if(fits.begin(), fits.end(), [&](const FitLine& line) { return line.man == question.man; });
  const std::string did = fit == fits.end() || fit->did.empty() ? "" : fmt::format(" He {}.", fit->did);
  return fmt::format("{:.1f} yd from where {} is when the ball crosses the line.{}", off, id, did);
}

}  // namespace gapsound
