#include <doctest/doctest.h>

#include <cmath>

#include "base/stream.hpp"
#include "looks.hpp"
#include "study/faults.hpp"
#include "study/versus.hpp"

using namespace gapsound;

namespace {

constexpr int kPool = 60000, kSamples = 2000, kReps = 100;

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
  std::vector<Outcome> sample(kReps);
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
  for (const char* id : {"S", "M", "W", "SS", "FS"}) {
    const double share = paired("power-right-spill", manNamed(power, id), 1500);
    MESSAGE(std::string(id), " reads 0.1 s later: the paired interval is ", share, " of the other");
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

std::vector<FaultRow> costsOf(const Setup& look, const std::vector<Told>& told, std::size_t n) {
  std::vector<Mistakes> mistakes;
  for (const Told& t : told) mistakes.push_back(mistake(look, t.man, t.kind));
  const std::vector<Setup> setups = faultSetups(look, mistakes);
  Rows rows(setups.size());
  const Schedule schedule(setups.size(), n);
  playInOrder({setups, looks::model(), 1}, schedule, 0, 0, [&](std::size_t k, const Summary& rep) {
    rows[schedule.at(k).cell].push_back(outcomeOf(rep));
    return true;
  });
  const auto found = faultsOf(look, mistakes, rows).rows;
  for (const FaultRow& row : found)
    MESSAGE(nameOf(look, row.mistakes)
            << ": costs " << row.loss.difference << " yd on the call (p " << row.loss.p_value << "), "
            << row.loss_fixed.difference << " off the man in front (p " << row.loss_fixed.p_value
            << "), won back " << row.won_back.difference << " (p " << row.won_back.p_value << "), "
            << 100 * row.share_won_back << " %");
  return found;
}

bool isSure(const Paired& p) { return p.difference > 0.0 && p.p_value < 0.001; }

}  // namespace

TEST_CASE("long: what a kicked end and a late safety cost on power, and what is repaired") {
  const auto rows = costsOf(looks::shipped("power-right-spill"),
                            {{"SE", FaultKind::kicked_out}, {"SS", FaultKind::late_read}}, 4000);
  for (const FaultRow& row : rows) {
    if (row.mistakes.front().fault.kind == FaultKind::kicked_out) {
      CHECK(isSure(row.loss));
      CHECK(isSure(row.won_back));
      CHECK(row.repaired_by != kNobody);
    } else
      CHECK(isSure(row.loss_fixed));
  }
}

TEST_CASE("long: what a wide scrape costs on power") {
  const auto rows = costsOf(looks::shipped("power-right-spill"), {{"S", FaultKind::scrape_wide}}, 24000);
  CHECK(isSure(rows.front().loss_fixed));
}
