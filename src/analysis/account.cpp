#include "analysis/account.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "analysis/as_run.hpp"
#include "analysis/door.hpp"
#include "analysis/gaps.hpp"
#include "analysis/openings.hpp"
#include "analysis/story.hpp"
#include "analysis/words.hpp"
#include "base/tick.hpp"

namespace gapsound {
namespace {

constexpr double kNearBall = 3.0;  // yd

std::string resultOf(const Story& story, int man) {
  if (story.happened(Happening::wraps, man)) return "tackled";
  if (story.happened(Happening::misses_tackle, man)) return "missed the tackle";
  const Pose& pose = story.pose(man, story.decisiveTick());
  if (pose.engaged != kNobody) return "blocked by " + story.id(pose.engaged);
  const Frame& end = story.frame(story.tape().record.end_tick);
  const bool near = distance(end.men[static_cast<std::size_t>(man)].pos, end.ball) <= kNearBall;
  return near ? "free, at the ball" : "free, away from the ball";
}

FitLine lineFor(const Story& story, const GapChart& gaps, int man) {
  FitLine line;
  line.man = man;
  line.level = story.man(man).fit.level;
  line.called = story.man(man).fit.gap;
  line.gap = gaps.at(story.pose(man, story.decisiveTick()).pos.x);
  line.result = resultOf(story, man);
  const Event* decision = story.decision(man);
  line.t = decision != nullptr ? seconds(decision->tick) : -1.0;
  line.did = decision != nullptr ? saidOf(static_cast<Fit>(decision->code)) : "";
  line.saw = decision != nullptr ? story.sight(man, decision->tick).words : "";
  return line;
}

std::vector<FitLine> fitLinesOf(const Story& story) {
  const GapChart gaps(story.tape().setup);
  std::vector<FitLine> lines;
  for (int k = kOffense; k < kMen; ++k)
    if (story.role(k) != FitRole::out && story.role(k) != FitRole::corner)
      lines.push_back(lineFor(story, gaps, k));
  std::stable_sort(lines.begin(), lines.end(),
                   [](const FitLine& a, const FitLine& b) { return a.level < b.level; });
  return lines;
}

std::vector<std::string> tacklersOf(const Story& story) {
  std::vector<std::string> ids;
  for (const Event& event : story.tape().record.events)
    if (event.what == Happening::wraps) ids.push_back(story.id(event.man));
  return ids;
}

/// The owned lane that the ball is in, or the one nearest to it.
std::optional<Lane> crossingLane(const Tape& tape) {
  const int tick = tape.record.line_tick;
  if (tick < 0 || tape.record.frames.empty()) return {};
  const double x = frameAt(tape, seconds(tick)).ball.x;
  const auto lanes = lanesAt(tape, tick);
  if (lanes.empty()) return {};
  Lane lane = *nearestLane(lanes, x);
  lane.relation = withSetupAsRun(
      tape, [&](const Setup& setup) { return doorAt(setup, frameAt(tape, seconds(tick))).relationOf(x); });
  return lane;
}

}  // namespace

Account accountOf(const Tape& tape) {
  Account account;
  account.summary = summarize(tape);
  if (tape.record.frames.empty()) return account;
  const Story story(tape);
  account.fits = fitLinesOf(story);
  account.tacklers = tacklersOf(story);
  account.lane = crossingLane(tape);
  account.why = whyOf(story, account);
  return account;
}

}  // namespace gapsound
