#include "app/rep.hpp"

#include <algorithm>

#include "cli/session.hpp"
#include "scenario/resolve.hpp"
#include "study/reps.hpp"

namespace gapsound {

RepPtr playRep(const Scenario& scenario, const Model& model, std::uint64_t seed) {
  Tape tape = playTape(resolve(scenario, library(), model), model, seed);
  Account account = accountOf(tape);
  auto ticks = ladderTicks(tape);
  return std::make_shared<const Rep>(Rep{scenario, std::move(tape), std::move(account), std::move(ticks)});
}

int manNamed(const Setup& setup, const std::string& id) {
  const auto found =
      std::find_if(setup.men.begin(), setup.men.end(), [&](const Man& man) { return man.id == id; });
  return found == setup.men.end() ? kNobody : static_cast<int>(found - setup.men.begin());
}

}  // namespace gapsound
