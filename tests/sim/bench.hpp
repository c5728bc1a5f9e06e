#pragma once
#include <array>
#include <memory>
#include <vector>

#include "athlete/locomotion.hpp"
#include "base/numbers.hpp"
#include "base/tick.hpp"
#include "io/assets.hpp"
#include "io/model_file.hpp"
#include "sim/contact.hpp"
#include "sim/physics_world.hpp"
#include "sim/tackle.hpp"

/// A bare field with a few men on it and no minds: bodies, blocks and tackles of the simulation, intents by
/// hand.
namespace gapsound::bench {

constexpr std::size_t at(int man) { return static_cast<std::size_t>(man); }

inline const Model& shipped() {
  static const Model model = readModel(assetPath("model.json"));
  return model;
}

/// The shipped constants without the luck of a snap: nobody whiffs, sheds or is stronger than himself.
inline Model withoutLuck() {
  Model model = shipped();
  model.whiff_share = 0.0;
  model.shed_base = model.shed_near = 0.0;
  model.push_luck_pair = model.push_luck_man = 0.0;
  return model;
}

struct Placed {
  int man = 0;
  Group group = Group::guard;
  double mass_kg = 140.0;
  Vec2 spot{};
  Vec2 vel{};
  Vec2 face{0.0, 1.0};
};

inline Man manOf(const Placed& p) {
  Man man;
  man.attacks = isOffense(p.man);
  man.group = p.group;
  man.spot = p.spot;
  man.facing = p.face;
  man.stream = static_cast<std::uint64_t>(p.man) + 1;
  man.body.mass_kg = p.mass_kg;
  return man;
}

class Bench {
 public:
  Bench(const Model& model, std::uint64_t seed, const std::vector<Placed>& placed)
      : model_(model), contact_(model_), tackling_(model_) {
    for (int i = 0; i < kMen; ++i) men_[at(i)] = manOf({.man = i, .spot = {200.0 + 5.0 * i, 0.0}});
    std::array<Vec2, kMen> vel{};
    for (const Placed& p : placed) {
      men_[at(p.man)] = manOf(p);
      vel[at(p.man)] = p.vel;
    }
    std::array<PhysicsWorld::Torso, kMen> torsos;
    for (int i = 0; i < kMen; ++i) {
      const Man& man = men_[at(i)];
      Actor& a = actors[at(i)];
      torsos[at(i)] = {man.spot,       man.facing, man.body.mass_kg, man.body.shoulder,
                       man.body.chest, false,      man.attacks};
      a.man = &man;
      a.intent.face = man.facing;
      a.seed = seed;
      a.tackle_luck = Stream(seed, man.stream, "tackle");
    }
    world_ = std::make_unique<PhysicsWorld>(torsos);
    for (int i = 0; i < kMen; ++i) world_->setVelocity(i, vel[at(i)]);
    look();
  }
  Bench(const Bench&) = delete;
  Bench& operator=(const Bench&) = delete;

  Man& man(int i) { return men_[at(i)]; }
  PhysicsWorld& world() { return *world_; }
  const Present& now() const { return now_; }
  const Contact& contact() const { return contact_; }
  const Tackling& tackling() const { return tackling_; }
  void carries(int i) {
    carrier_ = i;
    look();
  }

  /// One tick: blocks, tackles, forces, the world's step.
  void step() {
    contact_.update(now_, actors, events);
    tackling_.update(now_, actors, contact_, *world_, events);
    std::array<Vec2, kMen> forces{};
    contact_.addForces(now_, actors, forces);
    tackling_.addForces(now_, actors, forces);
    for (int i = 0; i < kMen; ++i) {
      const Pose& p = now_.frame.men[at(i)];
      const Actor& a = actors[at(i)];
      if (!contact_.of(i) && !holds(i))
        forces[at(i)] +=
            a.man->body.mass_kg * accelerationToward(a.man->body, model_, p.vel, p.face, a.intent.want);
      world_->push(i, forces[at(i)]);
      const double turn = fixedAngle({dot(p.face, a.intent.face), cross(p.face, a.intent.face)});
      world_->turn(i, clamped(turn / kStep, -model_.loco_turn_rate, model_.loco_turn_rate));
    }
    world_->step();
    ++now_.tick;
    now_.clock_s = seconds(now_.tick);
    look();
  }
  void run(double s) {
    for (int k = 0; k < ticks(s); ++k) step();
  }

  Actors actors;
  std::vector<Event> events;

 private:
  bool holds(int i) const {
    for (const int h : tackling_.holders())
      if (h == i) return true;
    return false;
  }
  void look() {
    for (int i = 0; i < kMen; ++i)
      now_.frame.men[at(i)] = {world_->pos(i), world_->vel(i), world_->face(i), kNobody, false};
    now_.frame.carrier = static_cast<std::int8_t>(carrier_);
    if (carrier_ != kNobody) now_.frame.ball = world_->pos(carrier_);
  }

  Model model_;
  std::array<Man, kMen> men_;
  Contact contact_;
  Tackling tackling_;
  std::unique_ptr<PhysicsWorld> world_;
  Present now_;
  int carrier_ = kNobody;
};

}  // namespace gapsound::bench
