#include "sim/play.hpp"

#include <algorithm>
#include <bit>
#include <cmath>

#include "athlete/locomotion.hpp"
#include "base/mix.hpp"
#include "base/numbers.hpp"
#include "base/tick.hpp"
#include "sim/contact.hpp"
#include "sim/opening.hpp"
#include "sim/physics_world.hpp"
#include "sim/snap.hpp"
#include "sim/tackle.hpp"

namespace gapsound {
namespace {

std::size_t at(int i) { return static_cast<std::size_t>(i); }

Lineup lineupOf(const Setup& setup) {
  Lineup lineup;
  for (std::size_t i = 0; i < kMen; ++i)
    lineup.men[i] = {setup.men[i].group, setup.men[i].spot, setup.men[i].body.shoulder};
  return lineup;
}

std::array<PhysicsWorld::Torso, kMen> torsosOf(const Setup& setup) {
  std::array<PhysicsWorld::Torso, kMen> torsos;
  for (int i = 0; i < kMen; ++i) {
    const Man& man = setup.men[at(i)];
    const Vec2 face = isOffense(i) ? Vec2{0.0, 1.0} : Vec2{0.0, -1.0};
    torsos[at(i)] = {man.spot,          face,        man.body.mass_kg, man.body.shoulder, man.body.chest,
                     i == setup.passer, isOffense(i)};
  }
  if (!setup.opening) return torsos;
  for (std::size_t i = 0; i < kMen; ++i) {
    torsos[i].pos = setup.opening->men[i].pos;
    torsos[i].face = setup.opening->men[i].face;
  }
  return torsos;
}

/// One rep in progress, always a run to the right.
class Rep {
 public:
  Rep(Setup setup, const Model& model, std::uint64_t seed)
      : model_(model), setup_(std::move(setup)), contact_(model), tackling_(model) {
    rollSnap(setup_, model_, seed, actors_, record_.events);
    lineup_ = lineupOf(setup_);
    plan_ = teamPlanOf(defendersOf(setup_), setup_.fits);
    sheet_ = playSheetOf(setup_);
    keeper_sheet_ = keeperSheetOf(sheet_);
    world_ = std::make_unique<PhysicsWorld>(torsosOf(setup_));
    for (int i = 0; i < kOffense; ++i) {
      if (!(setup_.men[at(i)].vel == Vec2{})) world_->setVelocity(i, setup_.men[at(i)].vel);
    }
    carrier_ = setup_.snap_flight_s > 0.0 ? kNobody : setup_.passer;
    record_.frames.reserve(480);
    if (setup_.opening) open(*setup_.opening);
  }

  Record run() {
    perceive();
    if (carrier_ != kNobody) farthest_ = now_.frame.ball.y;
    while (!over_) step();
    for (const Pose& p : now_.frame.men) record_.hash = hashed(record_.hash, p);
    return std::move(record_);
  }

 private:
  // One tick: minds read the frozen present, forces follow, the world moves, the result is written down.
  void step() {
    decide();
    exchange();
    contact_.update(now_, actors_, record_.events);
    tackling_.update(now_, actors_, contact_, *world_, record_.events);
    move();
    world_->step();
    ++now_.tick;
    now_.clock_s = seconds(now_.tick);
    perceive();
    judge();
  }

  // A rep from film: the picture is now, what led to it is reckoned back, hands that are on stay on.
  void open(const Opening& opening) {
    start_tick_ = now_.tick = ticks(opening.since_snap_s);
    now_.clock_s = seconds(now_.tick);
    carrier_ = opening.ball;
    record_.frames = framesBefore(setup_, now_.tick, model_.hands_reach_yd);
    rememberBefore(setup_, actors_);
    for (int i = 0; i < kMen; ++i) world_->setVelocity(i, opening.men[at(i)].vel);
    if (carrier_ != setup_.passer) record_.handoff_tick = now_.tick;
    for (const auto& [blocker, defender] : handsOn(setup_, model_.hands_reach_yd))
      contact_.hold(opening, blocker, defender, now_.tick, actors_);
  }

  // Until he has had time to see the picture and act on it, a free man goes on as filmed.
  bool goesOn(int man) const {
    if (!setup_.opening || contact_.of(man)) return false;
    const double delay = isOffense(man) ? model_.see_offense_s : model_.see_defense_s;
    return now_.tick < start_tick_ + ticks(delay);
  }

