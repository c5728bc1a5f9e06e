#include "teach/fit_sheet.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numeric>

#include "analysis/cast.hpp"
#include "analysis/gaps.hpp"
#include "scenario/check.hpp"
#include "teach/roles.hpp"
#include "teach/view.hpp"

namespace gapsound {
namespace {

constexpr int kPictureReps = 40;
constexpr std::size_t kMostReads = 5;
constexpr double kHeadUp = 0.25;  // yd either side

const Man& at(const Setup& setup, int man) { return setup.men[static_cast<std::size_t>(man)]; }

/// The blocker in line nearest to x.
const Man& nearestBlocker(const Setup& setup, double x) {
  const Man* best = &at(setup, 0);
  for (int k = 0; k < kOffense; ++k) {
    const Man& man = at(setup, k);
    if (isInLine(man) && std::abs(man.spot.x - x) < std::abs(best->spot.x - x)) best = &man;
  }
  return *best;
}

std::string onBlocker(const Setup& setup, const Man& man) {
  const Man& blocker = nearestBlocker(setup, man.spot.x);
  const double off = (man.spot.x - blocker.spot.x) * (blocker.spot.x < -0.01 ? -1.0 : 1.0);
  if (std::abs(off) <= kHeadUp) return "head up on " + blocker.id;
  if (blocker.group == Group::center)
    return fmt::format("{}'s {} shoulder", blocker.id, off > 0 ? "right" : "left");
  return fmt::format("{}'s {} shoulder", blocker.id, off > 0 ? "outside" : "inside");
}

std::string linesUp(const Setup& setup, const Man& man) {
  if (man.fit.level == 1) return onBlocker(setup, man);
  if (std::abs(man.spot.x) > 9.0)
    return fmt::format("{:.0f} deep, wide {}", man.spot.y, man.spot.x > 0 ? "right" : "left");
  return fmt::format("{:.1f} deep over {}", man.spot.y, GapChart(setup).at(man.spot.x));
}

std::string keyOf(const Setup& setup, const FitJob& fit) {
  if (fit.key == kNobody) return "ball";
  const std::string& id = at(setup, fit.key).id;
  return fit.level == 2 && fit.key_style == KeyStyle::triangle ? id + ", then back" : id;
}

FitRow rowOf(const Setup& setup, const Phrases& phrases, const Man& man) {
  const RoleWords& words = phrases.roles[static_cast<std::size_t>(roleIn(setup, man))];
  const RoleWords::Way& way = wayOf(setup, man, phrases);
  const std::string gap = man.fit.gap.empty() ? "" : fmt::format("{}: ", man.fit.gap);
  return {man.id, linesUp(setup, man), keyOf(setup, man.fit), words.name, gap + way.landmark, way.technique};
}

bool isKicked(const Setup& setup, const Man& man) {
  return std::any_of(setup.men.begin(), setup.men.begin() + kOffense, [&](const Man& blocker) {
    const bool kicks = blocker.block.kind == BlockKind::kick || blocker.block.kind == BlockKind::log;
    return kicks && blocker.block.target != kNobody && &at(setup, blocker.block.target) == &man;
  });
}

std::string told(const Phrases& phrases, Fit fit) { return phrases.fits[static_cast<std::size_t>(fit)]; }

void tell(std::vector<std::string>& does, const Setup& setup, const Phrases& phrases, FitRole role, Fit fit) {
  const int man = manIn(setup, role);
  if (man != kNobody && fit != Fit::called)
    does.push_back(fmt::format("{}: {}", at(setup, man).id, told(phrases, fit)));
}

IfThen endRead(const Setup& setup, const Phrases& phrases, EndState state, int count) {
  const auto s = static_cast<std::size_t>(structureOf(setup)), e = static_cast<std::size_t>(state);
  IfThen read{fmt::format("{} {}", at(setup, castOf(setup).end).id, phrases.ends[e]), {}, count};
  tell(read.does, setup, phrases, FitRole::first_backer, setup.fits.first_backer[s][e]);
  tell(read.does, setup, phrases, FitRole::fill_backer, setup.fits.fill_backer[s][e]);
  tell(read.does, setup, phrases, FitRole::overlap_backer, setup.fits.overlap_backer[s][e]);
  return read;
}

IfThen backerRead(const Setup& setup, const Phrases& phrases, BackerState state, int count) {
  const auto b = static_cast<std::size_t>(state);
  IfThen read{fmt::format("{} {}", at(setup, castOf(setup).first_backer).id, phrases.backers[b]), {}, count};
  tell(read.does, setup, phrases, FitRole::alley, setup.fits.alley[b]);
  tell(read.does, setup, phrases, FitRole::force, setup.fits.force[b]);
  tell(read.does, setup, phrases, FitRole::cutback, setup.fits.cutback[b]);
  return read;
}

void keepMostSeen(std::vector<IfThen>& reads) {
  std::erase_if(reads, [](const IfThen& read) { return read.count == 0 || read.does.empty(); });
  std::stable_sort(reads.begin(), reads.end(),
                   [](const IfThen& a, const IfThen& b) { return a.count > b.count; });
  if (reads.size() > kMostReads) reads.resize(kMostReads);
}

std::array<std::vector<IfThen>, 3> levelsOf(const Setup& setup, const Phrases& phrases,
                                            const Sightings& seen) {
  std::array<std::vector<IfThen>, 3> levels;
  const auto s = static_cast<std::size_t>(structureOf(setup));
  for (const LineRead& read : phrases.line_reads) levels[0].push_back({read.seen, {read.does[s]}, -1});
  if (castOf(setup).end != kNobody)
    for (int e = 1; e < kEndStates; ++e)
      levels[1].push_back(
          endRead(setup, phrases, static_cast<EndState>(e), seen.count(static_cast<EndState>(e))));
  if (castOf(setup).first_backer != kNobody)
    for (int b = 1; b < kBackerStates; ++b)
      levels[2].push_back(
          backerRead(setup, phrases, static_cast<BackerState>(b), seen.count(static_cast<BackerState>(b))));
  keepMostSeen(levels[1]);
  keepMostSeen(levels[2]);
  return levels;
}

std::string named(const Setup& setup, FitRole role, const char* what) {
  const int man = manIn(setup, role);
  return man == kNobody ? "" : fmt::format("{} {}", what, at(setup, man).id);
}

}  // namespace

FitRole roleIn(const Setup& setup, const Man& man) {
  return setup.direction > 0 ? man.fit.if_right : man.fit.if_left;
}

const RoleWords::Way& wayOf(const Setup& setup, const Man& man, const Phrases& phrases) {
  const RoleWords& words = phrases.roles[static_cast<std::size_t>(roleIn(setup, man))];
  if (words.no_kick && !isKicked(setup, man)) return *words.no_kick;
  return words.ways[static_cast<std::size_t>(structureFor(man.fit, setup.direction))];
}

int manIn(const Setup& setup, FitRole role) {
  for (int man = kOffense; man < kMen; ++man)
    if (roleIn(setup, at(setup, man)) == role) return man;
  return kNobody;
}

Structure structureOf(const Setup& setup) {
  const int end = castOf(setup).end;
  return end == kNobody ? Structure::spill : structureFor(at(setup, end).fit, setup.direction);
}

std::vector<FitRow> fitRowsOf(const Setup& setup, const Phrases& phrases) {
  std::vector<int> men(kMen - kOffense);
  std::iota(men.begin(), men.end(), static_cast<int>(kOffense));
  std::stable_sort(men.begin(), men.end(), [&](int a, int b) {
    const Man &first = at(setup, a), &second = at(setup, b);
    return std::tie(first.fit.level, second.spot.x) < std::tie(second.fit.level, first.spot.x);
  });
  std::vector<FitRow> rows;
  rows.reserve(men.size());
  for (const int man : men) rows.push_back(rowOf(setup, phrases, at(setup, man)));
  return rows;
}

Tape typicalTape(const Setup& setup, const Model& model, std::uint64_t first_seed, int threads) {
  Setup plain = setup;
  plain.mix = {};
  return playTape(plain, model, typicalSeed(sightingsOf(plain, model, first_seed, kPictureReps, threads)));
}

FitSheet fitSheetOf(const Setup& setup, const Phrases& phrases, const Model& model, std::uint64_t first_seed,
                    int n, int threads) {
  FitSheet sheet;
  sheet.drawn = typicalTape(setup, model, first_seed, threads);
  sheet.title = setup.title;
  sheet.subtitle = lookLine(setup);
  sheet.n = n;
  const Sightings seen = sightingsOf(setup, model, first_seed, n, threads);
  sheet.gains = distributionOf(seen.reps, {setup.down, setup.distance});
  sheet.rows = fitRowsOf(setup, phrases);
  sheet.concerns = concernsOf(setup);
  sheet.levels = levelsOf(setup, phrases, seen);
  return sheet;
}

MasterCell masterCellOf(const Setup& setup, const Distribution& gains) {
  MasterCell cell;
  const Cast cast = castOf(setup);
  const std::string edge = structureOf(setup) == Structure::spill ? "spills" : "boxes";
  if (cast.end != kNobody) cell.fits = fmt::format("{} {}", at(setup, cast.end).id, edge);
  for (const auto& part :
       {named(setup, FitRole::first_backer, "first"), named(setup, FitRole::overlap_backer, "overlap"),
        named(setup, FitRole::force, "force"), named(setup, FitRole::alley, "alley"),
        named(setup, FitRole::cutback, "cutback")})
    if (!part.empty()) cell.fits += ", " + part;
  cell.mean = gains.mean;
  cell.stuffed = gains.stuffed, cell.ten_plus = gains.ten_plus;
  const auto gaps = gapsOf(setup);
  cell.sound = std::none_of(gaps.begin(), gaps.end(), [](const GapOwner& gap) { return gap.owners.empty(); });
  return cell;
}

}  // namespace gapsound
