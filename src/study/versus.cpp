#include "study/versus.hpp"

namespace gapsound {

Situation situationOf(const Setup& setup) { return {setup.down, setup.distance}; }

void VersusTally::add(const Summary& rep) {
  if (waits_) {
    addPair(waiting_, rep);
  } else {
    waiting_ = rep;
  }
  waits_ = !waits_;
}

void VersusTally::addPair(const Summary& a, const Summary& b) {
  a_.add(a);
  b_.add(b);
  yards_.add(b.yards - a.yards);
  windows_.add(static_cast<double>(b.cutback_open) - static_cast<double>(a.cutback_open));
}

Versus VersusTally::versus() const {
  return {pairs(), a_.distribution(), b_.distribution(), yards_.paired(), windows_.paired()};
}

Versus versus(const Setup& a, const Setup& b, const Model& model, std::uint64_t first_seed, int n,
              int threads, const Progress& progress) {
  const std::vector<Setup> sides{a, b};
  VersusTally tally(situationOf(a), situationOf(b));
  const auto add = [&](std::size_t, const Summary& rep) {
    tally.add(rep);
    return true;
  };
  playInOrder({sides, model, first_seed}, Schedule(2, static_cast<std::size_t>(n)), 0, threads, add,
              progress);
  return tally.versus();
}

}  // namespace gapsound