  Intent asFilmed(int man) const {
    const Opening::Place& place = setup_.opening->men[at(man)];
    Intent intent;
    intent.want = place.vel;
    intent.face = place.face;
    intent.hands_on = isOffense(man) && man != carrier_ ? actors_[at(man)].blocker.target : kNobody;
    intent.attacks = !isOffense(man);
    return intent;
  }

  void perceive() {
    Frame& f = now_.frame;
    for (int i = 0; i < kMen; ++i) {
      Actor& a = actors_[at(i)];
      a.down = a.out_until_s > now_.clock_s;
      f.men[at(i)] = {world_->pos(i), world_->vel(i), world_->face(i), kNobody, a.down};
    }
    for (const Clinch& c : contact_.clinches()) {
      f.men[at(c.blocker)].engaged = static_cast<std::int8_t>(c.defender);
      if (f.men[at(c.defender)].engaged == kNobody)
        f.men[at(c.defender)].engaged = static_cast<std::int8_t>(c.blocker);
    }
    f.carrier = static_cast<std::int8_t>(carrier_);
    f.ball = ballPlace();
    record_.frames.push_back(f);
  }

  Vec2 ballPlace() const {
    if (carrier_ != kNobody) {
      const Vec2 lean = carrier_ == setup_.passer ? Vec2{0.0, 0.1} : 0.3 * world_->face(carrier_);
      return world_->pos(carrier_) + lean;
    }
    if (tossed_) {
      const double way = std::max(setup_.run.mesh_s - setup_.run.toss_s, 0.01);
      const double part = clamped((now_.clock_s - setup_.run.toss_s) / way, 0.0, 1.0);
      return toss_from_ + part * (world_->pos(setup_.carrier) - toss_from_);
    }
    const double t = clamped(now_.clock_s / std::max(setup_.snap_flight_s, 0.01), 0.0, 1.0);
    return t * world_->pos(setup_.passer);
  }

  // Six products that wait for nothing, then one link of the chain.
  static std::uint64_t hashed(std::uint64_t h, const Pose& p) {
    constexpr std::uint64_t kOdd = 0x9e3779b97f4a7c15ULL;
    std::uint64_t sum = 0, factor = kOdd;
    for (const double v : {p.pos.x, p.pos.y, p.vel.x, p.vel.y, p.face.x, p.face.y}) {
      sum += std::rotl(std::bit_cast<std::uint64_t>(v) * factor, 32);
      factor += 2 * kOdd;
    }
    return finished(h ^ finished(sum));
  }

  // The frame a man sees: one delay old. A late reader is later still until the ball is upon him.
  Glimpse glimpseOf(int man) const {
    double delay = isOffense(man) ? model_.see_offense_s : model_.see_defense_s;
    const double late = amountOf(actors_[at(man)].man->faults, FaultKind::late_read);
    if (late > 0.0 && distance(now_.frame.ball, now_.frame.men[at(man)].pos) > 3.0) delay += late;
    const int back = std::max(now_.tick - ticks(delay), 0);
    return {record_.frames[at(back)],
            seconds(now_.tick - back),
            man,
            now_.frame.men[at(man)],
            now_.clock_s,
            lineup_};
  }

  void decide() {
    for (int i = 0; i < kMen; ++i) {
      if ((now_.tick + i) % 2 != 0) continue;  // 30 Hz, half the men each tick
      Actor& a = actors_[at(i)];
      if (a.down) {
        a.intent = {};
        continue;
      }
      if (goesOn(i)) {
        a.intent = asFilmed(i);
        continue;
      }
      const Glimpse glimpse = glimpseOf(i);
      if (isOffense(i))
        a.intent = decideAttacker(glimpse, i, a);
      else
        decideDefense(glimpse, i, a);
    }
  }

  Intent decideAttacker(const Glimpse& glimpse, int i, Actor& a) {
    const AttackerView view{glimpse, model_, a.man->body,
                            record_.kept && i == setup_.passer ? keeper_sheet_ : sheet_, a.man->faults};
    if (i == carrier_ && (i != setup_.passer || passerRuns())) return decideRunner(view, a.runner);
    if (i == setup_.passer)
      return decidePasser(view, a.passer, i == carrier_ || (carrier_ == kNobody && !tossed_));
    if (i == setup_.carrier) return decideApproach(view, a.runner);
    const std::uint32_t before = a.blocker.erred;
    const Intent intent = decideBlocker(view, a.blocker);
    noteErrors(i, before, a.blocker.erred);
    return intent;
  }

