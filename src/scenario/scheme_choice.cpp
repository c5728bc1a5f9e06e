#include "scenario/blocking.hpp"

namespace gapsound {

Scheme varied(const Scheme& scheme, const std::string& variant) {
  Scheme out = scheme;
  const auto found = scheme.variants.find(variant);
  if (found == scheme.variants.end()) return out;
  const SchemeChange& change = found->second;
  for (const auto& [place, steps] : change.jobs) out.jobs[place] = steps;
  for (const auto& [part, who] : change.parts) out.parts[part] = who;
  for (const auto& [snap, path] : change.paths) out.paths[snap] = path;
  for (const auto& [from, to] : change.snaps) out.snaps[from] = to;
  out.carriers = change.carriers.value_or(out.carriers);
  out.reserves = change.reserves.value_or(out.reserves);
  if (change.read) out.read = change.read;
  out.aim_x = change.aim_x.value_or(out.aim_x);
  out.patient = change.patient.value_or(out.patient);
  out.bends = change.bends.value_or(out.bends);
  return out;
}

int carrierOf(const Look& look, const Scheme& scheme) {
  for (const std::string& id : scheme.carriers) {
    for (int man = 0; man < kOffense; ++man) {
      if (attackerOf(look, man).id == id) return man;
    }
  }
  return kNobody;
}

}  // namespace gapsound
