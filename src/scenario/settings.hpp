#pragma once
#include "base/model.hpp"
#include "scenario/look.hpp"

namespace gapsound {

/// Spots the scenario gives; the look is in the frame of the scenario. Throws InputError.
void placeByHand(Look& look, const Scenario& scenario);
/// Everything else it gives about single men, faults included; the setup is in the frame of the scenario.
void applySettings(Setup& setup, const Scenario& scenario, const Library& library, const Model& model);

/// True for a man this mistake can be laid on.
[[nodiscard]] bool mayHave(const Man& man, const FaultFacts& facts);

/// Men of a look or a setup by id, for messages.
[[nodiscard]] std::vector<std::string> idsOf(const Look& look);

}  // namespace gapsound
