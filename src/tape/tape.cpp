#include "tape/tape.hpp"

#include <algorithm>

#include "base/tick.hpp"

namespace gapsound {
namespace {

Vec2 between(Vec2 a, Vec2 b, double part) { return a + part * (b - a); }

Pose between(const Pose& a, const Pose& b, double part) {
  Pose pose = a;
  pose.pos = between(a.pos, b.pos, part);
  pose.vel = between(a.vel, b.vel, part);
  pose.face = unit(between(a.face, b.face, part), a.face);
  return pose;
}

}  // namespace

Frame frameAt(const Tape& tape, double t) {
  const auto& frames = tape.record.frames;
  if (frames.empty()) return {};
  const double tick = std::clamp(t * kTicksPerSecond, 0.0, static_cast<double>(frames.size() - 1));
  const auto before = static_cast<std::size_t>(tick);
  const std::size_t after = std::min(before + 1, frames.size() - 1);
  const double part = tick - static_cast<double>(before);
  Frame frame = frames[before];
  for (std::size_t k = 0; k < frame.men.size(); ++k)
    frame.men[k] = between(frames[before].men[k], frames[after].men[k], part);
  frame.ball = between(frames[before].ball, frames[after].ball, part);
  return frame;
}

double lengthOf(const Tape& tape) {
  const auto& frames = tape.record.frames;
  return frames.empty() ? 0.0 : seconds(static_cast<int>(frames.size()) - 1);
}

}  // namespace gapsound
