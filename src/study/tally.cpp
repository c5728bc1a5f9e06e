#include "study/tally.hpp"

#include <algorithm>
#include <cmath>

#include "base/tick.hpp"

namespace gapsound {

Histogram::Histogram(double low, double high, int per_unit)
    : per_unit_(per_unit),
      first_(std::lround(low * per_unit)),
      counts_(static_cast<std::size_t>(std::lround(high * per_unit) - first_ + 1)) {}

std::int64_t Histogram::place(double value) const {
  const auto at = std::llround(value * per_unit_) - first_;
  return std::clamp<std::int64_t>(at, 0, static_cast<std::int64_t>(counts_.size()) - 1);
}

void Histogram::add(double value) {
  ++counts_[static_cast<std::size_t>(place(value))];
  ++n_;
}

double Histogram::quantile(double p) const {
  if (n_ == 0) return 0.0;
  const double where = p * static_cast<double>(n_ - 1);
  const auto below = static_cast<std::int64_t>(where);
  const auto above = std::min(below + 1, n_ - 1);
  std::int64_t passed = 0;
  double low = 0.0;
  bool found = false;
  for (std::size_t k = 0; k < counts_.size(); ++k) {
    passed += counts_[k];
    const double value = valueAt(static_cast<std::int64_t>(k));
    if (!found && passed > below) low = value, found = true;
    if (passed > above) return low + (where - static_cast<double>(below)) * (value - low);
  }
  return low;
}

double Histogram::shareAtLeast(double value) const {
  if (n_ == 0) return 0.0;
  const auto from = counts_.begin() + static_cast<std::ptrdiff_t>(place(value));
  std::int64_t hits = 0;
  for (auto it = from; it != counts_.end(); ++it) hits += *it;
  return static_cast<double>(hits) / static_cast<double>(n_);
}

std::vector<std::pair<double, std::int64_t>> Histogram::counts() const {
  std::vector<std::pair<double, std::int64_t>> found;
  for (std::size_t k = 0; k < counts_.size(); ++k)
    if (counts_[k] > 0) found.emplace_back(valueAt(static_cast<std::int64_t>(k)), counts_[k]);
  return found;
}

void Moments::add(double value) {
  if (n_++ == 0) first_ = value;
  sum_ += value;
  const double off = value - first_;
  from_first_ += off;
  squares_ += off * off;
}

double Moments::sd() const {
  if (n_ < 2) return 0.0;
  const auto n = static_cast<double>(n_);
  return std::sqrt(std::max(squares_ - from_first_ * from_first_ / n, 0.0) / (n - 1.0));
}

Paired Moments::paired(double level) const { return pairedFrom(static_cast<int>(n_), mean(), sd(), level); }

Histogram Tally::times() { return {0.0, 30.0, kTicksPerSecond}; }

void Tally::add(const Summary& rep) {
  yards_.add(rep.yards);
  whole_.add(wholeYards(rep.yards));
  cutback_open_ += rep.cutback_open;
  cutback_taken_ += rep.cutback_taken;
  bounced_ += rep.bounced;
  kept_ += rep.kept;
  tries_ += rep.tackle_tries;
  misses_ += rep.tackle_misses;
  addTiming(rep);
  if (rep.t_line >= 0.0) addLane(rep);
}

void Tally::addTiming(const Summary& rep) {
  t_end_.add(rep.t_end);
  best_speed_.add(rep.best_speed);
  speed_1s_.add(rep.speed_1s);
  speed_1_5s_.add(rep.speed_1_5s);
  speed_2s_.add(rep.speed_2s);
  if (rep.t_handoff >= 0.0) {
    t_handoff_.add(rep.t_handoff);
    speed_handoff_.add(rep.speed_handoff);
    depth_handoff_.add(rep.depth_handoff);
  }
  if (rep.t_first_contact >= 0.0) {
    t_first_contact_.add(rep.t_first_contact);
    contact_to_end_.add(rep.t_end - rep.t_first_contact);
    after_contact_.add(rep.yards_after_contact);
  }
}

void Tally::addLane(const Summary& rep) {
  t_line_.add(rep.t_line);
  speed_line_.add(rep.speed_line);
  nearest_defender_.add(rep.nearest_defender_line);
  within_3_.add(rep.defenders_within_3);
  cross_x_.add(rep.cross_x);
  cross_x_mean_.add(rep.cross_x);
  LaneUse& use = lanes_[rep.lane_gap];
  use.share += 1.0;
  use.mean += rep.yards;
}

Timing Tally::timing() const {
  Timing t;
  t.t_handoff = t_handoff_.median();
  t.t_line = t_line_.median();
  t.t_first_contact = t_first_contact_.median();
  t.t_end = t_end_.median();
  t.speed_handoff = speed_handoff_.median();
  t.depth_handoff = depth_handoff_.median();
  t.line_speed = speed_line_.median();
  t.best_speed = best_speed_.median();
  t.speed_1s = speed_1s_.median();
  t.speed_1_5s = speed_1_5s_.median();
  t.speed_2s = speed_2s_.median();
  t.after_contact_mean = after_contact_.mean();
  t.contact_to_end = contact_to_end_.median();
  t.nearest_defender_line = nearest_defender_.median();
  t.defenders_within_3 = within_3_.median();
  t.never_crossed = 1.0 - static_cast<double>(t_line_.n()) / n();
  return t;
}

Distribution Tally::distribution() const {
  Distribution d;
  d.n = n();
  if (d.n == 0) return d;
  d.mean = yards_.mean(), d.sd = yards_.sd(), d.mean_ci = meanInterval();
  d.median = whole_.median(), d.p10 = whole_.quantile(0.1), d.p90 = whole_.quantile(0.9);
  d.lost = 1.0 - whole_.shareAtLeast(0.0), d.stuffed = 1.0 - whole_.shareAtLeast(1.0);
  d.four_plus = whole_.shareAtLeast(4.0), d.ten_plus = whole_.shareAtLeast(10.0);
  d.twelve_plus = whole_.shareAtLeast(12.0), d.twenty_plus = whole_.shareAtLeast(20.0);
  d.success = whole_.shareAtLeast(std::ceil(yardsToSucceed(situation_)));
  d.cross_x_mean = cross_x_mean_.mean(), d.cross_x_median = cross_x_.median();
  const auto share = [&](std::int64_t hits) { return static_cast<double>(hits) / d.n; };
  d.cutback_open = share(cutback_open_), d.cutback_taken = share(cutback_taken_), d.bounced = share(bounced_),
  d.kept = share(kept_);
  d.missed_tackles = tries_ > 0 ? static_cast<double>(misses_) / static_cast<double>(tries_) : 0.0;
  for (const auto& [gap, sums] : lanes_) d.lanes[gap] = {sums.share / d.n, sums.mean / sums.share};
  d.timing = timing();
  return d;
}

}  // namespace gapsound
