#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <functional>

#include "base/stream.hpp"
#include "looks.hpp"
#include "study/faults.hpp"
#include "study/versus.hpp"

using namespace gapsound;

namespace {

constexpr int kPool = 20000, kSamples = 2000, kSampled = 100;

std::vector<Outcome> poolOf(const std::string& look, int n) {
  const std::vector<Setup> setups{looks::shipped(look)};
  std::vector<Outcome> pool;
  playInOrder({setups, looks::model(), 1}, Schedule(1, static_cast<std::size_t>(n)), 0, 0,
              [&](std::size_t, const Summary& rep) {
                pool.push_back(outcomeOf(rep));
                return true;
              });
  return pool;
}

/// How many of the samples' intervals hold the pool's own value.
struct Coverage {
  double mean = 0, stuffed = 0, four_plus = 0, ten_plus = 0;
};

bool holds(const Interval& ci, double value) { return ci.low <= value && value <= ci.high; }

Coverage coverageIn(const std::vector<Outcome>& pool) {
  const Gains truth = gainsOf(pool);
  Stream stream(7, 0, "samples");
  Coverage hits;
  std::vector<Outcome> sample(kSampled);
  for (int s = 0; s < kSamples; ++s) {
    for (auto& rep : sample)
      rep = pool[static_cast<std::size_t>(stream.unit() * static_cast<double>(pool.size()))];
    const Gains g = gainsOf(sample);
    hits.mean += holds(g.mean_ci, truth.mean);
    hits.stuffed += holds(intervalOfShare(g.stuffed, g.n), truth.stuffed);
    hits.four_plus += holds(intervalOfShare(g.four_plus, g.n), truth.four_plus);
    hits.ten_plus += holds(intervalOfShare(g.ten_plus, g.n), truth.ten_plus);
  }
  return {hits.mean / kSamples, hits.stuffed / kSamples, hits.four_plus / kSamples, hits.ten_plus / kSamples};
}

int manNamed(const Setup& look, const std::string& id) {
  for (int k = 0; k < kMen; ++k)
    if (look.men[static_cast<std::size_t>(k)].id == id) return k;
  return kNobody;
}

Mistakes mistake(const Setup& look, const char* man, FaultKind kind) {
  return {{manNamed(look, man), {kind, factsOf(kind).usual}}};
}

/// Width of the paired interval of `id` reading 0.1 s later against that of two samples without common luck.
double paired(const char* name, int man, int n) {
  const Setup look = looks::shipped(name);
  Setup later = look;
  later.men[static_cast<std::size_t>(man)].fit.read_delay_s += 0.1;
  const Versus sides = versus(look, later, looks::model(), 1, n);
  const double unpaired = 2 * 1.96 * std::hypot(sides.a.sd, sides.b.sd) / std::sqrt(sides.n);
  return (sides.yards.ci.high - sides.yards.ci.low) / unpaired;
}

}  // namespace

TEST_CASE("long: intervals at 95 % hold the truth about as often as they say") {
  const Coverage c = coverageIn(poolOf("power-right-spill", kPool));
  MESSAGE("of 2000 samples of 100: mean " << 100 * c.mean << " %, stuffed " << 100 * c.stuffed
                                          << " %, four or more " << 100 * c.four_plus << " %, ten or more "
                                          << 100 * c.ten_plus << " %");
  // Short of 95: one snap in a hundred goes all the way, and a sample without one does not know how far.
  CHECK(c.mean >= 0.91);
  CHECK(c.mean <= 0.97);
  for (const double share : {c.stuffed, c.four_plus, c.ten_plus}) {
    CHECK(share >= 0.925);
    CHECK(share <= 0.97);
  }
}

