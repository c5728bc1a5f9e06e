#include "study/versus.hpp"

namespace gapsound {
namespace {

std::vector<double> windowsOf(std::span<const Summary> reps) {
  std::vector<double> open;
  open.reserve(reps.size());
  for (const Summary& rep : reps) open.push_back(rep.cutback_open ? 1.0 : 0.0);
  return open;
}

}  // namespace

Situation situationOf(const Setup& setup) { return {setup.down, setup.distance}; }

Versus compared(std::span<const Summary> a, std::span<const Summary> b, const Situation& situation_a,
                const Situation& situation_b) {
  Versus result;
  result.n = static_cast<int>(a.size());
  result.a = distributionOf(a, situation_a);
  result.b = distributionOf(b, situation_b);
  result.yards = pairedDifference(yardsOf(a), yardsOf(b));
  result.cutback_open = pairedDifference(windowsOf(a), windowsOf(b));
  return result;
}

Versus versus(const Setup& a, const Setup& b, const Model& model, std::uint64_t first_seed, int n,
              int threads, const Progress& progress) {
  const auto reps = playAll({a, b}, model, first_seed, n, threads, progress);
  return compared(reps[0], reps[1], situationOf(a), situationOf(b));
}

}  // namespace gapsound
