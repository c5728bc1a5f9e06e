#include <fmt/core.h>

#include "base/tick.hpp"
#include "looks.hpp"
#include "study/reps.hpp"
#include "study/statistics.hpp"

using namespace gapsound;

namespace calibration {
namespace {

/// Movement of an engaged pair's middle downfield over the second after first touch, both on their feet.
void gatherDrift(const Tape& tape, std::vector<double>& drift, std::vector<double>& touch) {
  const auto& frames = tape.record.frames;
  for (std::size_t k = 0; k < kOffense; ++k) {
    if (tape.setup.men[k].group == Group::receiver) continue;
    for (std::size_t tick = 0; tick + kTicksPerSecond < frames.size(); ++tick) {
      const int other = frames[tick].men[k].engaged;
      if (other == kNobody) continue;
      const auto middle = [&](const Frame& f) {
        return 0.5 * (f.men[k].pos.y + f.men[static_cast<std::size_t>(other)].pos.y);
      };
      touch.push_back(seconds(static_cast<int>(tick)));
      if (frames[tick + kTicksPerSecond].men[k].engaged == other)
        drift.push_back(middle(frames[tick + kTicksPerSecond]) - middle(frames[tick]));
      break;
    }
  }
}

}  // namespace

void printDrift(const Ground& ground) {
  std::vector<double> drift, touch;
  for (const CardLook& look : looksFor(ground.options)) {
    const auto setup = resolvedOrTold(look, ground);
    if (!setup) continue;
    for (int rep = 0; rep < ground.options.n; ++rep)
      gatherDrift(playTape(*setup, ground.model, ground.options.seed + static_cast<std::uint64_t>(rep)),
                  drift, touch);
  }
  fmt::print("pairs {}, drift over 1 s p10 {:.2f} median {:.2f} p90 {:.2f} (real -1.1, 0.13, 1.2)\n",
             drift.size(), quantileOf(drift, 0.1), medianOf(drift), quantileOf(drift, 0.9));
  fmt::print("first touch p10 {:.2f} median {:.2f} p90 {:.2f} s (real quartiles 0.5-1.0, median 0.75)\n",
             quantileOf(touch, 0.1), medianOf(touch), quantileOf(touch, 0.9));
}

}  // namespace calibration
