#include "teach/view.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "base/tick.hpp"

namespace gapsound {
namespace {

/// With commas, without those that are empty.
std::string listed(const std::vector<std::string>& parts) {
  std::string words;
  for (const std::string& part : parts)
    if (!part.empty()) words += (words.empty() ? "" : ", ") + part;
  return words;
}

constexpr double kSmoothing = 0.4;  // s to each side
constexpr int kSamples = 8;         // to each side
constexpr double kEdge = 3.0;       // yd kept between the ball and the sides of the view
constexpr double kAhead = 5.0;      // yd kept between the ball and the top of the view

Vec2 smoothedBall(const Tape& tape, double t) {
  Vec2 sum;
  for (int i = -kSamples; i <= kSamples; ++i) sum += frameAt(tape, t + kSmoothing * i / kSamples).ball;
  return (1.0 / (2 * kSamples + 1)) * sum;
}

double shiftInto(double value, double low, double high) {
  return value < low ? value - low : value > high ? value - high : 0.0;
}

const char* wordOf(Ending ending) {
  switch (ending) {
    case Ending::tackled:
      return "tackled";
    case Ending::forward_progress:
      return "stopped";
    case Ending::out:
      return "out of bounds";
    case Ending::score:
      return "score";
    case Ending::time:
      return "still running";
  }
  return "";
}

}  // namespace

FieldView viewAt(const Tape& tape, double t, const FieldView& base) {
  const Vec2 ball = smoothedBall(tape, t);
  const double top = std::max(base.low.y + kEdge, base.high.y - kAhead);
  const Vec2 shift{shiftInto(ball.x, base.low.x + kEdge, base.high.x - kEdge), std::max(0.0, ball.y - top)};
  return {base.low + shift, base.high + shift};
}

double symbolFor(const PageRect& box, const FieldView& view, double least_page) {
  constexpr double kShoulders = 0.37;  // yd
  return std::max(kShoulders, least_page / fieldCamera(box, view.low, view.high).scale_x);
}

std::vector<Frame> framesBefore(const Tape& tape, double t, double span) {
  constexpr double kEvery = 0.05;  // s
  std::vector<Frame> past;
  for (int i = static_cast<int>(span / kEvery); i > 0; --i) {
    if (t - kEvery * i >= 0.0) past.push_back(frameAt(tape, t - kEvery * i));
  }
  return past;
}

double crossingOf(const Tape& tape) {
  const Record& record = tape.record;
  if (record.line_tick >= 0) return seconds(record.line_tick);
  if (record.first_contact_tick >= 0) return seconds(record.first_contact_tick);
  return 0.7 * lengthOf(tape);
}

std::vector<Lane> lanesShownAt(const Tape& tape, double t, const Frame& frame) {
  constexpr double kAfterCrossing = 0.4;  // s
  const Record& record = tape.record;
  const double from = record.handoff_tick >= 0 ? seconds(record.handoff_tick) : 0.0;
  if (t < from || t > crossingOf(tape) + kAfterCrossing) return {};
  return lanesAt(tape, frame);
}

std::string lookLine(const Setup& setup) {
  const std::string variant = setup.variant.empty() || setup.variant == "base" ? "" : " " + setup.variant;
  const std::string side = setup.direction > 0 ? "right" : "left";
  const std::string run = setup.scheme.empty() ? "" : fmt::format("{}{} {}", setup.scheme, variant, side);
  const std::string offense = listed({setup.formation, run});
  const std::string defense = listed({setup.front, setup.shell, setup.structure});
  return offense.empty() ? defense : fmt::format("{} against {}", offense, defense);
}

std::string endingLine(const Record& record) {
  const char* word = wordOf(record.ending);
  if (record.yards < 0.0) return fmt::format("loss of {:.1f} yd, {}", -record.yards, word);
  return fmt::format("gain of {:.1f} yd, {}", record.yards, word);
}

}  // namespace gapsound
