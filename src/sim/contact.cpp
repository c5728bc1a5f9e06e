#include "sim/contact.hpp"

#include <algorithm>
#include <cmath>

#include "base/numbers.hpp"
#include "base/tick.hpp"

namespace gapsound {
namespace {

std::size_t at(int i) { return static_cast<std::size_t>(i); }

bool isWide(const Man& man) { return man.group == Group::receiver; }

Vec2 aimOf(const Intent& intent, Vec2 otherwise) {
  return intent.push == Vec2{} ? otherwise : unit(intent.push, otherwise);
}

double ballDistance(const Present& now, int man) {
  return distance(now.frame.ball, now.frame.men[at(man)].pos);
}

// Blocker between him and where he wants to go: covered; beside it: half; behind him: free.
double coverFactor(const Model& m, Vec2 aim, Vec2 to_blocker) {
  const double c = dot(aim, to_blocker);
  return c > 0.5 ? m.shed_covered : c > 0.0 ? m.shed_half : m.shed_past;
}

void takeLuck(Clinch& c, const Model& m, double pair, double sheds_below) {
  c.push_luck = fixedExp(m.push_luck_pair * pair);
  c.shed_luck = fixedExp(-m.shed_luck * pair);
  c.sheds_below = sheds_below;
}

}  // namespace

double leverageAtTouch(Vec2 bp, Vec2 bv, Vec2 dp, Vec2 dv) {
  constexpr double kShoulder = 0.33;  // yd, half breadth
  const Vec2 closing = bv - dv;
  if (length(closing) < 0.4) return 0.0;
  return clamped(cross(unit(closing), dp - bp) / kShoulder, -1.0, 1.0);
}

double pushForce(const Model& m, double mass_kg, double factor, double speed_along) {
  return mass_kg * m.push_accel * std::min(factor, m.push_most) *
         clamped(1.0 - speed_along / m.push_speed, -0.5, 1.2);
}

int Contact::blockersOn(int defender) const {
  return static_cast<int>(std::count_if(clinches_.begin(), clinches_.end(),
                                        [&](const Clinch& c) { return c.defender == defender; }));
}

const Clinch* Contact::of(int man) const {
  for (const Clinch& c : clinches_)
    if (c.blocker == man || c.defender == man) return &c;
  return nullptr;
}

void Contact::release(int man) {
  std::erase_if(clinches_, [&](const Clinch& c) { return c.blocker == man || c.defender == man; });
}

double Contact::shedPerSecond(const Present& now, const Actors& actors, const Clinch& c) const {
  const Model& m = *model_;
  const Actor& b = actors[at(c.blocker)];
  const Actor& d = actors[at(c.defender)];
  const double near = ballDistance(now, c.defender) < m.shed_near_yd ? m.shed_near : 0.0;
  const double power = d.man->body.mass_kg * d.strength / (b.man->body.mass_kg * b.strength);
  const Vec2 to_blocker = unit(now.frame.men[at(c.blocker)].pos - now.frame.men[at(c.defender)].pos);
  double rate = (m.shed_base + near) * power * power * c.shed_luck;
  rate *= coverFactor(m, aimOf(d.intent, {0.0, -1.0}), to_blocker);
  if (blockersOn(c.defender) > 1) rate /= m.shed_doubled;
  if (isWide(*b.man)) rate *= m.shed_receiver;
  return rate;
}

bool Contact::ends(const Present& now, Actors& actors, Clinch& c, std::vector<Event>& events) const {
  const Model& m = *model_;
  Actor& b = actors[at(c.blocker)];
  const Actor& d = actors[at(c.defender)];
  c.kept *= std::max(1.0 - shedPerSecond(now, actors, c) * kStep, 0.0);
  if (b.down || d.down) return true;
  if (b.intent.lets_go) {
    events.push_back({now.tick, Happening::climbs, c.blocker, b.intent.hands_on, 0});
    return true;
  }
  if (distance(now.frame.men[at(c.blocker)].pos, now.frame.men[at(c.defender)].pos) > m.hands_break_yd)
    return true;
  if (c.kept >= c.sheds_below) return false;
  b.out_until_s = now.clock_s + m.shed_out_s;
  events.push_back({now.tick, Happening::sheds, c.defender, c.blocker, 0});
  return true;
}

Stream Contact::touchLuck(const Actors& actors, int blocker, int defender) {
  const Actor& b = actors[at(blocker)];
  const std::uint64_t pair = mixed(b.man->stream, actors[at(defender)].man->stream);
  return {b.seed, mixed(pair, touches_[at(blocker)][at(defender)]++), "contact"};
}

void Contact::tryNew(const Present& now, Actors& actors, int blocker, std::vector<Event>& events) {
  const Model& m = *model_;
  Actor& b = actors[at(blocker)];
  const Pose& bp = now.frame.men[at(blocker)];
  int best = kNobody;
  double nearest = m.hands_reach_yd;
  for (int d = kOffense; d < kMen; ++d) {
    const Pose& dp = now.frame.men[at(d)];
    const double gap = distance(bp.pos, dp.pos);
    if (actors[at(d)].down || gap >= nearest || dot(bp.face, dp.pos - bp.pos) < 0.25 * gap) continue;
    if (d != b.intent.hands_on) {
      if (!b.intent.takes_any || blockersOn(d) > 0 || d == b.man->block.spares) continue;
      bool mates = false;
      for (int i = 0; i < kOffense; ++i)
        mates = mates || (i != blocker && actors[at(i)].intent.hands_on == d);
      if (mates && now.clock_s < m.hands_mates_s) continue;
    }
    best = d;
    nearest = gap;
  }
  if (best == kNobody) return;
  const Actor& d = actors[at(best)];
  Stream luck = touchLuck(actors, blocker, best);
  const double pair = luck.normal();
  const bool whiff = luck.chance(m.whiff_share);
  const bool told = luck.chance(amountOf(b.man->faults, FaultKind::whiff));
  if (whiff || told) {
    b.out_until_s = now.clock_s + m.whiff_out_s;
    events.push_back({now.tick, Happening::whiffs, blocker, best, 0});
    if (told)
      events.push_back({now.tick, Happening::errs, blocker, best, static_cast<int>(FaultKind::whiff)});
    return;
  }
  const Pose& dp = now.frame.men[at(best)];
  Clinch c;
  c.blocker = blocker;
  c.defender = best;
  c.since_tick = now.tick;
  c.line = length(bp.vel) > 0.8 ? unit(bp.vel) : unit(dp.pos - bp.pos);
  c.leverage = leverageAtTouch(bp.pos, bp.vel, dp.pos, dp.vel);
  takeLuck(c, m, pair, luck.unit());
  const Vec2 n = unit(dp.pos - bp.pos);
  const double momentum = b.man->body.mass_kg * dot(bp.vel, n) + d.man->body.mass_kg * dot(dp.vel, n);
  c.blocker_edge = clamped(momentum / m.touch_momentum, -1.0, 1.0);
  clinches_.push_back(c);
  events.push_back({now.tick, Happening::engages, blocker, best, 0});
}

void Contact::hold(const Opening& opening, int blocker, int defender, int tick, const Actors& actors) {
  constexpr double kShoulder = 0.33;  // yd, half breadth
  const Opening::Place& b = opening.men[at(blocker)];
  const Vec2 gap = opening.men[at(defender)].pos - b.pos;
  Clinch c;
  c.blocker = blocker;
  c.defender = defender;
  c.since_tick = tick - ticks(model_->push_build_s);
  c.line = b.face;
  c.leverage = clamped(cross(b.face, gap) / kShoulder, -1.0, 1.0);
  Stream luck = touchLuck(actors, blocker, defender);
  const double pair = luck.normal();
  takeLuck(c, *model_, pair, luck.unit());
  c.blocker_edge = 0.0;
  clinches_.push_back(c);
}

void Contact::update(const Present& now, Actors& actors, std::vector<Event>& events) {
  std::vector<Clinch> kept;
  kept.reserve(clinches_.size());
  for (Clinch& c : clinches_)
    if (!ends(now, actors, c, events)) kept.push_back(c);
  clinches_ = std::move(kept);
  for (int b = 0; b < kOffense; ++b) {
    const Actor& blocker = actors[at(b)];
    if (b == now.frame.carrier || blocker.down || blocker.out_until_s > now.clock_s || of(b)) continue;
    if (blocker.intent.hands_on == kNobody && !blocker.intent.takes_any) continue;
    tryNew(now, actors, b, events);
  }
}

namespace {

struct Pair {
  const Model& m;
  const Present& now;
  const Actor& b;
  const Actor& d;
  const Clinch& c;
  const Pose& bp;
  const Pose& dp;
  Vec2 n;  // blocker to defender
};

Vec2 driveOf(const Pair& p) {
  const Clinch& c = p.c;
  const double L = c.leverage;
  if (p.b.intent.drive == Drive::kick_out)
    return unit(Vec2{-0.9 * L, 0.0} + (1.0 - 0.5 * std::abs(L)) * c.line);
  const Vec2 by_leverage = unit(c.line + 0.9 * L * leftOf(c.line));
  if (p.b.intent.drive == Drive::double_team) return unit(0.15 * by_leverage + Vec2{0.0, 1.0});
  return by_leverage;
}

// Force builds up after the first touch; who arrived with more momentum starts ahead and keeps it a while.
double buildUp(const Pair& p, double sign) {
  const double since = seconds(p.now.tick - p.c.since_tick);
  const double build = p.m.push_start + (1.0 - p.m.push_start) * ramp(since, 0.0, p.m.push_build_s);
  const double edge =
      1.0 + sign * p.m.touch_edge * p.c.blocker_edge * (1.0 - ramp(since, 0.3, p.m.touch_fade_s));
  return build * edge;
}

Vec2 blockerPush(const Pair& p, Vec2 drive) {
  const Vec2 dir = unit(0.7 * p.n + drive);
  const double meant = p.b.intent.drive == Drive::shield ? p.m.push_shield : 1.0;
  const double factor = meant * p.b.man->body.push * p.b.strength * p.c.push_luck * buildUp(p, +1.0);
  return pushForce(p.m, p.b.man->body.mass_kg, factor, dot(p.bp.vel, dir)) * dir;
}

// A blocked man is walled on the side of the helmet and free on the other.
Vec2 defenderPush(const Pair& p, int blockers) {
  const Vec2 u = aimOf(p.d.intent, {0.0, -1.0});
  const double open = std::max({std::abs(dot(u, p.n)), p.c.leverage * cross(p.c.line, u), 0.0});
  const double free = p.m.wall_share + (1.0 - p.m.wall_share) * std::min(open, 1.0);
  const double factor = p.d.man->body.push * p.d.strength * buildUp(p, -1.0) * free / blockers *
                        (blockers > 1 ? p.m.push_doubled : 1.0);
  return pushForce(p.m, p.d.man->body.mass_kg, factor, dot(p.dp.vel, u)) * u;
}

// Hands hold the two at arm's length and drag sideways, up to the grip.
Vec2 hands(const Pair& p) {
  const double gap = distance(p.bp.pos, p.dp.pos);
  const Vec2 relative = p.dp.vel - p.bp.vel;
  const double along = dot(relative, p.n);
  const Vec2 across = relative - along * p.n;
  const double grip = p.m.hands_grip * p.b.man->body.mass_kg;
  const double spring = p.m.hands_stiffness * (gap - p.m.hands_spacing_yd) + p.m.hands_damping * along;
  const double pull = clamped(spring, -6.0 * grip, grip);
  return pull * p.n + shortened(p.m.hands_drag * across, grip);
}

// He keeps his feet on the line of his drive, or on his half of a double team.
Vec2 steer(const Pair& p, Vec2 drive) {
  const Vec2 left = leftOf(p.n);
  Vec2 stand = p.dp.pos - p.m.hands_spacing_yd * drive;
  if (p.b.intent.stand != 0.0) stand += Vec2{0.38 * p.b.intent.stand, 0.0};
  const double off = dot(stand - p.bp.pos, left);
  const double drift = dot(p.dp.vel - p.bp.vel, left);
  const double share = p.b.intent.drive == Drive::kick_out ? 1.0 - std::max(p.c.leverage, 0.0) : 1.0;
  const double a = clamped(14.0 * off + 5.0 * drift, -p.b.man->body.lateral, p.b.man->body.lateral);
  return share * p.b.man->body.mass_kg * a * left;
}

}  // namespace

void Contact::addForces(const Present& now, const Actors& actors, std::array<Vec2, kMen>& forces) const {
  for (const Clinch& c : clinches_) {
    const Pose& bp = now.frame.men[at(c.blocker)];
    const Pose& dp = now.frame.men[at(c.defender)];
    const Pair p{*model_, now, actors[at(c.blocker)], actors[at(c.defender)], c,
                 bp,      dp,  unit(dp.pos - bp.pos)};
    const int blockers = std::max(blockersOn(c.defender), 1);
    const Vec2 drive = driveOf(p);
    const Vec2 grip = hands(p);
    const double loss = model_->clinch_damping;
    forces[at(c.blocker)] +=
        blockerPush(p, drive) + steer(p, drive) + grip - loss * p.b.man->body.mass_kg * bp.vel;
    forces[at(c.defender)] +=
        defenderPush(p, blockers) - grip - (loss / blockers) * p.d.man->body.mass_kg * dp.vel;
  }
}

}  // namespace gapsound
