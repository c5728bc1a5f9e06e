#include "sim/tackle.hpp"

#include <algorithm>
#include <cmath>

#include "base/numbers.hpp"

namespace gapsound {
namespace {
std::size_t at(int i) { return static_cast<std::size_t>(i); }

// Who is shaken off still costs the runner speed: a collision that keeps a share of what parts them.
void brush(PhysicsWorld& world, const Actors& actors, int carrier, int man, double keep) {
  const double runner = actors[at(carrier)].man->body.mass_kg;
  const double tackler = actors[at(man)].man->body.mass_kg;
  const Vec2 lost = (1.0 - keep) / (runner + tackler) * (world.vel(carrier) - world.vel(man));
  world.setVelocity(carrier, world.vel(carrier) - tackler * lost);
  world.setVelocity(man, world.vel(man) + runner * lost);
}

}  // namespace

double freeTackleShare(const Model& m, double closing, bool across, double tackling) {
  return logistic(m.tackle_base - m.tackle_speed * (closing - 3.0) - (across ? m.tackle_across : 0.0) +
                  tackling);
}

bool Tackling::canTry(const Present& now, const Actors& actors, const Contact& contact, int man) const {
  const Actor& d = actors[at(man)];
  if (d.down || d.out_until_s > now.clock_s || next_try_s_[at(man)] > now.clock_s) return false;
  if (std::find(holders_.begin(), holders_.end(), man) != holders_.end()) return false;
  const Pose& me = now.frame.men[at(man)];
  const Pose& back = now.frame.men[at(now.frame.carrier)];
  const double gap = distance(me.pos, back.pos);
  if (contact.of(man)) return gap < model_->tackle_reach_blocked;
  const bool slipping_away = dot(me.vel - back.vel, back.pos - me.pos) <= 0.0;
  return gap < (slipping_away ? model_->tackle_reach_dive : model_->tackle_reach_free);
}

double Tackling::makeShare(const Present& now, const Actors& actors, const Contact& contact, int man) const {
  const Model& m = *model_;
  const Pose& me = now.frame.men[at(man)];
  const Pose& back = now.frame.men[at(now.frame.carrier)];
  const double tackling = actors[at(man)].man->body.tackling;
  const Clinch* c = contact.of(man);
  if (!c) {
    const Vec2 closing = me.vel - back.vel;
    const Vec2 to_back = unit(back.pos - me.pos);
    const bool across = std::abs(cross(to_back, unit(closing))) > 0.7 && length(closing) > 2.0;
    if (!holders_.empty()) return 0.95;
    const double stretch = std::max(distance(me.pos, back.pos) - m.tackle_reach_free, 0.0);
    return freeTackleShare(m, length(closing), across, tackling - m.tackle_stretch * stretch);
  }
  double share = m.tackle_blocked;
  if (length(back.vel) < 3.5) share *= 1.6;
  if (contact.blockersOn(man) > 1) share *= 0.5;
  const Vec2 to_blocker = now.frame.men[at(c->blocker)].pos - me.pos;
  if (dot(unit(to_blocker), unit(back.pos - me.pos)) > 0.6) share *= 0.3;
  return std::min(share, 0.9);
}

void Tackling::wrap(const Present& now, Actors& actors, PhysicsWorld& world, int man) {
  const Model& m = *model_;
  const int carrier = now.frame.carrier;
  const Actor& back = actors[at(carrier)];
  const bool won = actors[at(man)].tackle_luck.chance(m.wrap_back_wins);
  if (holders_.empty()) {
    carrier_won_ = won;
    wrapped_s_ = now.clock_s;
  }
  const double mb = back.man->body.mass_kg;
  const double md = actors[at(man)].man->body.mass_kg;
  const Vec2 before = world.vel(carrier);
  const Vec2 common = (1.0 / (mb + md)) * (mb * before + md * world.vel(man));
  const Vec2 change = (won ? m.wrap_keep_won : m.wrap_keep_lost) * (common - before);
  world.setVelocity(carrier, before + change);
  world.setVelocity(man, world.vel(man) - (mb / md) * change);  // what one loses the other gains
  holders_.push_back(man);
}

void Tackling::attempt(const Present& now, Actors& actors, Contact& contact, PhysicsWorld& world, int man,
                       std::vector<Event>& events) {
  const Model& m = *model_;
  Actor& d = actors[at(man)];
  const bool blocked = contact.of(man) != nullptr;
  const bool makes = d.tackle_luck.chance(makeShare(now, actors, contact, man));
  const bool told_to_miss = d.tackle_luck.chance(amountOf(d.man->faults, FaultKind::missed_tackle));
  if (first_contact_tick_ < 0) {
    first_contact_tick_ = now.tick;
    events.push_back({now.tick, Happening::first_contact, man, now.frame.carrier, 0});
  }
  next_try_s_[at(man)] = now.clock_s + m.tackle_again_s;
  events.push_back({now.tick, Happening::tries_tackle, man, now.frame.carrier, blocked ? 1 : 0});
  if (makes && !told_to_miss) {
    events.push_back({now.tick, Happening::wraps, man, now.frame.carrier, 0});
    contact.release(man);
    wrap(now, actors, world, man);
    return;
  }
  if (told_to_miss)
    events.push_back(
        {now.tick, Happening::errs, man, now.frame.carrier, static_cast<int>(FaultKind::missed_tackle)});
  if (!blocked) {
    events.push_back({now.tick, Happening::misses_tackle, man, now.frame.carrier, 0});
    d.out_until_s = now.clock_s + m.miss_out_s;
  }
  brush(world, actors, now.frame.carrier, man, blocked ? m.miss_keep_blocked : m.miss_keep_free);
}

void Tackling::update(const Present& now, Actors& actors, Contact& contact, PhysicsWorld& world,
                      std::vector<Event>& events) {
  if (now.frame.carrier < 0) return;
  for (int man = kOffense; man < kMen; ++man)
    if (canTry(now, actors, contact, man)) attempt(now, actors, contact, world, man, events);
}

void Tackling::addForces(const Present& now, const Actors& actors, std::array<Vec2, kMen>& forces) const {
  if (holders_.empty()) return;
  const Model& m = *model_;
  const int carrier = now.frame.carrier;
  const Pose& back = now.frame.men[at(carrier)];
  const double mass = actors[at(carrier)].man->body.mass_kg;
  const std::size_t n = holders_.size();
  const double gang = n == 1 ? 1.0 : n == 2 ? m.wrap_second : m.wrap_third;
  const double decel = m.wrap_decel * gang * (carrier_won_ ? 0.7 : 1.4);
  const double speed = length(back.vel);
  if (speed > 0.05) forces[at(carrier)] -= (mass * std::min(decel, 20.0 * speed) / speed) * back.vel;
  for (const int h : holders_) {
    const Pose& p = now.frame.men[at(h)];
    const double hm = actors[at(h)].man->body.mass_kg;
    const Vec2 gap = back.pos - p.pos;
    forces[at(h)] += hm * (12.0 * (length(gap) - 0.6) * unit(gap) + 8.0 * (back.vel - p.vel));
  }
}

bool Tackling::finished(const Present& now) const {
  if (holders_.empty()) return false;
  const double held = now.clock_s - wrapped_s_;
  const double speed = length(now.frame.men[at(now.frame.carrier)].vel);
  return held > model_->wrap_longest_s || (held > model_->wrap_least_s && speed < 0.6);
}

}  // namespace gapsound
