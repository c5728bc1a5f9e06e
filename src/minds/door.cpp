#include <algorithm>
#include <cmath>

#include "base/numbers.hpp"
#include "minds/offense.hpp"

namespace gapsound {
namespace {

// > 0: the kicker has lost the inside, the end's body shuts the lane. Judged from where the two are and go.
double helmetOutside(const AttackerView& v, int kicker, int end) {
  const Glimpse& g = v.glimpse;
  const Vec2 k = g.place(kicker);
  const Vec2 e = g.place(end);
  if (distance(k, e) > v.model.door_judge_yd) return 0.0;
  return clamped((k.x - e.x + 0.15 * (g.man(kicker).vel.x - g.man(end).vel.x)) / 0.4, -1.0, 1.0);
}

double downBlockHip(const Glimpse& g, double end_x) {
  double inner = -9.0;
  for (int i = 0; i < kOffense; ++i) {
    const Pose& p = g.man(i);
    if (p.engaged == kNobody || std::abs(g.place(i).y - 0.4) > 2.2) continue;
    const double x = std::max(g.place(i).x, g.place(p.engaged).x);
    if (x < end_x - 0.5) inner = std::max(inner, x);
  }
  return inner;
}

}  // namespace

SeenDoor doorOf(const AttackerView& v) {
  const Glimpse& g = v.glimpse;
  SeenDoor door;
  const int kicker = v.sheet.kicker;
  if (kicker == kNobody) return door;
  const int end = v.sheet.jobs[static_cast<std::size_t>(kicker)].target;
  if (end == kNobody) return door;
  const double end_x = g.place(end).x;
  const double inner = downBlockHip(g, end_x);
  if (inner < -8.0) return door;
  door.exists = true;
  door.inner = inner + 0.3;
  door.outer = std::max(end_x, g.place(kicker).x);
  door.width = end_x - inner - 0.6 - v.model.door_helmet_yd * helmetOutside(v, kicker, end);
  door.shut = door.width < v.model.door_shut_yd;
  return door;
}

double aimNow(const AttackerView& v) {
  const SeenDoor door = doorOf(v);
  if (!door.exists) return v.sheet.run.aim_x;
  if (door.shut) return door.outer + v.model.door_round_yd;
  return std::min(v.sheet.run.aim_x, door.inner + 0.5 * door.width);
}

}  // namespace gapsound