TEST_CASE("long: the same luck on both sides narrows a difference to six tenths") {
  const Setup power = looks::shipped("power-right-spill");
  // The first backer and the alley safety stand where the run is decided: when they are late every other man
  // plays on from there. The backer's share is 0.59, the safety's 0.51, the others' 0.3 to 0.4.
  const std::pair<const char*, int> late[] = {{"S", 2500}, {"M", 600}, {"W", 600}, {"SS", 3000}, {"FS", 600}};
  for (const auto& [man, snaps] : late) {
    const double share = paired("power-right-spill", manNamed(power, man), snaps);
    MESSAGE(std::string(man), " reads 0.1 s later: the paired interval is ", share, " of the other");
    CHECK(share <= 0.6);
  }
  double sum = 0.0;
  for (int man = kOffense; man < kMen; ++man) sum += paired("counter-right-guard-and-h", man, 300);
  MESSAGE("over all eleven on counter: ", sum / (kMen - kOffense));
  CHECK(sum / (kMen - kOffense) <= 0.4);
}

namespace {

struct Told {
  const char* man;
  FaultKind kind;
};

bool isSure(const Paired& p, double alpha = 0.001) { return p.difference > 0.0 && p.p_value < alpha; }

void tell(const Setup& look, const FaultRow& row) {
  MESSAGE(nameOf(look, row.mistakes) << ", " << row.loss.n << " snaps: costs " << row.loss.difference
                                     << " yd on the call (p " << row.loss.p_value << "), "
                                     << row.loss_fixed.difference << " off the man in front (p "
                                     << row.loss_fixed.p_value << "), won back " << row.won_back.difference
                                     << " (p " << row.won_back.p_value << "), " << 100 * row.share_won_back
                                     << " %");
}

/// What the mistakes cost, from n snaps or fewer where these settle it.
std::vector<FaultRow> costsOf(const Setup& look, const std::vector<Told>& told, int n,
                              const std::function<bool(const FaultRow&, double alpha)>& is_shown) {
  std::vector<Mistakes> mistakes;
  for (const Told& t : told) mistakes.push_back(mistake(look, t.man, t.kind));
  const std::vector<Setup> setups = faultSetups(look, mistakes);
  const Schedule schedule(setups.size(), static_cast<std::size_t>(n));
  const auto stages = checkpointsOf(n, 0.001);
  std::size_t stage = 0;
  std::vector<FaultRow> found;
  Rows rows(setups.size());
  playInOrder({setups, looks::model(), 1}, schedule, 0, 0, [&](std::size_t k, const Summary& rep) {
    rows[schedule.at(k).cell].push_back(outcomeOf(rep));
    if (k + 1 < setups.size() * static_cast<std::size_t>(stages[stage].n)) return true;
    found = faultsOf(look, mistakes, rows).rows;
    const double alpha = stages[stage++].alpha;
    return !std::all_of(found.begin(), found.end(),
                        [&](const FaultRow& row) { return is_shown(row, alpha); });
  });
  for (const FaultRow& row : found) tell(look, row);
  return found;
}

}  // namespace

TEST_CASE("long: what a kicked end and a late safety cost on power, and what is repaired") {
  const auto is_shown = [](const FaultRow& row, double alpha) {
    if (row.mistakes.front().fault.kind == FaultKind::kicked_out)
      return isSure(row.loss, alpha) && isSure(row.won_back, alpha) && row.repaired_by != kNobody;
    return isSure(row.loss_fixed, alpha);
  };
  for (const FaultRow& row :
       costsOf(looks::shipped("power-right-spill"),
               {{"SE", FaultKind::kicked_out}, {"SS", FaultKind::late_read}}, 4000, is_shown))
    CHECK(is_shown(row, 0.001));
}

TEST_CASE("long: what a wide scrape costs on power from one back") {
  const auto is_shown = [](const FaultRow& row, double alpha) { return isSure(row.loss_fixed, alpha); };
  const auto rows =
      costsOf(looks::shipped("power-right-one-back"), {{"S", FaultKind::scrape_wide}}, 4000, is_shown);
  CHECK(is_shown(rows.front(), 0.001));
}
