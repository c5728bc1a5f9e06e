#pragma once
#include <array>
#include <vector>

#include "base/model.hpp"
#include "sim/actors.hpp"
#include "sim/contact.hpp"
#include "sim/physics_world.hpp"

namespace gapsound {

/// Attempts, misses, wraps and the drag to the ground of one rep.
class Tackling {
 public:
  explicit Tackling(const Model& model) : model_(&model) { next_try_s_.fill(0.0); }
  void update(const Present& now, Actors& actors, Contact& contact, PhysicsWorld& world,
              std::vector<Event>& events);
  /// Pull of the tacklers on the man they hold; he keeps `carrierShare` of his own drive.
  void addForces(const Present& now, const Actors& actors, std::array<Vec2, kMen>& forces) const;
  [[nodiscard]] bool wrapped() const { return !holders_.empty(); }
  [[nodiscard]] bool finished(const Present& now) const;
  [[nodiscard]] bool wonByCarrier() const { return carrier_won_; }
  [[nodiscard]] int firstContactTick() const { return first_contact_tick_; }
  [[nodiscard]] const std::vector<int>& holders() const { return holders_; }

 private:
  [[nodiscard]] double makeShare(const Present& now, const Actors& actors, const Contact& contact,
                                 int man) const;
  [[nodiscard]] bool canTry(const Present& now, const Actors& actors, const Contact& contact, int man) const;
  void attempt(const Present& now, Actors& actors, Contact& contact, PhysicsWorld& world, int man,
               std::vector<Event>& events);
  void wrap(const Present& now, Actors& actors, PhysicsWorld& world, int man);
  const Model* model_;
  std::array<double, kMen> next_try_s_{};
  std::vector<int> holders_;
  double wrapped_s_ = 0.0;
  bool carrier_won_ = false;
  int first_contact_tick_ = -1;
};

/// Chance that a free man makes the tackle he tries; relative speed yd/s, odds falling with it.
[[nodiscard]] double freeTackleShare(const Model& model, double closing, bool across, double tackling);

}  // namespace gapsound
