#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cmath>

#include "analysis/as_run.hpp"
#include "analysis/openings.hpp"
#include "analysis/story.hpp"
#include "analysis/words.hpp"
#include "base/tick.hpp"

namespace gapsound {
namespace {

constexpr double kDriven = 1.5;      // yd off his place at the snap
constexpr double kPenetrated = 0.7;  // yd behind the line

using Sentences = std::vector<std::string>;

std::string joined(const std::vector<std::string>& ids) {
  if (ids.size() < 2) return ids.empty() ? "" : ids.front();
  return fmt::format("{} and {}", fmt::join(ids.begin(), ids.end() - 1, ", "), ids.back());
}

std::vector<std::string> blockersOn(const Story& story, int man, int tick) {
  std::vector<std::string> ids;
  for (int k = 0; k < kOffense; ++k)
    if (story.pose(k, tick).engaged == man) ids.push_back(story.id(k));
  return ids;
}

std::string byBlockers(const Story& story, int man, int tick) {
  const auto ids = blockersOn(story, man, tick);
  return ids.empty() ? "" : " by " + joined(ids);
}

void tellCalls(const Story& story, Sentences& out) {
  std::vector<std::string> slanted;
  for (const Event& event : story.tape().record.events) {
    if (event.what == Happening::slants) slanted.push_back(story.id(event.man));
    if (event.what == Happening::shoots)
      out.push_back(fmt::format("{} shot his gap on this snap.", story.id(event.man)));
  }
  if (!slanted.empty()) out.push_back(fmt::format("{} slanted a gap.", joined(slanted)));
}

/// Mistakes laid on single men, as they began to show.
void tellMistakes(const Story& story, Sentences& out) {
  for (const Event& event : story.tape().record.events) {
    if (event.what != Happening::errs) continue;
    const std::string when = event.tick > 0 ? fmt::format(" at {:.2f} s", seconds(event.tick)) : "";
    out.push_back(fmt::format("By order {} {}{}.", story.id(event.man),
                              saidOf(static_cast<FaultKind>(event.code)), when));
  }
}

/// What the quarterback made of the man he read.
void tellRead(const Story& story, Sentences& out) {
  const Tape& tape = story.tape();
  if (tape.setup.read.who == kNobody || tape.setup.passer == kNobody) return;
  const std::string& passer = story.id(tape.setup.passer);
  const std::string& end = story.id(tape.setup.read.who);
  if (tape.record.kept) {
    const char* saw = tape.setup.read.keeps_if_wide ? "widen" : "close on the back";
    out.push_back(fmt::format("{} saw {} {} and kept.", passer, end, saw));
  } else if (tape.record.handoff_tick >= 0) {
    out.push_back(fmt::format("{} read {} and gave.", passer, end));
  }
}

std::string sideOfBall(const Story& story, int man) {
  const int tick = story.tape().record.line_tick;
  if (tick < 0) return "";
  const double off = story.frame(tick).ball.x - story.pose(man, tick).pos.x;
  return off * story.tape().setup.direction > 0.0 ? "; the ball went outside him"
                                                  : "; the ball went inside him";
}

void tellEnd(const Story& story, Sentences& out) {
  const int end = story.cast().end;
  if (end == kNobody) return;
  const auto ids = blockersOn(story, end, story.decisiveTick());
  const std::string block = ids.empty() ? fmt::format("nobody had {} blocked", story.id(end))
                                        : fmt::format("{} had {} blocked", joined(ids), story.id(end));
  out.push_back(fmt::format("When it was decided {}{}.", block, sideOfBall(story, end)));
}

void tellLine(const Story& story, Sentences& out) {
  const int tick = story.decisiveTick();
  for (int k = kOffense; k < kMen; ++k) {
    if (story.man(k).fit.level != 1 || k == story.cast().end) continue;
    const Vec2 moved = story.pose(k, tick).pos - story.pose(k, 0).pos;
    if (story.pose(k, tick).pos.y < -kPenetrated)
      out.push_back(
          fmt::format("{} got {} into the backfield.", story.id(k), yards(-story.pose(k, tick).pos.y)));
    else if (moved.y > kDriven && story.pose(k, tick).engaged != kNobody)
      out.push_back(fmt::format("{} was driven {} off the line{}.", story.id(k), yards(moved.y),
                                byBlockers(story, k, tick)));
  }
}

std::string cameOfIt(const Story& story, int man) {
  const auto ids = blockersOn(story, man, story.decisiveTick());
  if (!ids.empty()) return fmt::format("; {} had him blocked at the line", joined(ids));
  return "";
}

void tellDecision(const Story& story, int man, Sentences& out) {
  const Event* decision = story.decision(man);
  if (decision == nullptr) {
    if (story.happened(Happening::shoots, man)) return;
    out.push_back(fmt::format("{} had decided nothing yet{}.", story.id(man), cameOfIt(story, man)));
    return;
  }
  const auto fit = static_cast<Fit>(decision->code);
  const std::string sight = story.sight(man, decision->tick);
  const bool off_the_man = story.man(man).fit.off_the_man_in_front;
  const std::string saw = sight.empty() ? "" : fmt::format("saw that {} and ", sight);
  const std::string did = off_the_man ? std::string(saidOf(fit)) : "ran to his call whatever he saw";
  out.push_back(fmt::format("{} {}{}{}.", story.id(man), saw, did, cameOfIt(story, man)));
}

void tellLevel(const Story& story, int level, Sentences& out) {
  const int first = story.cast().first_backer;
  if (level == 2 && first != kNobody) tellDecision(story, first, out);
  for (int k = kOffense; k < kMen; ++k) {
    const FitRole role = story.role(k);
    if (story.man(k).fit.level != level || k == first || role == FitRole::out || role == FitRole::corner)
      continue;
    tellDecision(story, k, out);
  }
}

std::string whoseLane(const Story& story, const Lane& lane) {
  const int tick = story.decisiveTick();
  if (lane.owner == kNobody) return "nobody had it";
  const Pose& owner = story.pose(lane.owner, tick);
  const std::string& id = story.id(lane.owner);
  const double off = distance(owner.pos, {lane.centre(), lane.y});
  switch (lane.cause) {
    case Cause::absent:
      return fmt::format("it was {}'s, who was {} away", id, yards(off));
    case Cause::beaten:
      return fmt::format("{} was there and blocked{}", id, byBlockers(story, lane.owner, tick));
    case Cause::missed:
      return fmt::format("{} was there, free, and did not close it", id);
    case Cause::there:
      return fmt::format("{} was there", id);
    case Cause::none:
      break;
  }
  return fmt::format("it was {}'s", id);
}

void tellLane(const Story& story, const Account& account, Sentences& out) {
  const int man = runnerOf(story.tape());
  const std::string runner = man == kNobody ? "The ball" : story.id(man);
  const Summary& s = account.summary;
  if (s.t_line < 0.0) {
    out.push_back(fmt::format("{} never crossed the line.", runner));
  } else if (account.lane) {
    const double width = account.lane->width();
    out.push_back(fmt::format("{} {} through {}, {}{} wide: {}.", runner, saidOf(s.lane_relation), s.lane_gap,
                              width < kPassable ? "only " : "", yards(width),
                              whoseLane(story, *account.lane)));
  }
  if (s.cutback_open && !s.cutback_taken) out.push_back("The cutback was open and not taken.");
}

void tellTackles(const Story& story, const Account& account, Sentences& out) {
  for (const Event& event : story.tape().record.events)
    if (event.what == Happening::misses_tackle)
      out.push_back(fmt::format("{} missed the tackle at {}.", story.id(event.man),
                                yards(story.frame(event.tick).ball.y)));
  const double gained = account.summary.yards;
  const std::string result =
      fmt::format("the {} was {}", gained < 0.0 ? "loss" : "gain", yards(std::abs(gained)));
  if (account.tacklers.empty())
    out.push_back(fmt::format("Nobody made a tackle; {}.", result));
  else
    out.push_back(fmt::format("{} made the tackle; {}.", joined(account.tacklers), result));
}

}  // namespace

std::vector<std::string> whyOf(const Story& story, const Account& account) {
  Sentences out;
  tellCalls(story, out);
  tellMistakes(story, out);
  tellRead(story, out);
  tellEnd(story, out);
  tellLine(story, out);
  tellLevel(story, 2, out);
  tellLevel(story, 3, out);
  tellLane(story, account, out);
  tellTackles(story, account, out);
  return out;
}

}  // namespace gapsound
