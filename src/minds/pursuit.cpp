#include "minds/pursuit.hpp"

#include <algorithm>
#include <cmath>

#include "athlete/reach.hpp"
#include "base/numbers.hpp"
#include "minds/keys.hpp"

namespace gapsound {
namespace {

// A defender gathers himself when the ball will pass within his reach; a chaser beside or behind does not.
double speedInBalance(const Glimpse& g, const Model& m, Vec2 ball, Vec2 ball_vel, double speed) {
  const Vec2 to_me = g.self().pos - ball;
  const double d = length(to_me);
  if (d > m.balance_range_yd || length(ball_vel) < 1.0) return speed;
  const Vec2 path = unit(ball_vel);
  if (dot(to_me, path) < 0.0 || std::abs(cross(path, to_me)) > m.balance_miss_yd) return speed;
  return std::min(speed, m.balance_speed + m.balance_slope * std::max(d - 1.0, 0.0));
}

// A back in space speeds up and turns upfield; who chases where he is now never arrives.
Vec2 ballLead(const Glimpse& g, const Model& m, Vec2 vel, double d) {
  if (g.ball().y < -1.0 || d < m.lead_from_yd) return vel;
  const double speed = std::max(length(vel), m.lead_speed * ramp(g.ball().y, -1.0, 3.0));
  return speed * unit(vel + Vec2{0.0, m.lead_upfield});
}

// In front of a back in space he mirrors him: squares up sideways first, gives ground while he is outflanked,
// comes forward only as he gets square.
bool mirrors(const Glimpse& g, const Model& m, Vec2 vel, Vec2& want) {
  const Vec2 path = unit(vel);
  const Vec2 rel = g.self().pos - g.ball();
  const double ahead = dot(rel, path);
  const double off = cross(path, rel);
  if (g.ball().y < -0.5 || length(vel) < 3.0 || ahead < 0.8 || ahead > m.mirror_range_yd) return false;
  if (std::abs(off) > ahead || std::abs(off) > 4.0) return false;
  const double outflanked = std::abs(off) / m.mirror_square_yd;
  const double forward =
      clamped(m.mirror_close_yps * (1.0 - outflanked), -m.mirror_give_yps, m.mirror_close_yps);
  want = -forward * path - m.mirror_rate * off * leftOf(path);
  return true;
}

}  // namespace

Vec2 toward(Vec2 from, Vec2 goal, double speed) {
  const Vec2 gap = goal - from;
  const double d = length(gap);
  constexpr double kStopping = 6.0;  // yd/s^2, what a man counts on when he means to stop at a place
  return std::min({speed, 3.5 * d, std::sqrt(2.0 * kStopping * d)}) * unit(gap, {0.0, 0.0});
}

Vec2 backPlace(const Glimpse& g) {
  const int back = watchedBack(g);
  return back == g.carrier() ? g.ball() : g.place(back);
}

double ballDepth(const Glimpse& g) { return std::max(-backPlace(g).y, 0.0); }

double projectedCrossing(const Glimpse& g) {
  const Vec2 v = g.man(watchedBack(g)).vel;
  const Vec2 at = backPlace(g);
  const double t = std::min(std::max(-at.y, 0.0) / std::max(v.y, 3.0), 0.8);
  return at.x + v.x * t;
}

bool ballDeclares(const Glimpse& g, const Model& m, double lead_s) {
  if (g.carrier() < 0) return false;
  if (g.group(g.carrier()) == Group::quarterback && g.clock() < 1.6 && !keeperRuns(g)) return false;
  const Vec2 ball = g.ball();
  const bool stalled = ball.y > -m.declare_stall_yd && length(g.ballVelocity()) < m.declare_stall_yps;
  return stalled || distance(ball, g.self().pos) < m.declare_near_yd ||
         ball.y > -lead_s * std::max(g.ballVelocity().y, 2.0);
}

Intent pursue(const Glimpse& g, const Model& m, const Body& body, double leverage, double top_speed) {
  const Vec2 ball = g.ball();
  const Vec2 vel = g.ballVelocity();
  const double d = distance(ball, g.self().pos);
  const Vec2 target = ball + Vec2{leverage * clamped((d - 1.2) / 2.5, 0.0, 1.0), 0.0};
  const Meeting meeting =
      firstMeeting(g.self().pos, g.self().vel, body.top_speed, target, ballLead(g, m, vel, d), 0.55);
  const double speed = speedInBalance(g, m, ball, vel, top_speed);
  Intent intent;
  intent.want = speed * unit(meeting.point - g.self().pos);
  mirrors(g, m, vel, intent.want);
  intent.face = d < 5.0 ? unit(ball - g.self().pos) : unit(intent.want);
  intent.push = unit(ball - g.self().pos);
  intent.attacks = true;
  return intent;
}

}  // namespace gapsound
