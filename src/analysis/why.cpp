#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cmath>
#include <optional>

#include "analysis/as_run.hpp"
#include "analysis/door.hpp"
#include "analysis/openings.hpp"
#include "analysis/story.hpp"
#include "analysis/words.hpp"
#include "base/tick.hpp"

namespace gapsound {
namespace {

constexpr double kDriven = 1.5;      // yd off his place at the snap
constexpr double kPenetrated = 0.7;  // yd behind the line
constexpr double kOnSide = 0.5;      // yd: so little on the wrong side of a man is not worth telling
constexpr double kRounding = 0.05;   // yd, of what is told
constexpr double kShort = 4.0;       // yd: a gain up to this was held

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

/// The side the run went to in the end; a quarterback who keeps may turn it round.
int directionAsRun(const Story& story) {
  return withSetupAsRun(story.tape(), [](const Setup& setup) { return setup.direction; });
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

bool crossed(const Story& story) { return story.tape().record.line_tick >= 0; }

/// "when the ball crossed" or "at the end", whichever decided the run.
const char* thenWords(const Story& story) { return crossed(story) ? "when the ball crossed" : "at the end"; }

std::string sideOfBall(const Story& story, int man) {
  if (!crossed(story)) return "";
  const int tick = story.decisiveTick();
  const double off = story.frame(tick).ball.x - story.pose(man, tick).pos.x;
  return off * directionAsRun(story) > 0.0 ? ", and it went outside him" : ", and it went inside him";
}

void tellEnd(const Story& story, Sentences& out) {
  const int end = story.cast().end;
  if (end == kNobody) return;
  const auto ids = blockersOn(story, end, story.decisiveTick());
  out.push_back(fmt::format("{} had {} blocked {}{}.", ids.empty() ? "Nobody" : joined(ids), story.id(end),
                            thenWords(story), sideOfBall(story, end)));
}

std::string withBlockers(const Story& story, int man, int tick) {
  const auto ids = blockersOn(story, man, tick);
  return ids.empty() ? "" : fmt::format(" with {} on him", joined(ids));
}

void tellLine(const Story& story, Sentences& out) {
  const int tick = story.decisiveTick();
  for (int k = kOffense; k < kMen; ++k) {
    if (story.man(k).fit.level != 1 || k == story.cast().end) continue;
    const Vec2 moved = story.pose(k, tick).pos - story.pose(k, 0).pos;
    if (story.pose(k, tick).pos.y < -kPenetrated)
      out.push_back(fmt::format("{} got {} into the backfield{}.", story.id(k),
                                yards(-story.pose(k, tick).pos.y), withBlockers(story, k, tick)));
    else if (moved.y > kDriven && story.pose(k, tick).engaged != kNobody)
      out.push_back(fmt::format("{} was driven {} off the line{}.", story.id(k), yards(moved.y),
                                byBlockers(story, k, tick)));
  }
}

/// How far outside another he is, yd; nothing when there is no other.
std::optional<double> outsideOf(const Story& story, int man, int other) {
  if (other == kNobody || other == man) return {};
  const int tick = story.decisiveTick();
  return story.tape().setup.direction * (story.pose(man, tick).pos.x - story.pose(other, tick).pos.x);
}

/// Whether his place gives the lie to what he decided. Only fits that are a side of another man can be told
/// so.
bool isElsewhere(const Story& story, int man, Fit fit) {
  switch (fit) {
    case Fit::over_top:
    case Fit::new_edge:
      return outsideOf(story, man, story.cast().end).value_or(0.0) < -kOnSide;
    case Fit::inside:
    case Fit::outside_half:
    case Fit::inside_half:
      return outsideOf(story, man, story.cast().end).value_or(0.0) > kOnSide;
    case Fit::under:
    case Fit::insert:
      return outsideOf(story, man, story.cast().first_backer).value_or(0.0) > kOnSide;
    default:
      return false;
  }
}

bool readRight(const Story& story, int man) {
  const int side = story.sideRead(man, story.decisiveTick());
  return !story.tape().record.kept && side == story.tape().setup.direction;
}

std::string cameOfIt(const Story& story, int man, Fit fit) {
  const auto ids = blockersOn(story, man, story.decisiveTick());
  if (!ids.empty()) return fmt::format("; {} had him blocked {}", joined(ids), thenWords(story));
  const bool off_the_man = story.man(man).fit.off_the_man_in_front;
  if (off_the_man && readRight(story, man) && isElsewhere(story, man, fit))
    return fmt::format("; he was not there {}", thenWords(story));
  return "";
}

/// "took it for a run to the left, " when he did and it was not.
std::string wrongSide(const Story& story, int man, int until, bool ends_here) {
  const int side = story.sideRead(man, until);
  if (side == 0 || side == directionAsRun(story)) return "";
  return fmt::format("took it for a run to the {}{}", side > 0 ? "right" : "left",
                     ends_here ? " and " : ", ");
}

void tellDecision(const Story& story, int man, Sentences& out) {
  const Event* decision = story.decision(man);
  if (decision == nullptr) {
    if (story.happened(Happening::shoots, man)) return;
    out.push_back(
        fmt::format("{} had not made up his mind{}.", story.id(man), cameOfIt(story, man, Fit::called)));
    return;
  }
  const auto fit = static_cast<Fit>(decision->code);
  const std::string sight = story.sight(man, decision->tick).words;
  const bool off_the_man = story.man(man).fit.off_the_man_in_front;
  const std::string saw = sight.empty() ? "" : fmt::format("saw that {} and ", sight);
  const std::string took = wrongSide(story, man, decision->tick, sight.empty());
  const std::string did = off_the_man ? std::string(saidOf(fit)) : "ran to his call whatever he saw";
  out.push_back(fmt::format("{} {}{}{}{}.", story.id(man), took, saw, did, cameOfIt(story, man, fit)));
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

/// How he crossed, by the men he crossed between: "bounced outside SE".
std::string wayThrough(const Story& story, Relation relation) {
  const Door door = withSetupAsRun(
      story.tape(), [&](const Setup& setup) { return doorAt(setup, story.frame(story.decisiveTick())); });
  if (relation == Relation::bounce && door.edge_man != kNobody)
    return fmt::format("{} outside {}", door.edge_man == story.cast().end ? "bounced" : "went",
                       story.id(door.edge_man));
  if (relation == Relation::cutback && door.inner_man != kNobody)
    return fmt::format("cut back inside {}", story.id(door.inner_man));
  return std::string(saidOf(relation));
}

/// "1.4 yd wide", or that it lies outside the last man of the front: such a lane has no other edge.
std::string roomIn(const Lane& lane, double ball_x) {
  const bool outermost = lane.left_man == kNobody || lane.right_man == kNobody;
  if (outermost && ball_x >= lane.left && ball_x <= lane.right) return "with nobody of the front outside him";
  return fmt::format("{}{} wide", lane.width() < kPassable - kRounding ? "only " : "", yards(lane.width()));
}

void tellLane(const Story& story, const Account& account, Sentences& out) {
  const int man = runnerOf(story.tape());
  const std::string runner = man == kNobody ? "The ball" : story.id(man);
  const Summary& s = account.summary;
  if (s.t_line < 0.0)
    out.push_back(fmt::format("{} never crossed the line.", runner));
  else if (account.lane)
    out.push_back(fmt::format("{} {} through {}, {}: {}.", runner, wayThrough(story, s.lane_relation),
                              s.lane_gap, roomIn(*account.lane, story.frame(story.decisiveTick()).ball.x),
                              whoseLane(story, *account.lane)));
  if (s.cutback_open && !s.cutback_taken) out.push_back("The cutback was open and not taken.");
}

std::string result(double gained) {
  if (std::abs(gained) < 0.05) return "there was no gain";
  return fmt::format("the {} was {}", gained < 0.0 ? "loss" : "gain", yards(std::abs(gained)));
}

std::string endingOf(const Story& story) {
  const int man = runnerOf(story.tape());
  const std::string runner = man == kNobody ? "The ball" : story.id(man);
  switch (story.tape().record.ending) {
    case Ending::out:
      return runner + " went out of bounds";
    case Ending::score:
      return runner + " scored";
    case Ending::forward_progress:
      return runner + " was stopped where he stood";
    default:
      return "Nobody made a tackle";
  }
}

/// Who fitted off a man that was lost and made the tackle before it cost more than a short gain.
void tellRepair(const Story& story, const Account& account, Sentences& out) {
  if (account.tacklers.empty() || account.summary.yards > kShort) return;
  for (int k = kOffense; k < kMen; ++k) {
    const Event* decision = story.decision(k);
    if (story.id(k) != account.tacklers.front() || decision == nullptr ||
        !story.man(k).fit.off_the_man_in_front)
      continue;
    const Sight sight = story.sight(k, decision->tick);
    if (sight.lost) out.push_back(fmt::format("{} made up for {}.", story.id(k), story.id(sight.whom)));
  }
}

std::string placeOf(double y) {
  return y < 0.0 ? fmt::format("{} behind the line", yards(-y)) : fmt::format("{} downfield", yards(y));
}

void tellTackles(const Story& story, const Account& account, Sentences& out) {
  for (const Event& event : story.tape().record.events)
    if (event.what == Happening::misses_tackle)
      out.push_back(fmt::format("{} missed the tackle {}.", story.id(event.man),
                                placeOf(story.frame(event.tick).ball.y)));
  const auto& ids = account.tacklers;
  std::string end = ids.empty() ? endingOf(story) : ids.front() + " made the tackle";
  if (ids.size() > 1) end += fmt::format(", {} helped", joined({ids.begin() + 1, ids.end()}));
  out.push_back(fmt::format("{}; {}.", end, result(account.summary.yards)));
  tellRepair(story, account, out);
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
