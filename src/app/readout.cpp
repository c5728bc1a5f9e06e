#include "app/readout.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "base/error.hpp"
#include "cli/session.hpp"
#include "scenario/resolve.hpp"
#include "study/versus.hpp"

namespace gapsound {
namespace {

constexpr int kLot = 20;  // reps between two looks at whether it is stale

Interval share(double value, int n) { return shareInterval(static_cast<int>(std::lround(value * n)), n); }

}  // namespace

Readout readoutOf(const std::vector<Summary>& reps, const Situation& situation, int planned) {
  Readout readout;
  readout.planned = planned;
  readout.gains = distributionOf(reps, situation);
  const Distribution& d = readout.gains;
  readout.stuffed = share(d.stuffed, d.n);
  readout.ten_plus = share(d.ten_plus, d.n);
  readout.cutback_open = share(d.cutback_open, d.n);
  std::vector<std::size_t> order(reps.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return reps[a].yards < reps[b].yards; });
  if (order.empty()) return readout;
  readout.best_seed = order.front() + 1;
  readout.typical_seed = order[order.size() / 2] + 1;
  readout.worst_seed = order.back() + 1;
  return readout;
}

void playReadout(const Scenario& scenario, const Model& model, std::uint64_t edition, int n,
                 const Errand::Stale& stale, Mailbox<Readout>& box) {
  try {
    const Setup setup = resolve(scenario, library(), model);
    std::vector<Summary> reps;
    while (static_cast<int>(reps.size()) < n && !stale) {
      const auto lot =
          playMany(setup, model, reps.size() + 1, std::min(kLot, n - static_cast<int>(reps.size())), 1);
      reps.insert(reps.end(), lot.begin(), lot.end());
      Readout readout = readoutOf(reps, situationOf(setup), n);
      readout.edition = edition;
      if (!stale) box.put(readout);
    }
  } catch (const Error&) {
    return;  // the rep of the same scenario says what is wrong with it
  }
}

}  // namespace gapsound
