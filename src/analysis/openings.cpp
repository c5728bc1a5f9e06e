#include "analysis/openings.hpp"

#include <algorithm>
#include <cmath>

#include "athlete/reach.hpp"

namespace gapsound {
namespace {

constexpr double kCutDepth = 2.0;   // yd: the cut reaches from the line (or the ball) this far downfield
constexpr double kBoxReach = 9.0;   // yd to either side of the ball's spot: bodies beyond are not the front
constexpr double kNarrowest = 0.3;  // yd: less daylight than this is no lane between two men
constexpr double kWidest = 4.0;     // yd: how much of the open field outside the last man counts as his lane

struct Span {
  double left, right;
  int left_man, right_man;  // who makes its left and its right edge
};

const Body& bodyOf(const Setup& setup, int k) { return setup.men[static_cast<std::size_t>(k)].body; }

int runnerOf(const Setup& setup, const Frame& frame) {
  const bool handed = frame.carrier != kNobody && frame.carrier != setup.passer;
  return handed || setup.carrier == kNobody ? frame.carrier : setup.carrier;
}

std::vector<Span> bodiesInCut(const Setup& setup, const Frame& frame, double front, int runner) {
  std::vector<Span> spans;
  spans.reserve(kMen);
  for (int k = 0; k < kMen; ++k) {
    const Pose& pose = frame.men[static_cast<std::size_t>(k)];
    const Vec2 half = halfExtent(bodyOf(setup, k), pose.face);
    const bool in_cut = pose.pos.y + half.y > front && pose.pos.y - half.y < front + kCutDepth;
    if (k == runner || !in_cut || std::abs(pose.pos.x) > kBoxReach) continue;
    spans.push_back({pose.pos.x - half.x, pose.pos.x + half.x, k, k});
  }
  std::sort(spans.begin(), spans.end(), [](const Span& a, const Span& b) { return a.left < b.left; });
  return spans;
}

std::vector<Span> merged(const std::vector<Span>& spans) {
  std::vector<Span> whole;
  whole.reserve(spans.size());
  for (const Span& span : spans) {
    if (whole.empty() || span.left > whole.back().right) {
      whole.push_back(span);
    } else if (span.right > whole.back().right) {
      whole.back().right = span.right;
      whole.back().right_man = span.right_man;
    }
  }
  return whole;
}

Lane opening(double left, double right, double y, int left_man, int right_man) {
  Lane lane;
  lane.left = left;
  lane.right = right;
  lane.y = y;
  lane.left_man = left_man;
  lane.right_man = right_man;
  return lane;
}

LaneState stateFor(double margin) {
  if (std::abs(margin) < kContested) return LaneState::contested;
  return margin > 0.0 ? LaneState::open : LaneState::closed;
}

double earliestDefender(const Setup& setup, const Frame& frame, Vec2 goal) {
  double earliest = kNever;
  for (int k = kOffense; k < kMen; ++k) {
    const Pose& pose = frame.men[static_cast<std::size_t>(k)];
    if (pose.engaged != kNobody || pose.down) continue;
    const Body& body = bodyOf(setup, k);  // he is there once his body covers the place
    earliest = std::min(earliest, timeToReach(pose.pos, pose.vel, body.top_speed, goal, body.shoulder));
  }
  return earliest;
}

}  // namespace

Vec2 halfExtent(const Body& body, Vec2 face) {
  const double sx = body.shoulder * face.y, cx = body.chest * face.x;
  const double sy = body.shoulder * face.x, cy = body.chest * face.y;
  return {std::sqrt(sx * sx + cx * cx), std::sqrt(sy * sy + cy * cy)};
}

std::vector<Lane> openingsAt(const Setup& setup, const Frame& frame) {
  const double front = std::max(frame.ball.y, 0.0);
  const double y = front + 0.5 * kCutDepth;
  const auto bodies = merged(bodiesInCut(setup, frame, front, runnerOf(setup, frame)));
  std::vector<Lane> lanes;
  if (bodies.empty()) return lanes;
  lanes.reserve(bodies.size() + 1);
  const Span& first = bodies.front();
  const double outside_left = std::max(first.left - kWidest, setup.sideline_left);
  lanes.push_back(opening(outside_left, first.left, y, kNobody, first.left_man));
  for (std::size_t k = 1; k < bodies.size(); ++k)
    if (bodies[k].left - bodies[k - 1].right >= kNarrowest)
      lanes.push_back(
          opening(bodies[k - 1].right, bodies[k].left, y, bodies[k - 1].right_man, bodies[k].left_man));
  const Span& last = bodies.back();
  const double outside_right = std::min(last.right + kWidest, setup.sideline_right);
  lanes.push_back(opening(last.right, outside_right, y, last.right_man, kNobody));
  return lanes;
}

void timeLane(const Setup& setup, const Frame& frame, Lane& lane) {
  const Vec2 goal{lane.centre(), lane.y};
  const int runner = runnerOf(setup, frame);
  if (runner == kNobody) return;
  const Pose& pose = frame.men[static_cast<std::size_t>(runner)];
  lane.t_runner = timeToReach(pose.pos, pose.vel, bodyOf(setup, runner).top_speed, goal, 0.0);
  lane.t_defender = earliestDefender(setup, frame, goal);
  lane.margin = lane.t_defender - lane.t_runner;
  lane.state = lane.t_runner >= kNever ? LaneState::closed : stateFor(lane.margin);
}

}  // namespace gapsound
