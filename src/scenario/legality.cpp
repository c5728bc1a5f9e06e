#include "scenario/legality.hpp"

#include <fmt/format.h>

#include "base/error.hpp"

namespace gapsound {
namespace {

constexpr double kNeutralZone = 0.31;  // length of the ball, yd
constexpr double kOnLine = 1.45;       // deepest a man on the line may stand, yd
constexpr double kOneSpot = 0.5;       // nearer than this, two men share a spot, yd
constexpr int kMenOnLine = 7;

struct Placed {
  std::string id;
  Vec2 spot;
  bool attacks;
};

std::vector<Placed> everybody(const Look& look) {
  std::vector<Placed> men;
  for (const Attacker& man : look.offense) men.push_back({man.id, man.spot, true});
  for (const Defender& man : look.defense) men.push_back({man.id, man.spot, false});
  return men;
}

std::string at(Vec2 spot) { return fmt::format("({:.2f}, {:.2f})", spot.x, spot.y); }

[[noreturn]] void refuse(const Scenario& scenario, const std::string& id, const std::string& value,
                         const std::string& allowed) {
  throw InputError(scenario.source, "/players/" + id, value, allowed);
}

void requireOnside(const Placed& man, const Scenario& scenario) {
  if (man.attacks && man.spot.y > 0.0)
    refuse(scenario, man.id, at(man.spot) + " is beyond the ball", "y up to 0");
  if (!man.attacks && man.spot.y < kNeutralZone) {
    refuse(scenario, man.id, at(man.spot) + " is offside", fmt::format("y from {}", kNeutralZone));
  }
}

void requireOnLine(const Look& look, const Scenario& scenario) {
  int count = 0;
  for (const Attacker& man : look.offense) {
    if (man.on_line && man.spot.y < -kOnLine) {
      refuse(scenario, man.id, at(man.spot) + " is off the line",
             fmt::format("y from {} for a man on the line", -kOnLine));
    }
    count += man.on_line;
  }
  if (count < kMenOnLine) {
    throw InputError(scenario.source, "/offense/formation", fmt::format("{} men on the line", count),
                     fmt::format("at least {}", kMenOnLine));
  }
}

/// The man whose torso stands in this one's, of those before him.
const Man* inTheWay(const Setup& setup, const Man& man) {
  for (const Man& other : setup.men) {
    if (&other == &man) break;
    const double across = (other.spot.x - man.spot.x) / (other.body.shoulder + man.body.shoulder);
    const double deep = (other.spot.y - man.spot.y) / (other.body.chest + man.body.chest);
    if (across * across + deep * deep < 1.0) return &other;
  }
  return nullptr;
}

}  // namespace

void requireLegal(const Look& look, const Scenario& scenario, double sideline_left, double sideline_right) {
  const auto men = everybody(look);
  requireOnLine(look, scenario);
  for (std::size_t i = 0; i < men.size(); ++i) {
    requireOnside(men[i], scenario);
    if (men[i].spot.x < sideline_left || men[i].spot.x > sideline_right) {
      refuse(scenario, men[i].id, at(men[i].spot) + " is out of bounds",
             fmt::format("x from {:.2f} to {:.2f}", sideline_left, sideline_right));
    }
    for (std::size_t j = 0; j < i; ++j) {
      if (distance(men[i].spot, men[j].spot) >= kOneSpot) continue;
      refuse(scenario, men[i].id, fmt::format("{} on one spot with {}", at(men[i].spot), men[j].id),
             fmt::format("at least {} yd between two men", kOneSpot));
    }
  }
}

void requireRoom(const Setup& setup, const Scenario& scenario) {
  for (const Man& man : setup.men) {
    const Man* other = inTheWay(setup, man);
    if (other == nullptr) continue;
    refuse(scenario, man.id, fmt::format("{} in {}", at(man.spot), other->id),
           fmt::format("room for both: {:.2f} yd abreast or {:.2f} in depth",
                       man.body.shoulder + other->body.shoulder, man.body.chest + other->body.chest));
  }
}

}  // namespace gapsound
