#include <algorithm>
#include <cmath>

#include "base/numbers.hpp"
#include "minds/defender.hpp"

namespace gapsound {
namespace {

// What takes a man's eyes off his receiver: the receiver blocks, comes inside to, or stands; the ball is
// through.
bool seesRun(const DefenderView& v) {
  constexpr double kComesIn = 1.5, kThrough = 0.3, kStands = 1.0;  // yd, yd, yd/s
  constexpr double kRouteBegun = 1.0;                              // s
  const Glimpse& g = v.glimpse;
  const Pose& receiver = g.man(v.job.man_on);
  const double spot = g.spot(v.job.man_on).x;
  const double inward = signOf(spot) * (spot - receiver.pos.x);
  const bool stands = g.clock() > kRouteBegun && length(receiver.vel) < kStands;
  return receiver.engaged != kNobody || receiver.down || stands || inward > kComesIn || g.ball().y > kThrough;
}

}  // namespace

bool isOnHisMan(const DefenderView& v, DefenderMemory& memory) {
  if (v.job.man_on == kNobody || v.glimpse.group(v.job.man_on) != Group::receiver) return false;
  memory.left_his_man = memory.left_his_man || seesRun(v);
  return !memory.left_his_man;
}

Intent coverMan(const DefenderView& v, const DefenderMemory& memory) {
  const Glimpse& g = v.glimpse;
  const Model& m = v.model;
  const Vec2 receiver = g.place(v.job.man_on) + m.cover_lead_s * g.man(v.job.man_on).vel;
  const Vec2 goal{receiver.x - signOf(receiver.x) * m.cover_inside_yd,
                  std::max(g.spot(g.selfIndex()).y, receiver.y + m.cover_on_top_yd)};
  const Vec2 gap = goal - g.self().pos;
  constexpr double kGathering = 3.5;  // 1/s
  Intent intent;
  intent.face = unit(receiver - g.self().pos, {0.0, -1.0});
  if (g.clock() < memory.first_step_s) return intent;
  intent.want = std::min(v.body.top_speed, kGathering * length(gap)) * unit(gap, {0.0, 0.0});
  return intent;
}

}  // namespace gapsound
