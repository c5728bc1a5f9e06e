#pragma once
#include <array>

#include "minds/frame.hpp"
#include "scenario/setup.hpp"

namespace gapsound {

/// What everybody on the field can see before the snap: who stands where, and what kind of man he is.
struct Lineup {
  struct Place {
    Group group = Group::backer;
    Vec2 spot;
    double shoulder = 0.33;
  };
  std::array<Place, kMen> men;
};

/// What one man knows of the world: the picture as it was one delay ago, and his own body now.
/// There is no way from here to anybody's scheme, call or job. Borrows the frame; lives for one decision.
class Glimpse {
 public:
  Glimpse(const Frame& seen, double age_s, int self, const Pose& now, double clock_s, const Lineup& lineup)
      : seen_(&seen), lineup_(&lineup), now_(now), age_(age_s), clock_(clock_s), self_(self) {}

  [[nodiscard]] const Pose& man(int i) const { return i == self_ ? now_ : at(i); }
  /// Where he reckons man i is by now: seen place carried on by seen velocity.
  [[nodiscard]] Vec2 place(int i) const { return i == self_ ? now_.pos : at(i).pos + age_ * at(i).vel; }
  [[nodiscard]] const Pose& self() const { return now_; }
  [[nodiscard]] int selfIndex() const { return self_; }
  [[nodiscard]] int carrier() const { return seen_->carrier; }
  [[nodiscard]] Vec2 ballVelocity() const { return seen_->carrier >= 0 ? at(seen_->carrier).vel : Vec2{}; }
  [[nodiscard]] Vec2 ball() const { return seen_->ball + age_ * ballVelocity(); }
  [[nodiscard]] double clock() const { return clock_; }  // s since the snap
  [[nodiscard]] double age() const { return age_; }
  [[nodiscard]] const Lineup& lineup() const { return *lineup_; }
  [[nodiscard]] Vec2 spot(int i) const { return lineup_->men[static_cast<std::size_t>(i)].spot; }
  [[nodiscard]] Group group(int i) const { return lineup_->men[static_cast<std::size_t>(i)].group; }

 private:
  [[nodiscard]] const Pose& at(int i) const { return seen_->men[static_cast<std::size_t>(i)]; }
  const Frame* seen_;
  const Lineup* lineup_;
  Pose now_;
  double age_, clock_;
  int self_;
};

}  // namespace gapsound
