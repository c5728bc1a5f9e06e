#include "study/repairs.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace gapsound {
namespace {

constexpr std::size_t kTried = 6;  // other calls judged on new seeds
constexpr double kHalf = 0.5, kSure = 0.05;

std::vector<double> gains(const std::vector<Summary>& reps) {
  std::vector<double> yards;
  for (const Summary& rep : reps) yards.push_back(rep.yards);
  return yards;
}

/// [0]: sound, [1]: with the mistake, then the calls with the mistake.
std::vector<Setup> looksWith(const Setup& look, const Mistake& mistake, const std::vector<OtherCall>& calls,
                             const std::vector<std::size_t>& picked) {
  std::vector<Setup> looks{look, withMistake(look, mistake)};
  for (const std::size_t k : picked) looks.push_back(withMistake(calls[k].look, mistake));
  return looks;
}

std::vector<std::size_t> best(const Setup& look, const Mistake& mistake, const std::vector<OtherCall>& calls,
                              const Model& model, const LeakSearch& search, const Progress& progress) {
  std::vector<std::size_t> order(calls.size());
  std::iota(order.begin(), order.end(), 0);
  const auto reps = playAll(looksWith(look, mistake, calls, order), model, search.first_seed, search.n,
                            search.threads, progress);
  std::vector<double> means;
  for (std::size_t k = 0; k < calls.size(); ++k) means.push_back(meanOf(gains(reps[k + 2])));
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return means[a] < means[b]; });
  order.resize(std::min(order.size(), kTried));
  return order;
}

}  // namespace

std::vector<CallCause> callsBehind(const Setup& look, const std::vector<OtherCall>& calls, const Seen& seen,
                                   const Model& model, const LeakSearch& search, const Progress& progress) {
  std::vector<Setup> looks{look};
  for (const OtherCall& call : calls) looks.push_back(call.look);
  const Comparison all(seen, looks, model, search.first_seed, search.n, search.threads, progress);
  double most = -1e300, sum = 0.0;
  for (const Agreement& it : all.looks()) most = std::max(most, it.likelihood);
  for (const Agreement& it : all.looks()) sum += std::exp(it.likelihood - most);
  std::vector<CallCause> causes;
  for (std::size_t k = 0; k < calls.size(); ++k)
    causes.push_back({k, std::exp(all.looks()[k + 1].likelihood - most) / sum});
  std::stable_sort(causes.begin(), causes.end(),
                   [](const CallCause& a, const CallCause& b) { return a.weight > b.weight; });
  return causes;
}

RepairResult repairsFor(const Setup& look, const Mistake& mistake, const std::vector<OtherCall>& calls,
                        const Model& model, const LeakSearch& search, const Progress& progress) {
  const std::vector<std::size_t> picked = best(look, mistake, calls, model, search, progress);
  const auto reps =
      playAll(looksWith(look, mistake, calls, picked), model,
              search.first_seed + static_cast<std::uint64_t>(search.n), search.n, search.threads);
  const std::vector<double> sound = gains(reps[0]), with = gains(reps[1]);
  RepairResult result{meanOf(sound), meanOf(with), pairedDifference(sound, with), {}, 0};
  const auto wins = [&](const Repair& r) {
    return result.cost.ci.low > 0.0 && r.won_back.p_value < kSure && r.won_back.difference > 0.0 &&
           r.won_back.difference >= kHalf * result.cost.difference;
  };
  for (std::size_t k = 0; k < picked.size(); ++k) {
    result.repairs.push_back({picked[k], pairedDifference(gains(reps[k + 2]), with)});
    result.good += wins(result.repairs.back());
  }
  std::stable_sort(result.repairs.begin(), result.repairs.end(), [&](const Repair& a, const Repair& b) {
    if (wins(a) != wins(b)) return wins(a);
    if (wins(a) && calls[a.call].price != calls[b.call].price)
      return calls[a.call].price < calls[b.call].price;
    return a.won_back.difference > b.won_back.difference;
  });
  return result;
}

std::size_t seedToShow(const Setup& before, const Setup& after, const std::vector<double>& off,
                       const Model& model, const LeakSearch& search) {
  const int n = static_cast<int>(off.size());
  const auto reps = playAll({before, after}, model, search.first_seed, n, search.threads);
  std::vector<double> change;
  for (std::size_t k = 0; k < off.size(); ++k) change.push_back(reps[1][k].yards - reps[0][k].yards);
  const double usual = meanOf(change);
  std::vector<std::size_t> order(off.size());
  std::iota(order.begin(), order.end(), 0);
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return off[a] < off[b]; });
  order.resize(std::max<std::size_t>(1, order.size() / 4));
  return *std::min_element(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return std::abs(change[a] - usual) < std::abs(change[b] - usual);
  });
}

}  // namespace gapsound
