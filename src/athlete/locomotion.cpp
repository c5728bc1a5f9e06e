#include "athlete/locomotion.hpp"

#include <algorithm>
#include <cmath>

#include "base/numbers.hpp"

namespace gapsound {
namespace {

constexpr double kGravity = 10.73;  // yd/s^2
constexpr double kNoHeading = 0.8;  // yd/s: slower than this a man has no direction to turn out of

// At rest a man can start any way; the pull of his stance is the sprint law's first step.
Vec2 startFromRest(Vec2 wish, double top, double tau) { return shortened(wish, top / tau); }

// In a bend the inside leg limits: V falls by loco_curve_loss per g of sideways acceleration.
double speedInBend(double top, const Model& model, double lateral) {
  return top * (1.0 - model.loco_curve_loss * lateral / kGravity);
}

}  // namespace

double speedShare(const Body& body, const Model& model, Vec2 face, Vec2 move) {
  const double c = dot(face, move);
  if (c >= 0.5) return 1.0;
  if (c >= -0.3) return model.loco_crossover + (1.0 - model.loco_crossover) * ramp(c, -0.1, 0.5);
  return body.backpedal + (model.loco_crossover - body.backpedal) * ramp(c, -1.0, -0.3);
}

Vec2 accelerationToward(const Body& body, const Model& model, Vec2 vel, Vec2 face, Vec2 want) {
  const double speed = length(vel);
  const double top = body.top_speed * speedShare(body, model, face, unit(speed > kNoHeading ? vel : want));
  const Vec2 wish = (1.0 / model.loco_response_s) * (shortened(want, top) - vel);
  if (speed < kNoHeading) return startFromRest(wish, top, body.tau);

  const Vec2 ahead = (1.0 / speed) * vel;
  const Vec2 left = leftOf(ahead);
  double along = dot(wish, ahead);
  double across = clamped(dot(wish, left), -body.lateral, body.lateral);
  const double bend_top = speedInBend(top, model, std::abs(across));
  const double forward = std::max((bend_top - speed) / body.tau, 0.0);
  const double cap = along > 0.0 ? forward : body.brake;
  along = clamped(along, -body.brake, forward);

  const double ca = cap > 1e-6 ? along / cap : 0.0;
  const double cl = across / body.lateral;
  const double load = ca * ca + cl * cl;
  const double scale = load > 1.0 ? 1.0 / std::sqrt(load) : 1.0;
  return scale * along * ahead + scale * across * left;
}

Vec2 turnedToward(Vec2 face, Vec2 goal, double angle) {
  const double turn = fixedAngle({dot(face, goal), cross(face, goal)});
  if (std::abs(turn) <= angle) return goal;
  const Vec2 step = fixedDirection(turn > 0.0 ? angle : -angle);
  return unit({face.x * step.x - face.y * step.y, face.x * step.y + face.y * step.x});
}

}  // namespace gapsound
