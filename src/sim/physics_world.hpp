#pragma once
#include <array>
#include <memory>

#include "base/vec2.hpp"
#include "scenario/setup.hpp"

namespace gapsound {

/// Twenty-two torsos in a rigid-body world without gravity; the only place that knows Box2D.
/// Yards and kilograms go in as they are. A torso is an eight-cornered ellipse, shoulders wide and chest
/// deep; its facing is set by the mind, its place by forces and contact. Owns its bodies; not copyable.
class PhysicsWorld {
 public:
  struct Torso {
    Vec2 pos;
    Vec2 face{0.0, 1.0};
    double mass_kg = 100.0;
    double shoulder = 0.33, chest = 0.2;  // half axes, yd
    bool passes_mates = false;            // does not bump into his own side (the passer in the backfield)
    bool attacks = false;
  };
  explicit PhysicsWorld(const std::array<Torso, kMen>& torsos);
  ~PhysicsWorld();
  PhysicsWorld(const PhysicsWorld&) = delete;
  PhysicsWorld& operator=(const PhysicsWorld&) = delete;

  [[nodiscard]] Vec2 pos(int man) const;
  [[nodiscard]] Vec2 vel(int man) const;
  [[nodiscard]] Vec2 face(int man) const;
  void push(int man, Vec2 force);       // kg yd/s^2, for the coming step only
  void setVelocity(int man, Vec2 vel);  // for an impact that has been worked out outside
  /// From now on he bumps into his own side too.
  void bumpMates(int man);
  /// For the coming step only. He is set round, not spun: turning takes no force here, and a spin would shove
  /// who stands beside him. A turn of less than 0.03 rad a step is not made.
  void turn(int man, double rad_per_s);
  void step();  // one tick

 private:
  struct Impl;
  std::unique_ptr<Impl> impl_;
};

}  // namespace gapsound
