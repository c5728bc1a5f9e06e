#include <fmt/core.h>

#include "options.hpp"
#include "study/effect_sides.hpp"

using namespace gapsound;

namespace calibration {
namespace {

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
  EffectSides sides(ground.library, ground.model, options.seed, options.jobs, tellProgress);
  fmt::print("{:2}{:38}{:18}{:>6}{:>7}{:>7}{:>7}  {:15} {:15} {:>8}  {:>7}\n", "", "effect", "look", "n", "A",
             "B", "B-A", "95 %", "99.9 %", "p", "demand");
  for (Effect effect : effectList()) {
    if (!options.items.empty() && options.items.find(effect.item) == std::string::npos) continue;
    if (n_given) effect.n = options.n;
    printEffect(effect, sides.look(effect.look), sides.judged(effect));
  }
}

}  // namespace calibration
