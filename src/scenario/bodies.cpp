#include "scenario/bodies.hpp"

#include <fmt/format.h>

#include "athlete/splits.hpp"
#include "base/error.hpp"

namespace gapsound {
namespace {

constexpr double kYardsPerCm = 0.0109361;
constexpr double kGirthMass = 85.5;    // kg
constexpr double kTenOfForty = 0.347;  // share of a 40-yard time, the same in every group

double halfYards(const Girth& girth, double mass_kg) {
  return 0.5 * kYardsPerCm * (girth.at_85_kg + girth.slope * (mass_kg - kGirthMass) + girth.pads);
}

bool isOffensiveLine(Group group) {
  return group == Group::off_tackle || group == Group::guard || group == Group::center;
}

double lateralOf(Group group, bool heavy, const Model& model) {
  if (isOffensiveLine(group)) return model.loco_lateral_ol;
  return heavy ? model.loco_lateral_dl : model.loco_lateral_skill;
}

}  // namespace

void setMass(Body& body, const Bodies& bodies, double mass_kg) {
  body.mass_kg = mass_kg;
  body.shoulder = halfYards(bodies.shoulder, mass_kg);
  body.chest = halfYards(bodies.chest, mass_kg);
}

Body bodyOf(const Bodies& bodies, Group group, Level level, const Model& model) {
  const BodyKind& kind = bodies.kinds[static_cast<std::size_t>(group)];
  const LevelKind& scale = bodies.levels[static_cast<std::size_t>(level)];
  Body body;
  setMass(body, bodies, kind.mass_kg[static_cast<std::size_t>(level)]);
  body.top_speed = kind.top_speed * (kind.heavy ? scale.line_speed : scale.skill_speed) * model.loco_pads;
  body.tau = kind.tau;
  body.brake = (kind.heavy ? model.loco_brake_line : model.loco_brake_skill) * scale.brake;
  body.lateral = lateralOf(group, kind.heavy, model) * scale.brake;
  body.backpedal = kind.backpedal;
  return body;
}

void setTimes(Body& body, const ManSettings& man, double clock_start_s, const Model& model,
              const std::string& file, const std::string& path) {
  if (!man.ten_yd_s && !man.forty_yd_s) return;
  const double ten = man.ten_yd_s ? *man.ten_yd_s : kTenOfForty * *man.forty_yd_s;
  const double forty = man.forty_yd_s ? *man.forty_yd_s : ten / kTenOfForty;
  const auto fit = fitSplits(ten, forty, clock_start_s);
  if (!fit) {
    throw InputError(file, path, fmt::format("ten_yd_s {:.2f} with forty_yd_s {:.2f}", ten, forty),
                     "times of one sprint: the ten about 0.35 of the forty");
  }
  body.top_speed = fit->top_speed * model.loco_pads;
  body.tau = fit->tau;
}

}  // namespace gapsound
