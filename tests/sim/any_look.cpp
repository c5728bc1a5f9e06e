#include "any_look.hpp"

#include <fmt/format.h>
#include <rapidcheck.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>
#include <limits>
#include <optional>
#include <vector>

#include "analysis/account.hpp"
#include "base/error.hpp"
#include "base/tick.hpp"
#include "looks.hpp"
#include "scenario/resolve.hpp"

namespace gapsound::looks {
namespace {

std::size_t at(int k) { return static_cast<std::size_t>(k); }

// ---- drawing a look

template <typename List>
auto oneOf(const List& list) {
  return list[*rc::gen::inRange<std::size_t>(0, list.size())];
}

template <typename Value>
Value oneOf(std::initializer_list<Value> list) {
  return list.begin()[*rc::gen::inRange<std::size_t>(0, list.size())];
}

bool chance(int percent) { return *rc::gen::inRange(0, 100) < percent; }

/// A whole number of steps in [low, high].
double between(double low, double high, double step) {
  return low + step * *rc::gen::inRange(0, static_cast<int>((high - low) / step) + 1);
}

OffensePlan anyOffense() {
  OffensePlan o;
  o.formation = oneOf(library().formations).id;
  const Scheme scheme = oneOf(library().schemes);
  o.scheme = scheme.id;
  o.variant = oneOf(variantNames(scheme));
  o.direction = oneOf<std::string>({"left", "right"});
  o.strength = oneOf<std::string>({"left", "right"});
  return o;
}

DefensePlan anyDefense() {
  DefensePlan d;
  const Front front = oneOf(library().fronts);
  d.front = front.id;
  d.movement = chance(70) ? "none" : oneOf(movementNames(front));
  d.shell = oneOf(library().shells).id;
  d.structure = oneOf<std::string>({"spill", "box"});
  d.bs_backer = oneOf<std::string>({"overlap", "fold", "shoot", "hang"});
  d.key = oneOf<std::string>({"single", "triangle"});
  d.overlap = chance(70) ? "under" : "over";
  for (FitOff& level : d.fit_off) level = chance(70) ? FitOff::man_in_front : FitOff::call;
  return d;
}

Scenario anyScenario() {
  Scenario s;
  s.title = "any look";
  s.level = oneOf({Level::high_school, Level::college, Level::pro});
  s.field.spot = oneOf<std::string>({"left_hash", "middle", "right_hash"});
  s.field.to_goal = between(2, 98, 4);
  s.field.down = *rc::gen::inRange(1, 5);
  s.offense = anyOffense();
  s.defense = anyDefense();
  return s;
}

std::optional<Setup> resolvedOrNone(const Scenario& s) {
  try {
    return resolve(s, library(), model());
  } catch (const InputError&) {
    return {};
  }
}

void makeSpecial(ManSettings& man, bool attacks) {
  if (chance(50)) man.mass_kg = between(60, 180, 5);
  if (attacks) return;
  if (chance(50)) man.read_delay_s = between(0, 2, 0.1);
  if (chance(30)) man.depth_yd = between(2, 18, 0.5);
  if (chance(30)) man.downhill_yps = between(1, 10, 0.5);
  if (chance(20)) man.tackling = between(-2, 2, 0.5);
}

/// Keeps a change only where the library allows it.
void tryChange(AnyLook& look, const std::function<void(Scenario&)>& change) {
  Scenario changed = look.scenario;
  change(changed);
  if (auto setup = resolvedOrNone(changed))
    look.scenario = std::move(changed), look.setup = std::move(*setup);
}

// ---- what is wrong with a rep

constexpr double kThrough = 0.1;   // yd
constexpr double kLongest = 20.0;  // s

using Outline = std::array<Vec2, 8>;

/// The torso of PhysicsWorld: eight corners of an ellipse, shoulders wide and chest deep.
Outline outlineOf(const Body& body, const Pose& pose) {
  Outline corners;
  const Vec2 across{pose.face.y, -pose.face.x};
  for (std::size_t k = 0; k < corners.size(); ++k) {
    const double angle = 0.39269908169872414 + static_cast<double>(k) * 0.78539816339744828;
    corners[k] =
        pose.pos + body.shoulder * std::cos(angle) * across + body.chest * std::sin(angle) * pose.face;
  }
  return corners;
}

/// Overlap along the normals of the sides of `a`; the least is the depth (separating axes).
double depthAlongSides(const Outline& a, const Outline& b) {
  double least = std::numeric_limits<double>::max();
  for (std::size_t k = 0; k < a.size(); ++k) {
    const Vec2 side = a[(k + 1) % a.size()] - a[k];
    const Vec2 out = unit({side.y, -side.x});
    double nearest = std::numeric_limits<double>::max();
    for (const Vec2 corner : b) nearest = std::min(nearest, dot(corner - a[k], out));
    least = std::min(least, -nearest);
  }
  return least;
}

bool mayPass(const Setup& setup, int a, int b) {
  return isOffense(a) && isOffense(b) && (a == setup.passer || b == setup.passer);
}

bool isFinite(Vec2 v) { return std::isfinite(v.x) && std::isfinite(v.y); }

std::string notFinite(const Tape& tape) {
  for (std::size_t tick = 0; tick < tape.record.frames.size(); ++tick) {
    const Frame& f = tape.record.frames[tick];
    for (int k = 0; k < kMen; ++k) {
      const Pose& p = f.men[at(k)];
      if (!isFinite(p.pos) || !isFinite(p.vel) || !isFinite(p.face) || std::abs(length(p.face) - 1.0) > 1e-3)
        return fmt::format("tick {}: {} has no place, velocity or facing", tick, tape.setup.men[at(k)].id);
    }
    if (!isFinite(f.ball)) return fmt::format("tick {}: the ball is nowhere", tick);
  }
  return std::isfinite(tape.record.yards) ? "" : "no yards";
}

std::string through(const Tape& tape) {
  for (std::size_t tick = 0; tick < tape.record.frames.size(); ++tick)
    for (int a = 0; a < kMen; ++a)
      for (int b = a + 1; b < kMen; ++b)
        if (const double depth = overlapOf(tape.setup, tape.record.frames[tick], a, b); depth > kThrough)
          return fmt::format("tick {}: {} is {:.3f} yd in {}", tick, tape.setup.men[at(a)].id, depth,
                             tape.setup.men[at(b)].id);
  return "";
}

/// A man whom nobody has been near for a second runs by his own law alone.
std::string tooFast(const Tape& tape) {
  constexpr double kNear = 1.6;  // yd
  std::array<int, kMen> alone{};
  for (std::size_t tick = 0; tick < tape.record.frames.size(); ++tick) {
    const auto& men = tape.record.frames[tick].men;
    for (int k = 0; k < kMen; ++k) {
      bool met = men[at(k)].engaged != kNobody;
      for (int other = 0; other < kMen && !met; ++other)
        met = other != k && distance(men[at(k)].pos, men[at(other)].pos) < kNear;
      alone[at(k)] = met ? 0 : alone[at(k)] + 1;
      const double most = tape.setup.men[at(k)].body.top_speed + 1e-3;
      if (alone[at(k)] > kTicksPerSecond && length(men[at(k)].vel) > most)
        return fmt::format("tick {}: {} runs {:.3f} yd/s of {:.3f}", tick, tape.setup.men[at(k)].id,
                           length(men[at(k)].vel), most);
    }
  }
  return "";
}

/// The most force a man's legs, hands and the ground can put on the 22 from outside, kg yd/s^2.
double legForce(const Man& man, const Model& model, const Pose& pose) {
  const Body& b = man.body;
  const double own = std::hypot(std::max(b.top_speed / b.tau, b.brake), b.lateral);
  return b.mass_kg * (own + (pose.down ? model.ground_drag * length(pose.vel) : 0.0));
}

/// Contact is between the men: what the 22 gain together in a tick comes from their legs.
std::string fromNowhere(const Tape& tape, const Model& model) {
  const auto& frames = tape.record.frames;
  for (std::size_t tick = 0; tick + 1 < frames.size(); ++tick) {
    Vec2 gained;
    double most = 0.0;
    for (int k = 0; k < kMen; ++k) {
      const Man& man = tape.setup.men[at(k)];
      gained += man.body.mass_kg * (frames[tick + 1].men[at(k)].vel - frames[tick].men[at(k)].vel);
      most += legForce(man, model, frames[tick].men[at(k)]) * kStep;
    }
    if (length(gained) > most)
      return fmt::format("tick {}: {:.0f} kg yd/s gained, {:.0f} the legs can give", tick, length(gained),
                         most);
  }
  return "";
}

std::string unfinished(const Tape& tape) {
  const Record& r = tape.record;
  if (r.frames.empty() || static_cast<std::size_t>(r.end_tick) + 1 > r.frames.size() + 1)
    return "ends after its tape";
  return seconds(r.end_tick) > kLongest + kStep ? fmt::format("takes {} s", seconds(r.end_tick)) : "";
}

/// From the exchange on: progress is the runner's.
double farthestBall(const Record& record) {
  double farthest = -99.0;
  for (std::size_t tick = at(std::max(record.handoff_tick, 0)); tick < record.frames.size(); ++tick)
    if (const Frame& f = record.frames[tick]; f.carrier != kNobody) farthest = std::max(farthest, f.ball.y);
  return farthest;
}

bool touched(const Record& record, const std::string& id, const Setup& setup) {
  return std::any_of(record.events.begin(), record.events.end(), [&](const Event& e) {
    return (e.what == Happening::wraps || e.what == Happening::first_contact ||
            e.what == Happening::tries_tackle) &&
           ((e.man != kNobody && setup.men[at(e.man)].id == id) ||
            (e.other != kNobody && setup.men[at(e.other)].id == id));
  });
}

std::string accountDisagrees(const Tape& tape, const Model& model) {
  const Record& r = tape.record;
  const Account account = accountOf(tape);
  const Summary& s = account.summary;
  const auto time = [](int tick) { return tick < 0 ? -1.0 : seconds(tick); };
  if (s.yards != r.yards || s.hash != r.hash || s.ending != r.ending)
    return "account: another outcome than the tape";
  if (s.t_handoff != time(r.handoff_tick) || s.t_line != time(r.line_tick) || s.t_end != time(r.end_tick))
    return "account: other times than the tape";
  const double farthest = std::min(farthestBall(r), tape.setup.to_goal);
  if (r.yards < farthest - 1e-9 || r.yards > farthest + model.fall_forward_yd + 1e-9)
    return fmt::format("account: {:.2f} yd, the ball got to {:.2f}", r.yards, farthest);
  if (r.line_tick >= 0 && std::abs(s.cross_x - r.frames[at(r.line_tick)].ball.x) > 1e-12)
    return "account: crosses elsewhere";
  for (const std::string& id : account.tacklers)
    if (!touched(r, id, tape.setup)) return "account: " + id + " tackled whom he never touched";
  for (const FitLine& fit : account.fits)
    if (fit.man < kOffense || fit.man >= kMen || !(fit.t <= s.t_end))
      return "account: a fit of nobody, or after the end";
  return "";
}

}  // namespace

double overlapOf(const Setup& setup, const Frame& frame, int a, int b) {
  const Body &one = setup.men[at(a)].body, &other = setup.men[at(b)].body;
  const Pose &p = frame.men[at(a)], &q = frame.men[at(b)];
  if (mayPass(setup, a, b) || distance(p.pos, q.pos) > one.shoulder + other.shoulder) return 0.0;
  const Outline first = outlineOf(one, p), second = outlineOf(other, q);
  return std::max(std::min(depthAlongSides(first, second), depthAlongSides(second, first)), 0.0);
}

AnyLook anyLook() {
  AnyLook look;
  look.scenario = anyScenario();
  auto setup = resolvedOrNone(look.scenario);
  RC_PRE(setup.has_value());
  look.setup = std::move(*setup);
  if (chance(40)) {
    const auto force = oneOf<std::string>({"safety", "backer", "corner"});
    tryChange(look, [&](Scenario& s) { s.defense.force = force; });
  }
  for (int n = *rc::gen::inRange(0, 6); n > 0; --n) {
    const Man man = look.setup.men[at(*rc::gen::inRange(0, kMen))];
    tryChange(look, [&](Scenario& s) { makeSpecial(s.players[man.id], man.attacks); });
  }
  for (int n = *rc::gen::inRange(0, 5); n > 0; --n) {
    const FaultFacts facts = oneOf(faultTable());
    const std::string id = look.setup.men[at(*rc::gen::inRange(0, kMen))].id;
    const double amount = facts.most * between(0.1, 1.0, 0.1);
    tryChange(look, [&](Scenario& s) { s.faults.push_back({id, {facts.kind, amount}}); });
  }
  look.seed = static_cast<std::uint64_t>(*rc::gen::inRange(1, 1000000));
  return look;
}

std::string wrongWith(const Tape& tape, const Model& model) {
  for (const auto& wrong :
       {notFinite(tape), unfinished(tape), through(tape), tooFast(tape), fromNowhere(tape, model)})
    if (!wrong.empty()) return wrong;
  return accountDisagrees(tape, model);
}

}  // namespace gapsound::looks
