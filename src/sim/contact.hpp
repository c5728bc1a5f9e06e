#pragma once
#include <array>
#include <vector>

#include "base/model.hpp"
#include "sim/actors.hpp"
#include "sim/record.hpp"

namespace gapsound {

/// A blocker's hands on a defender. Leverage is decided at first touch and kept.
struct Clinch {
  int blocker = kNobody;
  int defender = kNobody;
  int since_tick = 0;
  double leverage = 0.0;      // [-1, 1]; > 0: the defender is to the left of the blocker's line
  Vec2 line{0.0, 1.0};        // blocker's line at first touch, unit
  double blocker_edge = 1.0;  // push factor from who arrived with more momentum, fades
  double push_luck = 1.0;     // this pair's luck, as a factor on the blocker's push
  double shed_luck = 1.0;     // and on the rate at which the defender sheds
  double sheds_below = 0.0;   // he sheds once `kept` falls below this, drawn at first touch, [0, 1)
  double kept = 1.0;          // probability that a man would still be held by now
};

/// Force of two men on each other and on the ground through a clinch, kg yd/s^2.
struct ClinchForces {
  Vec2 on_blocker, on_defender;
};

/// All blocks of a rep: who has hands on whom, who sheds whom, and the forces that follow.
class Contact {
 public:
  explicit Contact(const Model& model) : model_(&model) {}
  /// Ends, begins and keeps blocks for this tick.
  void update(const Present& now, Actors& actors, std::vector<Event>& events);
  /// Adds the forces of all blocks; a man in a clinch pushes and does not run.
  void addForces(const Present& now, const Actors& actors, std::array<Vec2, kMen>& forces) const;
  [[nodiscard]] const std::vector<Clinch>& clinches() const { return clinches_; }
  [[nodiscard]] int blockersOn(int defender) const;
  [[nodiscard]] const Clinch* of(int man) const;
  void release(int man);
  /// Hands that are on when a rep starts from film; leverage is where the helmet is in the picture.
  void hold(const Opening& opening, int blocker, int defender, int tick, const Actors& actors);

 private:
  [[nodiscard]] bool ends(const Present& now, Actors& actors, Clinch& c, std::vector<Event>& events) const;
  [[nodiscard]] double shedPerSecond(const Present& now, const Actors& actors, const Clinch& c) const;
  /// The luck of two men touching for the first, second, ... time: what others do moves none of it.
  [[nodiscard]] Stream touchLuck(const Actors& actors, int blocker, int defender);
  void tryNew(const Present& now, Actors& actors, int blocker, std::vector<Event>& events);
  const Model* model_;
  std::vector<Clinch> clinches_;
  std::array<std::array<std::uint8_t, kMen>, kMen> touches_{};  // blocker, defender
};

/// Leverage of a first touch: which side of the blocker's line the defender is on, in shoulder widths, [-1,
/// 1].
[[nodiscard]] double leverageAtTouch(Vec2 blocker_pos, Vec2 blocker_vel, Vec2 defender_pos,
                                     Vec2 defender_vel);
/// Speed-limited push of one man, kg yd/s^2: mass x acceleration x factor, falling with speed along the push.
[[nodiscard]] double pushForce(const Model& model, double mass_kg, double factor, double speed_along);

}  // namespace gapsound
