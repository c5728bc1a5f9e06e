#include "analysis/lanes.hpp"

#include <algorithm>
#include <cmath>

#include "analysis/as_run.hpp"
#include "analysis/door.hpp"
#include "analysis/gaps.hpp"
#include "analysis/openings.hpp"
#include "base/tick.hpp"

namespace gapsound {
namespace {

constexpr double kHisGap = 1.5;       // yd: a lane this far from a man's called gap is still his
constexpr double kHandedReach = 5.0;  // yd: farther off he is no owner of a lane, whatever he has decided
constexpr double kAtHisLane = 1.5;    // yd from the lane's edge: near enough to say that he was there

std::size_t at(int k) { return static_cast<std::size_t>(k); }
const Man& manOf(const Setup& setup, int k) { return setup.men[at(k)]; }

FitRole roleOf(const Setup& setup, int k) {
  const FitJob& fit = manOf(setup, k).fit;
  return setup.direction > 0 ? fit.if_right : fit.if_left;
}

bool fitsTheRun(const Setup& setup, int k) {
  const FitRole role = roleOf(setup, k);
  return role != FitRole::out && role != FitRole::corner;
}

/// The man whose call names the gap, the lowest level first; else the front man whose called gap lies
/// nearest.
int ownerByCall(const Setup& setup, const Lane& lane) {
  int named = kNobody, nearest = kNobody;
  const auto off = [&](int k) { return std::abs(manOf(setup, k).fit.gap_x - lane.centre()); };
  for (int k = kOffense; k < kMen; ++k) {
    if (!fitsTheRun(setup, k)) continue;
    const FitJob& fit = manOf(setup, k).fit;
    const bool names = fit.gap.find(lane.gap) != std::string::npos;
    if (names && (named == kNobody || fit.level < manOf(setup, named).fit.level)) named = k;
    if (fit.level < 3 && off(k) < kHisGap && (nearest == kNobody || off(k) < off(nearest))) nearest = k;
  }
  return named != kNobody ? named : nearest;
}

double offLane(const Lane& lane, double x) {
  if (x < lane.left) return lane.left - x;
  return x > lane.right ? x - lane.right : 0.0;
}

Cause causeAt(const Frame& frame, const Lane& lane) {
  const bool open = lane.state == LaneState::open;
  if (lane.owner == kNobody) return open ? Cause::absent : Cause::none;
  const Pose& owner = frame.men[at(lane.owner)];
  const bool near =
      offLane(lane, owner.pos.x) <= kAtHisLane && std::abs(owner.pos.y - lane.y) <= 2.0 * kAtHisLane;
  if (!open) return near ? Cause::there : Cause::none;
  if (!near) return Cause::absent;
  return owner.engaged != kNobody ? Cause::beaten : Cause::missed;
}

/// Of the lanes between the jambs only the one nearest the aim is the designed one.
void keepOneDesigned(const Setup& setup, std::vector<Lane>& lanes) {
  Lane* best = nullptr;
  const double aim = setup.run.aim_x;
  for (Lane& lane : lanes) {
    if (lane.relation != Relation::designed) continue;
    if (best == nullptr) {
      best = &lane;
      continue;
    }
    const bool nearer = offLane(lane, aim) < offLane(*best, aim);
    (nearer ? *best : lane).relation = Relation::inside;
    if (nearer) best = &lane;
  }
}

enum class Handed { nothing, outside_end, inside_end, back_side };

Handed handedBy(Fit fit) {
  switch (fit) {
    case Fit::over_top:
    case Fit::new_edge:
    case Fit::force_set:
    case Fit::force_tight:
      return Handed::outside_end;
    case Fit::inside:
    case Fit::outside_half:
    case Fit::inside_half:
    case Fit::under:
    case Fit::insert:
      return Handed::inside_end;
    case Fit::tight_double:
    case Fit::fold:
    case Fit::hang:
    case Fit::cutback:
    case Fit::cutback_window:
      return Handed::back_side;
    default:
      return Handed::nothing;
  }
}

bool suits(Relation relation, Handed handed) {
  if (handed == Handed::outside_end) return relation == Relation::bounce;
  if (handed == Handed::back_side) return relation == Relation::cutback;
  return handed == Handed::inside_end && (relation == Relation::designed || relation == Relation::inside);
}

/// The lane of the kind he was handed that lies nearest to him.
Lane* laneFor(std::vector<Lane>& lanes, Handed handed, double x) {
  Lane* best = nullptr;
  for (Lane& lane : lanes)
    if (suits(lane.relation, handed) && (best == nullptr || offLane(lane, x) < offLane(*best, x)))
      best = &lane;
  return best;
}

void handOver(const Setup& setup, const Frame& frame, int man, Fit fit, std::vector<Lane>& lanes) {
  const double x = frame.men[at(man)].pos.x;
  Lane* lane = laneFor(lanes, handedBy(fit), x);
  if (lane == nullptr || lane->owner == man || offLane(*lane, x) > kHandedReach) return;
  for (Lane& other : lanes)
    if (other.owner == man) other.owner = kNobody;
  const bool front_man = lane->owner != kNobody && manOf(setup, lane->owner).fit.level == 1;
  if (!front_man) lane->owner = man;
}

std::vector<Lane> ownedLanes(const Setup& setup, const Frame& frame) {
  const Door door = doorAt(setup, frame);
  const GapChart gaps(setup);
  auto lanes = openingsAt(setup, frame);
  for (Lane& lane : lanes) {
    timeLane(setup, frame, lane);
    lane.gap = gaps.at(lane.centre());
    lane.relation = door.relationOf(lane.centre());
    lane.owner = ownerByCall(setup, lane);
  }
  keepOneDesigned(setup, lanes);
  return lanes;
}

}  // namespace

std::vector<Lane> lanesAt(const Setup& setup, const Frame& frame) {
  auto lanes = ownedLanes(setup, frame);
  for (Lane& lane : lanes) lane.cause = causeAt(frame, lane);
  return lanes;
}

std::vector<Lane> lanesAt(const Tape& tape, const Frame& frame) {
  return withSetupAsRun(tape, [&](const Setup& setup) { return lanesAt(setup, frame); });
}

std::vector<Lane> lanesAt(const Tape& tape, int tick) {
  const Frame frame = frameAt(tape, seconds(tick));
  auto lanes = withSetupAsRun(tape, [&](const Setup& setup) { return ownedLanes(setup, frame); });
  for (const Event& event : tape.record.events)
    if (event.tick <= tick && event.what == Happening::decides && event.man >= kOffense)
      handOver(tape.setup, frame, event.man, static_cast<Fit>(event.code), lanes);
  for (Lane& lane : lanes) lane.cause = causeAt(frame, lane);
  return lanes;
}

const Lane* nearestLane(const std::vector<Lane>& lanes, double x) {
  const auto nearest = std::min_element(lanes.begin(), lanes.end(), [&](const Lane& a, const Lane& b) {
    return offLane(a, x) < offLane(b, x);
  });
  return nearest == lanes.end() ? nullptr : &*nearest;
}

}  // namespace gapsound
