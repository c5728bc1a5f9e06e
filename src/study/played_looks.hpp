#pragma once
#include <cstdint>
#include <list>
#include <vector>

#include "scenario/scenario.hpp"
#include "study/reps.hpp"

namespace gapsound {

struct Library;

/// Looks on common seeds, each played once however many questions ask for it. Borrows library and model.
class PlayedLooks {
 public:
  struct Look {
    Scenario scenario;
    Setup setup;
    std::vector<Summary> reps;  // in seed order
  };
  /// Reps from `first_seed` on, on `threads` threads (0: all cores).
  PlayedLooks(const Library& library, const Model& model, std::uint64_t first_seed = 1, int threads = 0,
              Progress progress = {});
  /// The look with at least n reps; valid as long as this object. Throws Error(badInput) for one that cannot
  /// be.
  const Look& of(const Scenario& scenario, int n);

 private:
  Look& resolved(const Scenario& scenario);

  const Library& library_;
  const Model& model_;
  std::uint64_t first_seed_;
  int threads_;
  Progress progress_;
  std::list<Look> looks_;
};

}  // namespace gapsound
