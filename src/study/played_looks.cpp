#include "study/played_looks.hpp"

#include <algorithm>

#include "scenario/resolve.hpp"

namespace gapsound {

PlayedLooks::PlayedLooks(const Library& library, const Model& model, std::uint64_t first_seed, int threads,
                         Progress progress)
    : library_(library),
      model_(model),
      first_seed_(first_seed),
      threads_(threads),
      progress_(std::move(progress)) {}

PlayedLooks::Look& PlayedLooks::resolved(const Scenario& scenario) {
  const auto found =
      std::find_if(looks_.begin(), looks_.end(), [&](const Look& l) { return l.scenario == scenario; });
  if (found != looks_.end()) return *found;
  return looks_.emplace_back(Look{scenario, resolve(scenario, library_, model_), {}});
}

const PlayedLooks::Look& PlayedLooks::of(const Scenario& scenario, int n) {
  Look& look = resolved(scenario);
  if (look.reps.size() < static_cast<std::size_t>(n))
    playOn(look.reps, look.setup, model_, first_seed_, n, threads_, progress_);
  return look;
}

}  // namespace gapsound
