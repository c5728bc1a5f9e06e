#pragma once
#include <algorithm>
#include <cmath>

#include "athlete/locomotion.hpp"
#include "base/tick.hpp"
#include "io/assets.hpp"
#include "io/model_file.hpp"

/// Field drills run by one man alone through the simulation's own locomotion, at its own step.
namespace gapsound::drills {

inline constexpr double kYard = 0.9144;  // m

inline const Model& model() {
  static const Model read = readModel(assetPath("model.json"));
  return read;
}

/// A back in shorts: the combine table's means (V 10.91 yd/s, T 1.15 s), skill limits.
inline Body back() {
  Body body;
  body.mass_kg = 96.0;
  body.top_speed = 10.91;
  body.tau = 1.15;
  body.brake = model().loco_brake_skill;
  body.lateral = model().loco_lateral_skill;
  return body;
}

struct Runner {
  Body body;
  Vec2 pos{};
  Vec2 vel{};
  Vec2 face{0.0, 1.0};
  int ticks = 0;

  /// One step as the world takes it: speed first, place with the new speed.
  void step(Vec2 want, Vec2 face_goal) {
    vel += kStep * accelerationToward(body, model(), vel, face, want);
    pos += kStep * vel;
    face = turnedToward(face, unit(face_goal, face), model().loco_turn_rate * kStep);
    ++ticks;
  }
  void step(Vec2 want) { step(want, want); }
  [[nodiscard]] double clock() const { return seconds(ticks); }
};

/// Time from first movement to `yards` straight ahead, linear within the last step.
inline double sprintTime(const Body& body, double yards) {
  Runner man{.body = body};
  double before = 0.0;
  while (man.pos.y < yards) {
    before = man.pos.y;
    man.step({0.0, body.top_speed});
  }
  return man.clock() - kStep * (man.pos.y - yards) / (man.pos.y - before);
}

struct Stop {
  double yards = 0.0, seconds = 0.0;
};
/// From `speed` straight ahead to rest.
inline Stop stopFrom(const Body& body, double speed) {
  Runner man{.body = body, .vel = {0.0, speed}};
  while (length(man.vel) > 0.05 && man.clock() < 5.0) man.step({}, {0.0, 1.0});
  return {man.pos.y, man.clock()};
}

/// Runs along x toward side * `turn_x`, brakes as late as his brake allows, and stands there.
inline void runAndStop(Runner& man, double side, double turn_x) {
  while (man.clock() < 20.0) {
    const double speed = side * man.vel.x;
    const double stops_at = side * man.pos.x + 0.5 * std::max(speed, 0.0) * speed / man.body.brake;
    const bool brake = speed > 0.0 && stops_at >= turn_x - 0.02;
    if (brake && speed < 0.3) return;
    man.step(brake ? Vec2{} : Vec2{side * man.body.top_speed, 0.0}, {brake ? -side : side, 0.0});
  }
}

/// Time of the 5-10-5 from first movement. He touches a line when his hand, `reach` yd ahead of him, is over
/// it.
inline double shuttleTime(const Body& body, double reach) {
  Runner man{.body = body, .face = {1.0, 0.0}};
  runAndStop(man, 1.0, 5.0 - reach);
  runAndStop(man, -1.0, 5.0 - reach);
  while (man.pos.x < 0.0 && man.clock() < 20.0) man.step({body.top_speed, 0.0});
  return man.clock();
}

struct Lap {
  double speed = 0.0;     // at the end, yd/s
  double worst_yd = 0.0;  // farthest from the circle during the last second
};
/// Runs for `time_s` along a circle of `radius`, starting on it at `start` yd/s and wanting `wanted`.
inline Lap runCircle(const Body& body, double radius, double start, double wanted, double time_s) {
  Runner man{.body = body, .pos = {radius, 0.0}, .vel = {0.0, start}};
  Lap lap;
  while (man.clock() < time_s) {
    const Vec2 out = unit(man.pos);
    const Vec2 along = leftOf(out);
    const double outward = dot(man.vel, out);
    const double inward = dot(man.vel, man.vel) / radius + 9.0 * (length(man.pos) - radius) + 6.0 * outward;
    man.step(wanted * along + (outward - model().loco_response_s * inward) * out, along);
    if (man.clock() > time_s - 1.0) lap.worst_yd = std::max(lap.worst_yd, std::abs(length(man.pos) - radius));
  }
  lap.speed = length(man.vel);
  return lap;
}

}  // namespace gapsound::drills
