#pragma once
#include <cstdint>
#include <memory>
#include <vector>

#include "analysis/account.hpp"
#include "base/model.hpp"
#include "picture/ladder.hpp"
#include "scenario/scenario.hpp"
#include "tape/tape.hpp"

namespace gapsound {

/// One snap as the window shows it, with the scenario it was played from. Never changes once made.
struct Rep {
  Scenario scenario;
  Tape tape;
  Account account;
  std::vector<LadderTick> ticks;
};
using RepPtr = std::shared_ptr<const Rep>;

/// Throws InputError when the scenario cannot be played.
[[nodiscard]] RepPtr playRep(const Scenario& scenario, const Model& model, std::uint64_t seed);
/// The man of that name in the rep; kNobody when there is none.
[[nodiscard]] int manNamed(const Setup& setup, const std::string& id);

}  // namespace gapsound
