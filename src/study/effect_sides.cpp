#include "study/effect_sides.hpp"

#include <fmt/format.h>

#include "scenario/resolve.hpp"

namespace gapsound {

EffectSides::EffectSides(const Library& library, const Model& model, std::uint64_t first_seed, int threads,
                         Progress progress)
    : library_(library),
      model_(model),
      first_seed_(first_seed),
      threads_(threads),
      progress_(std::move(progress)) {
  for (const EffectLook& look : effectLooks())
    bases_[look.key] = {look, resolve(look.scenario, library, model)};
}

Setup EffectSides::side(const std::string& key, const std::vector<Turn>& turns) const {
  const Base& base = bases_.at(key);
  return resolve(turned(base.look.scenario, base.setup, turns), library_, model_);
}

const std::vector<Summary>& EffectSides::reps(const std::string& key, const std::vector<Turn>& turns, int n) {
  std::string name = key;
  for (const Turn& t : turns) name += fmt::format("/{}:{}", static_cast<int>(t.lever), t.amount);
  std::vector<Summary>& played = played_[name];
  if (played.size() < static_cast<std::size_t>(n))
    played = playMany(side(key, turns), model_, first_seed_, n, threads_, progress_);
  return played;
}

EffectResult EffectSides::judged(const Effect& effect) {
  return judge(effect, resolved(effect.look).direction, reps(effect.look, effect.a, effect.n),
               reps(effect.look, effect.b, effect.n));
}

}  // namespace gapsound
