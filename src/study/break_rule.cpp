#include "study/break_rule.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace gapsound {
namespace {

template <int kLeast>
double atLeast(const Outcome& rep, const Situation&) {
  return wholeYards(rep.yards) >= kLeast ? 1.0 : 0.0;
}
double stuffed(const Outcome& rep, const Situation&) { return wholeYards(rep.yards) <= 0.0 ? 1.0 : 0.0; }

}  // namespace

const std::vector<GainMeasure>& gainMeasures() {
  static const std::vector<GainMeasure> measures = {
      {"mean", "the mean gain", false, true, [](const Outcome& rep, const Situation&) { return rep.yards; }},
      {"stuffed", "the share of snaps held to nothing", true, false, stuffed},
      {"four_plus", "the share of gains of four or more", true, true, atLeast<4>},
      {"ten_plus", "the share of gains of ten or more", true, true, atLeast<10>},
      {"success", "the offense's share of successful snaps", true, true,
       [](const Outcome& rep, const Situation& s) { return succeeds(wholeYards(rep.yards), s) ? 1.0 : 0.0; }},
      {"cutback_open", "the share of snaps with an open cutback", true, true,
       [](const Outcome& rep, const Situation&) { return rep.cutback_open ? 1.0 : 0.0; }},
      {"cutback_taken", "the share of cutbacks taken", true, true,
       [](const Outcome& rep, const Situation&) { return rep.cutback_taken ? 1.0 : 0.0; }}};
  return measures;
}

const GainMeasure* gainMeasureNamed(std::string_view name) {
  const auto& all = gainMeasures();
  const auto found = std::find_if(all.begin(), all.end(), [&](const auto& m) { return m.name == name; });
  return found == all.end() ? nullptr : &*found;
}

std::vector<BreakRule> usualBreakRules() {
  return {{gainMeasureNamed("mean"), 0.5, true}, {gainMeasureNamed("cutback_open"), 0.10, true}};
}

std::string wordsOf(const BreakRule& rule) {
  const GainMeasure& m = *rule.measure;
  const double size = std::abs(rule.amount);
  const std::string amount =
      m.is_share ? fmt::format("{:g} in a hundred", 100.0 * size) : fmt::format("{:g} yd", size);
  const char* verb = m.more_is_worse ? "reaches" : "falls to";
  if (!rule.over_best) return fmt::format("{} {} {}", m.words, verb, amount);
  return fmt::format("{} is {} {} the best value's", m.words, amount, rule.amount >= 0.0 ? "above" : "below");
}

}  // namespace gapsound
