#include <algorithm>

#include "base/numbers.hpp"
#include "minds/offense.hpp"

namespace gapsound {
namespace {

Intent bootFake() {
  Intent intent;
  intent.want = {-2.6, -0.8};
  intent.face = {-0.8, 0.6};
  return intent;
}

// How far the end has committed, carried on a little by how he moves: inside toward the back, or, on a sweep,
// outside or upfield; there an end who keeps his width while all block down has widened.
double commitment(const AttackerView& v) {
  const Glimpse& g = v.glimpse;
  const ReadJob& read = v.sheet.read;
  const Pose& end = g.man(read.who);
  if (end.engaged != kNobody) return 0.0;
  const double side = signOf(g.spot(read.who).x);
  const Vec2 heading = end.pos - g.spot(read.who) + v.model.read_lead_s * end.vel;
  const double out = side * heading.x;
  if (!read.keeps_if_wide) return -out;
  return std::max(out + v.model.read_width_yd, -heading.y - v.model.read_upfield_yd);
}

// He rides the back and decides at the last moment the exchange leaves him.
void readTheEnd(const AttackerView& v, PasserMemory& memory) {
  if (memory.decided || v.glimpse.clock() < v.sheet.run.mesh_s - v.model.read_before_s) return;
  memory.decided = true;
  memory.keeps = commitment(v) > v.model.read_commit_yd;
}

// A quarterback who carries by design: to his start point in time, not faster than his blockers.
Intent toOwnStart(const AttackerView& v) {
  const Glimpse& g = v.glimpse;
  const Vec2 gap = v.sheet.run.mesh - g.self().pos;
  const double left = std::max(v.sheet.run.mesh_s - g.clock(), 0.1);
  Intent intent;
  intent.want = std::min(length(gap) / left, 4.0) * unit(gap, {0.0, 0.0});
  intent.face = {0.0, 1.0};
  return intent;
}

Intent turnToToss(const AttackerView& v) {
  const Glimpse& g = v.glimpse;
  Intent intent;
  intent.face = unit(g.place(v.sheet.carrier) - g.self().pos);
  return intent;
}

}  // namespace

Intent decidePasser(const AttackerView& v, PasserMemory& memory, bool has_ball) {
  if (!has_ball) return bootFake();
  if (v.sheet.carrier == v.sheet.passer) return toOwnStart(v);
  if (v.sheet.read.who != kNobody) readTheEnd(v, memory);
  const Glimpse& g = v.glimpse;
  const Vec2 me = g.self().pos;
  const BackJob& run = v.sheet.run;
  if (run.toss_s > 0.0) return turnToToss(v);
  const Vec2 hand = run.mesh + Vec2{-0.55, 0.35};
  const double left = std::max(run.mesh_s - 0.1 - g.clock(), 0.15);
  Intent intent;
  intent.want = std::min(distance(me, hand) / left, 4.0) * unit(hand - me, {0.0, 0.0});
  intent.face = unit(g.place(v.sheet.carrier) - me);
  return intent;
}

PlaySheet keeperSheetOf(const PlaySheet& sheet) {
  PlaySheet keeper = sheet;
  keeper.run.aim_x = sheet.read.keep_aim_x;
  keeper.run.bends = false;
  keeper.run.patient = sheet.read.keep_aim_x > 0.0;  // to the side of the pullers he stays behind them
  keeper.kicker = kNobody;
  if (!keeper.run.patient) keeper.wrapper = kNobody;
  return keeper;
}

}  // namespace gapsound
