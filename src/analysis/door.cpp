#include "analysis/door.hpp"

#include "analysis/gaps.hpp"

namespace gapsound {
namespace {

constexpr double kClimbed = 2.5;      // yd past the line: a blocker this far up is no jamb any more
constexpr double kCenterWidth = 0.5;  // yd: the center's own double team still counts as play side

bool kicks(const BlockJob& job) { return job.kind == BlockKind::kick || job.kind == BlockKind::log; }
bool closesInside(const BlockJob& job) {
  return job.kind == BlockKind::down || job.kind == BlockKind::post || job.kind == BlockKind::drive ||
         job.kind == BlockKind::combo;
}

const Man& manOf(const Setup& setup, int k) { return setup.men[static_cast<std::size_t>(k)]; }
double outward(const Setup& setup, double x) { return setup.direction * x; }

int kickedMan(const Setup& setup) {
  for (int k = 0; k < kOffense; ++k)
    if (kicks(manOf(setup, k).block) && manOf(setup, k).block.target != kNobody)
      return manOf(setup, k).block.target;
  return kNobody;
}

int playSideEnd(const Setup& setup) {
  int end = kNobody;
  for (int k = kOffense; k < kMen; ++k) {
    const FitJob& fit = manOf(setup, k).fit;
    if ((setup.direction > 0 ? fit.if_right : fit.if_left) == FitRole::edge) return k;
    const bool outermost = fit.level == 1 && (end == kNobody || outward(setup, manOf(setup, k).spot.x) >
                                                                    outward(setup, manOf(setup, end).spot.x));
    if (outermost) end = k;
  }
  return end;
}

/// The outermost of the play-side down and double-team blocks and of the linemen they are on.
class InnerJamb {
 public:
  InnerJamb(const Setup& setup, const Frame& frame, int kicked)
      : setup_(setup), frame_(frame), kicked_(kicked) {
    for (int k = 0; k < kOffense; ++k) consider(k);
  }
  [[nodiscard]] int man() const { return man_; }

 private:
  void consider(int k) {
    const Man& man = manOf(setup_, k);
    const double x = outward(setup_, man.spot.x);
    if (!closesInside(man.block) || x < -kCenterWidth || x > outward(setup_, manOf(setup_, kicked_).spot.x))
      return;
    take(k);
    const int target = man.block.target;
    if (target != kNobody && target != kicked_ && manOf(setup_, target).fit.level == 1) take(target);
  }
  void take(int k) {
    const Pose& pose = frame_.men[static_cast<std::size_t>(k)];
    if (pose.pos.y > kClimbed) return;
    if (man_ != kNobody &&
        outward(setup_, pose.pos.x) <= outward(setup_, frame_.men[static_cast<std::size_t>(man_)].pos.x))
      return;
    man_ = k;
  }

  const Setup& setup_;
  const Frame& frame_;
  int kicked_;
  int man_ = kNobody;
};

/// The attached blocker nearest to the aim at the snap on one side of it (-1 the back side, +1 the play
/// side).
int blockerBeside(const Setup& setup, int side) {
  int best = kNobody;
  for (int k = 0; k < kOffense; ++k) {
    const Man& man = manOf(setup, k);
    const bool in_line = isInLine(man);
    const double off = side * outward(setup, man.spot.x - setup.run.aim_x);
    if (!in_line || off < 0.0) continue;
    if (best == kNobody || off < side * outward(setup, manOf(setup, best).spot.x - setup.run.aim_x)) best = k;
  }
  return best;
}

double xOf(const Frame& frame, int k, double otherwise) {
  return k == kNobody ? otherwise : frame.men[static_cast<std::size_t>(k)].pos.x;
}

}  // namespace

Relation Door::relationOf(double x) const {
  const double at = direction * x;
  if (at < direction * inner) return Relation::cutback;
  if (at > direction * edge) return Relation::bounce;
  return at <= direction * outer ? Relation::designed : Relation::inside;
}

Door doorAt(const Setup& setup, const Frame& frame) {
  Door door;
  door.direction = setup.direction;
  door.edge_man = kickedMan(setup);
  if (door.edge_man != kNobody) {
    door.inner_man = InnerJamb(setup, frame, door.edge_man).man();
    door.outer_man = door.edge_man;
  } else {
    door.edge_man = playSideEnd(setup);
    door.outer_man = blockerBeside(setup, +1);
  }
  if (door.inner_man == kNobody) door.inner_man = blockerBeside(setup, -1);
  door.inner = xOf(frame, door.inner_man, setup.run.aim_x);
  door.outer = xOf(frame, door.outer_man, setup.run.aim_x);
  door.edge = xOf(frame, door.edge_man, door.outer);
  return door;
}

}  // namespace gapsound
