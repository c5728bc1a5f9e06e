#include "teach/clip.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "analysis/as_run.hpp"
#include "analysis/lanes.hpp"
#include "base/numbers.hpp"
#include "base/tick.hpp"
#include "picture/calipers.hpp"
#include "teach/view.hpp"

namespace gapsound {
namespace {

constexpr double kTitleSeconds = 1.0, kFreezeSeconds = 1.6, kEndingSeconds = 1.0, kCautionSeconds = 1.6;
constexpr int kSlowness = 4;
constexpr double kBeforeLine = 0.40, kAfterLine = 0.15;  // s around the crossing

double longestOf(const ClipScript& script) {
  double longest = 0.0;
  for (const ClipSide& side : script.sides) longest = std::max(longest, lengthOf(side.tape));
  return longest;
}

void slowAround(ClipScript& script, double first, double last) {
  const double end = longestOf(script);
  script.slow_from = clamped(first - kBeforeLine, 0.0, end);
  script.slow_to = clamped(last + kAfterLine, script.slow_from, end);
  script.freeze_at = clamped(first, script.slow_from, script.slow_to);
}

const char* verbOf(Relation relation) {
  switch (relation) {
    case Relation::bounce:
      return "bounces through";
    case Relation::cutback:
      return "cuts back through";
    case Relation::designed:
    case Relation::inside:
      return "runs through";
  }
  return "runs through";
}

std::string ownerWords(const Setup& setup, const Lane& lane) {
  if (lane.owner == kNobody) return "it is nobody's";
  const std::string& owner = setup.men[static_cast<std::size_t>(lane.owner)].id;
  switch (lane.cause) {
    case Cause::there:
      return owner + " is there";
    case Cause::absent:
      return owner + " is absent";
    case Cause::beaten:
      return owner + " is beaten";
    case Cause::missed:
      return owner + " misses it";
    case Cause::none:
      return "it is " + owner + "'s";
  }
  return "";
}

/// Where the ball gets to at a depth, going on as it goes.
double headedTo(const Frame& frame, double depth) {
  constexpr double kSlowest = 1.0, kFarthest = 0.5;  // yd/s upfield; s
  if (frame.carrier == kNobody) return frame.ball.x;
  const Vec2 vel = frame.men[static_cast<std::size_t>(frame.carrier)].vel;
  const double t = (depth - frame.ball.y) / std::max(vel.y, kSlowest);
  return frame.ball.x + vel.x * std::clamp(t, 0.0, kFarthest);
}

/// The lane the ball goes into: a runner who crosses the line at a slant is measured where he gets to.
std::optional<Lane> laneTaken(const Tape& tape) {
  if (tape.record.line_tick < 0) return std::nullopt;
  const Frame frame = frameAt(tape, seconds(tape.record.line_tick));
  const std::vector<Lane> lanes = lanesAt(tape, frame);
  if (lanes.empty()) return std::nullopt;
  return *nearestLane(lanes, headedTo(frame, lanes.front().y));
}

/// True of the frozen picture by construction: it reads the lane measured there.
std::string laneLine(const Tape& tape, const std::optional<Lane>& lane) {
  const int carrier = runnerOf(tape);
  const std::string runner =
      carrier == kNobody ? "The ball" : tape.setup.men[static_cast<std::size_t>(carrier)].id;
  if (tape.record.line_tick < 0) return runner + " never crosses the line.";
  if (!lane) return runner + " crosses the line.";
  return fmt::format("{} {} {}, {}: {}.", runner, verbOf(lane->relation), lane->gap, yardsText(lane->width()),
                     ownerWords(tape.setup, *lane));
}

ClipSide sideOf(const Tape& tape, const std::string& name, const std::optional<Lane>& lane) {
  return {tape, name, lane ? std::optional(lane->centre()) : std::nullopt};
}

void repeat(std::vector<ClipFrame>& frames, const ClipScript& script, Scene scene, double t, double length) {
  frames.insert(frames.end(), static_cast<std::size_t>(std::lround(length * script.fps)),
                ClipFrame{scene, t});
}

}  // namespace

ClipScript clipOf(const Tape& tape) {
  ClipScript script;
  script.title = tape.setup.title;
  script.subtitle = lookLine(tape.setup);
  const std::optional<Lane> lane = laneTaken(tape);
  script.sides = {sideOf(tape, "", lane)};
  slowAround(script, crossingOf(tape), crossingOf(tape));
  script.line = laneLine(tape, lane);
  return script;
}

ClipScript clipOf(const Tape& a, const std::string& name_a, const Tape& b, const std::string& name_b,
                  const std::string& difference) {
  ClipScript script;
  script.title = a.setup.title;
  const std::string endings =
      fmt::format("{}: {}. {}: {}.", name_a, endingLine(a.record), name_b, endingLine(b.record));
  script.subtitle = difference.empty() ? endings : difference;
  script.line = script.subtitle;
  script.sides = {sideOf(a, name_a, laneTaken(a)), sideOf(b, name_b, laneTaken(b))};
  const auto [first, last] = std::minmax({crossingOf(a), crossingOf(b)});
  slowAround(script, first, std::min(last, first + kBeforeLine));
  return script;
}

std::vector<ClipFrame> framesOf(const ClipScript& script) {
  std::vector<ClipFrame> frames;
  repeat(frames, script, Scene::title, 0.0, kTitleSeconds);
  const int steps_a_second = kSlowness * script.fps;
  const auto stepAt = [&](double t) { return static_cast<int>(std::lround(t * steps_a_second)); };
  const int last = stepAt(longestOf(script)), slow_from = stepAt(script.slow_from),
            slow_to = stepAt(script.slow_to);
  const int frozen = script.freeze_at < 0.0 ? -1 : stepAt(script.freeze_at);
  for (int time = 0; time < script.loops; ++time) {
    for (int step = 0; step <= last;) {
      const bool slow = slow_from <= step && step < slow_to;
      const double t = static_cast<double>(step) / steps_a_second;
      frames.push_back({slow ? Scene::slow : Scene::play, t});
      if (step == frozen) repeat(frames, script, Scene::freeze, t, kFreezeSeconds);
      step += slow ? 1 : step < slow_from ? std::min(kSlowness, slow_from - step) : kSlowness;
    }
  }
  repeat(frames, script, Scene::ending, longestOf(script), kEndingSeconds);
  repeat(frames, script, Scene::caution, longestOf(script), kCautionSeconds);
  return frames;
}

}  // namespace gapsound
