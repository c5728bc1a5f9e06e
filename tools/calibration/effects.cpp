#include "study/effects.hpp"

#include <fmt/core.h>

#include <map>

#include "io/library.hpp"
#include "options.hpp"
#include "scenario/resolve.hpp"
#include "study/reps.hpp"

using namespace gapsound;

namespace calibration {
namespace {

/// Plays each distinct side of the effects once.
class Sides {
 public:
  explicit Sides(const Ground& ground) : ground_(ground) {
    for (const EffectLook& look : effectLooks())
      bases_[look.key] = {look, resolve(look.scenario, ground.library, ground.model)};
  }
  [[nodiscard]] const EffectLook& look(const std::string& key) const { return bases_.at(key).look; }
  [[nodiscard]] int direction(const std::string& key) const { return bases_.at(key).setup.direction; }

  const std::vector<Summary>& reps(const std::string& key, const std::vector<Turn>& turns, int n) {
    std::string name = key;
    for (const Turn& t : turns) name += fmt::format("/{}:{}", static_cast<int>(t.lever), t.amount);
    auto& played = played_[name];
    if (played.size() < static_cast<std::size_t>(n)) {
      const Base& base = bases_.at(key);
      const Setup setup =
          resolve(turned(base.look.scenario, base.setup, turns), ground_.library, ground_.model);
      played = playMany(setup, ground_.model, ground_.options.seed, n, ground_.options.jobs, tellProgress);
    }
    return played;
  }

 private:
  struct Base {
    EffectLook look;
    Setup setup;
  };
  const Ground& ground_;
  std::map<std::string, Base> bases_;
  std::map<std::string, std::vector<Summary>> played_;
};

std::string demandOf(const Effect& effect) {
  if (effect.demand == Demand::reported) return "report";
  if (effect.demand == Demand::bounded) return fmt::format("< {:g}", effect.margin);
  return effect.margin > 0.0 ? fmt::format(">= {:g}", effect.margin) : "> 0";
}

void printEffect(const Effect& effect, const EffectLook& look, const EffectResult& r) {
  const bool share = effect.measure == Measure::cutback_open || effect.measure == Measure::cutback_taken ||
                     effect.measure == Measure::twelve_plus;
  const double s = share ? 100.0 : 1.0;
  fmt::print(
      "{:2}{:38}{:18}{:>6}{:>7.2f}{:>7.2f}{:>7.2f}  [{:6.2f},{:6.2f}] [{:6.2f},{:6.2f}] {:8.2g}  {:>7}  {}\n",
      effect.item, effect.words, look.words, r.paired.n, s * r.mean_a, s * r.mean_b, s * r.paired.difference,
      s * r.paired.ci.low, s * r.paired.ci.high, s * r.wide.low, s * r.wide.high, r.paired.p_value,
      demandOf(effect),
      effect.demand == Demand::reported ? ""
      : r.holds                         ? "pass"
                                        : "miss");
  std::fflush(stdout);
}

}  // namespace

void printEffects(const Ground& ground, bool n_given) {
  const Options& options = ground.options;
  Sides sides(ground);
  fmt::print("{:2}{:38}{:18}{:>6}{:>7}{:>7}{:>7}  {:15} {:15} {:>8}  {:>7}\n", "", "effect", "look", "n", "A",
             "B", "B-A", "95 %", "99.9 %", "p", "demand");
  for (Effect effect : effectList()) {
    if (!options.items.empty() && options.items.find(effect.item) == std::string::npos) continue;
    if (n_given) effect.n = options.n;
    const auto a = sides.reps(effect.look, effect.a, effect.n);
    const auto b = sides.reps(effect.look, effect.b, effect.n);
    printEffect(effect, sides.look(effect.look), judge(effect, sides.direction(effect.look), a, b));
  }
}

}  // namespace calibration
