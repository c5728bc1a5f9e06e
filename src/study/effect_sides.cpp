#include "study/effect_sides.hpp"

#include <cmath>

#include "scenario/resolve.hpp"

namespace gapsound {

EffectSides::EffectSides(const Library& library, const Model& model, std::uint64_t first_seed, int threads,
                         Progress progress)
    : played_(library, model, first_seed, threads, std::move(progress)) {
  for (const EffectLook& look : effectLooks())
    bases_[look.key] = {look, resolve(look.scenario, library, model)};
}

Scenario EffectSides::side(const std::string& key, const std::vector<Turn>& turns) const {
  const Base& base = bases_.at(key);
  return turned(base.look.scenario, base.setup, turns);
}

const std::vector<Summary>& EffectSides::reps(const std::string& key, const std::vector<Turn>& turns, int n) {
  return played_.of(side(key, turns), n).reps;
}

namespace {

/// More reps would say the same: it holds by two standard errors or more, or the margin is out of reach.
bool isSettled(const Effect& effect, const EffectResult& r) {
  if (effect.demand == Demand::reported) return false;
  const double error = r.paired.sd / std::sqrt(std::max(r.paired.n, 1));
  const Interval sure = intervalAt(r.paired, 1.0 - effect.alpha);
  if (effect.demand == Demand::bounded) return r.holds || sure.low > effect.margin;
  return (r.holds && r.paired.difference - 2.0 * error >= effect.margin) || sure.high < effect.margin;
}

}  // namespace

EffectResult EffectSides::judged(const Effect& effect) {
  EffectResult result;
  for (const Checkpoint& stage : checkpointsOf(effect.n, effect.alpha)) {
    Effect now = effect;
    now.n = stage.n, now.alpha = stage.alpha;
    result = judge(now, resolved(effect.look).direction, reps(effect.look, effect.a, stage.n),
                   reps(effect.look, effect.b, stage.n));
    if (isSettled(now, result)) break;
  }
  return result;
}

}  // namespace gapsound