  void decideDefense(const Glimpse& glimpse, int i, Actor& a) {
    const Reading before = a.defender.reading;
    const std::uint32_t erred = a.defender.erred;
    a.intent = decideDefender({glimpse, model_, a.man->body, a.man->fit, plan_, a.man->faults}, a.defender);
    const Reading& after = a.defender.reading;
    if (after.direction != before.direction) note(Happening::saw_key, i, after.direction);
    if (after.end != before.end) note(Happening::end_state, i, static_cast<int>(after.end));
    if (after.line != before.line) note(Happening::line_state, i, static_cast<int>(after.line));
    if (after.backer != before.backer) note(Happening::backer_state, i, static_cast<int>(after.backer));
    if (after.fit != before.fit) note(Happening::decides, i, static_cast<int>(after.fit));
    noteErrors(i, erred, a.defender.erred);
  }

  // Faults laid on him that have begun to show.
  void noteErrors(int man, std::uint32_t before, std::uint32_t after) {
    for (int kind = 0; after != before && kind < kFaultKinds; ++kind) {
      if (((after & ~before) >> kind) & 1U) note(Happening::errs, man, kind);
    }
  }

  void note(Happening what, int man, int code) {
    record_.events.push_back({now_.tick, what, man, kNobody, code});
  }

  // He has pulled the ball, or it is his by design and his start is over.
  bool passerRuns() const {
    return record_.kept || (setup_.carrier == setup_.passer && now_.clock_s >= setup_.run.mesh_s);
  }

  // Snap to the passer, then the hand-off when the two are together, the toss, or the ball he keeps.
  void exchange() {
    if (carrier_ == kNobody) {
      if (!tossed_ && now_.clock_s >= setup_.snap_flight_s) carrier_ = setup_.passer;
      if (tossed_ && now_.clock_s >= setup_.run.mesh_s) take(setup_.carrier);
      return;
    }
    if (carrier_ != setup_.passer) return;
    if (passerRuns()) return letPasserBump();
    if (setup_.carrier == setup_.passer) return;
    if (setup_.run.toss_s > 0.0) return toss();
    if (keeps()) return;
    const double gap = distance(now_.frame.men[at(carrier_)].pos, now_.frame.men[at(setup_.carrier)].pos);
    if (gap > model_.mesh_reach_yd || now_.clock_s < setup_.run.mesh_s - 0.1) return;
    take(setup_.carrier);
  }

  void take(int man) {
    carrier_ = man;
    farthest_ = now_.frame.ball.y;  // progress is the runner's, not the exchange's
    record_.handoff_tick = now_.tick;
    record_.events.push_back({now_.tick, Happening::handoff, man, setup_.passer, 0});
  }

  void toss() {
    if (now_.clock_s < setup_.run.toss_s) return;
    tossed_ = true;
    toss_from_ = now_.frame.ball;
    carrier_ = kNobody;
    record_.events.push_back({now_.tick, Happening::tosses, setup_.passer, setup_.carrier, 0});
  }

  bool keeps() {
    if (setup_.read.who == kNobody || !actors_[at(setup_.passer)].passer.keeps) return false;
    record_.kept = true;
    record_.events.push_back({now_.tick, Happening::keeps, setup_.passer, setup_.read.who, 0});
    return true;
  }

  // A quarterback who hands off slips past his mates; one who runs has to go round them.
  void letPasserBump() {
    if (bumps_) return;
    for (int i = 0; i < kOffense; ++i) {
      const bool close = distance(now_.frame.men[at(i)].pos, now_.frame.men[at(setup_.passer)].pos) < kBodies;
      if (i != setup_.passer && close) return;
    }
    world_->bumpMates(setup_.passer);
    bumps_ = true;
  }

