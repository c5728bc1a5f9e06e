#include "athlete/splits.hpp"

#include "athlete/reach.hpp"

namespace gapsound {
namespace {

// Where a rising function changes sign between low and high; halved until doubles are used up.
template <class Rising>
double rootOf(Rising f, double low, double high) {
  constexpr int kHalvings = 60;
  for (int i = 0; i < kHalvings; ++i) {
    const double middle = 0.5 * (low + high);
    (f(middle) < 0.0 ? low : high) = middle;
  }
  return 0.5 * (low + high);
}

double secondsAtTopSpeed(double t, double tau) { return t - carryOf(t, tau); }

}  // namespace

double distanceAt(const SprintFit& fit, double t) { return fit.top_speed * secondsAtTopSpeed(t, fit.tau); }

std::optional<SprintFit> fitSplits(double ten_s, double forty_s, double offset_s) {
  const double ten = ten_s + offset_s;
  const double forty = forty_s + offset_s;
  if (!(ten > 0.0 && forty > ten)) return std::nullopt;
  // The slower he gets up to speed, the smaller the part of 40 yd that he has run by his 10-yd time.
  const auto missing = [&](double tau) {
    return secondsAtTopSpeed(forty, tau) - 4.0 * secondsAtTopSpeed(ten, tau);
  };
  if (missing(kLeastTau) > 0.0 || missing(kMostTau) < 0.0) return std::nullopt;
  const double tau = rootOf(missing, kLeastTau, kMostTau);
  return SprintFit{40.0 / secondsAtTopSpeed(forty, tau), tau};
}

double clockTime(const SprintFit& fit, double yards, double offset_s) {
  const double latest = yards / fit.top_speed + fit.tau;
  return rootOf([&](double t) { return distanceAt(fit, t) - yards; }, 0.0, latest) - offset_s;
}

}  // namespace gapsound