  // The state that the tick began with is hashed man by man on the way: a chain of its own that costs next to
  // nothing beside the forces.
  void move() {
    std::array<Vec2, kMen> forces{};
    std::uint64_t hash = record_.hash;
    contact_.addForces(now_, actors_, forces);
    tackling_.addForces(now_, actors_, forces);
    for (int i = 0; i < kMen; ++i) {
      const Actor& a = actors_[at(i)];
      const Pose& p = now_.frame.men[at(i)];
      const Body& body = a.man->body;
      hash = hashed(hash, p);
      if (a.down)
        forces[at(i)] -= (body.mass_kg * model_.ground_drag) * p.vel;
      else if (!contact_.of(i) && !holding(i)) {
        const Vec2 want = i == carrier_ && tackling_.wrapped() ? 0.6 * a.intent.want : a.intent.want;
        forces[at(i)] += body.mass_kg * accelerationToward(body, model_, p.vel, p.face, want);
      }
      world_->push(i, forces[at(i)]);
      const double turn = fixedAngle({dot(p.face, a.intent.face), cross(p.face, a.intent.face)});
      world_->turn(i, clamped(turn / kStep, -model_.loco_turn_rate, model_.loco_turn_rate));
    }
    record_.hash = hash;
  }

  bool holding(int man) const {
    const auto& h = tackling_.holders();
    return std::find(h.begin(), h.end(), man) != h.end();
  }

  void judge() {
    const Vec2 ball = now_.frame.ball;
    if (carrier_ != kNobody) farthest_ = std::max(farthest_, ball.y);
    if (record_.line_tick < 0 && carrier_ != kNobody && ball.y >= 0.0) {
      record_.line_tick = now_.tick;
      record_.events.push_back({now_.tick, Happening::crosses_line, carrier_, kNobody, 0});
    }
    if (tackling_.finished(now_)) {
      const double fall = tackling_.wonByCarrier() ? model_.fall_forward_yd : 0.0;
      farthest_ = std::max(farthest_, ball.y + fall);
      end(ball.y + fall < farthest_ - 1.0 ? Ending::forward_progress : Ending::tackled);
    } else if (carrier_ != kNobody && (ball.x < setup_.sideline_left || ball.x > setup_.sideline_right)) {
      end(Ending::out);
    } else if (farthest_ >= setup_.to_goal) {
      end(Ending::score);
    } else if (progressStopped()) {
      end(Ending::forward_progress);
    } else if (now_.clock_s >= kLongest) {
      end(Ending::time);
    }
  }

  // The whistle goes when a runner with a defender on him has not got anywhere for a while.
  bool progressStopped() {
    const bool slow = record_.handoff_tick >= 0 && carrier_ != kNobody &&
                      length(world_->vel(carrier_)) < kStuckSpeed && defenderAt(carrier_);
    if (!slow) slow_since_s_ = now_.clock_s;
    return now_.clock_s - slow_since_s_ > kStuckTime;
  }

  bool defenderAt(int carrier) const {
    for (int i = kOffense; i < kMen; ++i)
      if (distance(world_->pos(i), world_->pos(carrier)) < 1.2) return true;
    return false;
  }

  void end(Ending how) {
    over_ = true;
    record_.ending = how;
    record_.yards = std::min(farthest_, setup_.to_goal);
    record_.end_tick = now_.tick;
    record_.first_contact_tick = tackling_.firstContactTick();
  }

  static constexpr double kLongest = 20.0;    // s
  static constexpr double kStuckSpeed = 0.8;  // yd/s
  static constexpr double kStuckTime = 1.5;   // s
  static constexpr double kBodies = 0.85;     // yd, nearer two bodies may overlap

  const Model& model_;
  Setup setup_;
  Actors actors_;
  Lineup lineup_;
  TeamPlan plan_;
  PlaySheet sheet_, keeper_sheet_;
  Contact contact_;
  Tackling tackling_;
  std::unique_ptr<PhysicsWorld> world_;
  Present now_;
  Record record_;
  int carrier_ = kNobody;
  int start_tick_ = 0;
  double farthest_ = -99.0;
  double slow_since_s_ = 0.0;
  Vec2 toss_from_;
  bool tossed_ = false, bumps_ = false;
  bool over_ = false;
};

void mirrorRecord(Record& record) {
  for (Frame& f : record.frames) {
    f.ball = mirrored(f.ball);
    for (Pose& p : f.men) {
      p.pos = mirrored(p.pos);
      p.vel = mirrored(p.vel);
      p.face = mirrored(p.face);
    }
  }
  for (Event& e : record.events)
    if (e.what == Happening::saw_key || e.what == Happening::slants) e.code = -e.code;
}

}  // namespace

Record play(const Setup& setup, const Model& model, std::uint64_t seed) {
  if (setup.direction >= 0) return Rep(setup, model, seed).run();
  Record record = Rep(mirrored(setup), model, seed).run();
  mirrorRecord(record);
  return record;
}

}  // namespace gapsound
