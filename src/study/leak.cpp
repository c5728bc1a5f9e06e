#include "study/leak.hpp"

#include <algorithm>
#include <cmath>
#include <compare>
#include <map>
#include <numeric>
#include <set>

#include "study/place_density.hpp"
#include "study/scatter.hpp"

namespace gapsound {
namespace {

// Off the diagonal less than was found, and more of everybody's own: reps scatter in lumps, film is read to
// half a yard. Both found on reps with a known mistake.
constexpr double kShrink = 0.2, kFloor = 0.5;
constexpr double kOwn = 0.5;       // weight of a look's own scatter; the rest is that of all
constexpr double kGainFrom = 6.0;  // yd added to a gain before the logarithm: long runs differ less
constexpr double kMark = 0.5;      // standard deviations below which a mistake leaves no mark
// All mistakes are tried on few reps, the likeliest of them on more, and of those the likeliest in several
// amounts.
constexpr std::size_t kLikely = 20, kRefined = 6;
constexpr double kFirstReps = 0.375, kMoreReps = 1.5;          // times LeakSearch::n
constexpr std::array<double, 4> kAmounts{0.5, 1.0, 1.5, 2.0};  // of the usual one

double gainValue(double yards) { return std::log(std::max(yards + kGainFrom, 0.5)); }

/// The numbers that were seen, in one order for picture and rep.
std::vector<double> rowOf(const Seen& seen, const Seen& of) {
  std::vector<double> row;
  for (std::size_t k = 0; k < kMen; ++k) {
    if (seen.men[k].x) row.push_back(*of.men[k].x);
    if (seen.men[k].y) row.push_back(*of.men[k].y);
  }
  if (seen.yards) row.push_back(gainValue(*of.yards));
  return row;
}

double distance2(const std::vector<double>& a, const std::vector<double>& b) {
  double sum = 0.0;
  for (std::size_t k = 0; k < a.size(); ++k) sum += (a[k] - b[k]) * (a[k] - b[k]);
  return sum;
}

/// Reps of one look as rows of what was seen, and how often the states came about.
struct Sample {
  std::vector<double> rows;
  std::vector<char> end, backer;  // rep by rep: as seen
};

double logShare(const std::vector<char>& hits) {
  const auto n = static_cast<double>(hits.size());
  return std::log((std::accumulate(hits.begin(), hits.end(), 0.0) + 0.5) / (n + 1.0));
}

void keep(const Seen& seen, const Tape& tape, std::size_t rep, Sample& sample) {
  const std::vector<double> row = rowOf(seen, seenOf(tape, seen.t));
  std::copy(row.begin(), row.end(), sample.rows.begin() + static_cast<std::ptrdiff_t>(rep * row.size()));
  if (!seen.end && !seen.backer) return;
  const Sighting sighting = sightingOf(tape);
  sample.end[rep] = seen.end && sighting.end == seen.end;
  sample.backer[rep] = seen.backer && sighting.backer == seen.backer;
}

/// Lengthens samples of the looks, all of one length, to n reps of the seeds from `first_seed` on.
void lengthen(std::vector<Sample>& samples, const Seen& seen, const std::vector<Setup>& looks,
              const Model& model, std::uint64_t first_seed, std::size_t n, int threads,
              const Progress& progress) {
  const std::size_t had = samples.empty() ? n : samples.front().end.size(), dims = rowOf(seen, seen).size();
  if (had >= n) return;
  for (Sample& sample : samples) sample.rows.resize(n * dims), sample.end.resize(n), sample.backer.resize(n);
  visitAll(
      looks, model, first_seed + had, static_cast<int>(n - had), threads,
      [&](std::size_t look, std::size_t rep, const Tape& tape) {
        keep(seen, tape, had + rep, samples[look]);
      },
      progress);
}

/// Rows turned by the scatter of all looks.
std::vector<std::vector<double>> turnedRows(const Scatter& scatter, const std::vector<double>& rows) {
  std::vector<std::vector<double>> turned;
  const std::size_t dims = scatter.dims();
  for (std::size_t at = 0; at + dims <= rows.size(); at += dims)
    turned.push_back(scatter.whitened(std::span(rows).subspan(at, dims)));
  return turned;
}

/// How far two looks' means lie apart. The product of two halves' differences has no share of their noise.
double apart(const std::vector<std::vector<double>>& a, const std::vector<std::vector<double>>& b) {
  double sum = 0.0;
  for (std::size_t i = 0; i < a.front().size(); ++i) {
    std::array<double, 2> half{};
    for (std::size_t r = 0; r < a.size(); ++r) half[r % 2] += a[r][i] - b[r][i];
    sum += half[0] * half[1];
  }
  const double reps = 0.5 * static_cast<double>(a.size());
  return std::sqrt(std::max(sum, 0.0)) / reps;
}

/// Likelihood of the picture under the look's own mean and scatter; rows turned by the scatter of all.
double likelihoodOf(const std::vector<double>& target, const std::vector<std::vector<double>>& rows) {
  std::vector<double> flat;
  for (const auto& row : rows) flat.insert(flat.end(), row.begin(), row.end());
  const std::vector<double> mean = meanRow(flat, target.size());
  Scatter own(target.size());
  own.add(flat);
  own.finish(kOwn, 0.0, 1.0 - kOwn);
  return -0.5 * distance2(own.whitened(target), own.whitened(mean)) - own.halfLogDeterminant();
}

Agreement agreementOf(const Seen& seen, const std::vector<double>& target, const Sample& sample,
                      const std::vector<std::vector<double>>& rows,
                      const std::vector<std::vector<double>>& first) {
  Agreement found;
  found.off.assign(sample.end.size(), 0.0);
  if (!target.empty()) {
    found.likelihood = likelihoodOf(target, rows);
    found.mark = apart(rows, first);
    for (std::size_t r = 0; r < rows.size(); ++r) found.off[r] = distance2(target, rows[r]);
  }
  if (seen.end) found.states += logShare(sample.end);
  if (seen.backer) found.states += logShare(sample.backer);
  found.likelihood += found.states;
  return found;
}

/// Where one man stood in each rep; both numbers of his place were seen.
std::vector<Vec2> placesOf(const Seen& seen, const Sample& sample, std::size_t dims, int man) {
  std::size_t column = 0;
  for (std::size_t k = 0; k < static_cast<std::size_t>(man); ++k)
    column += (seen.men[k].x ? 1 : 0) + (seen.men[k].y ? 1 : 0);
  std::vector<Vec2> places;
  for (std::size_t at = 0; at + dims <= sample.rows.size(); at += dims)
    places.push_back({sample.rows[at + column], sample.rows[at + column + 1]});
  return places;
}

/// What the shape of his places adds to the likelihood of a look in which `man` errs, against the first look.
double shapeOf(const Seen& seen, const Sample& sample, const Sample& first, std::size_t dims, int man) {
  if (man == kNobody) return 0.0;
  const Seen::Place& place = seen.men[static_cast<std::size_t>(man)];
  if (!place.x || !place.y) return 0.0;
  const Vec2 at{*place.x, *place.y};
  return shapeGain(placesOf(seen, sample, dims, man), at, kFloor) -
         shapeGain(placesOf(seen, first, dims, man), at, kFloor);
}

/// What is known of one man and kind.
struct Candidate {
  Mistake mistake;
  double likelihood = 0.0;
  bool marked = true;
};

/// All looks against the first, as Comparison says.
std::vector<Agreement> agreementsOf(const Seen& seen, const std::vector<Sample>& samples,
                                    const std::vector<int>& erring) {
  const std::vector<double> picture = rowOf(seen, seen);
  Scatter scatter(picture.size());
  std::vector<std::vector<double>> first;
  std::vector<double> target;
  if (!picture.empty()) {
    for (const Sample& sample : samples) scatter.add(sample.rows);
    scatter.finish(1.0, kShrink, kFloor);
    first = turnedRows(scatter, samples.front().rows);
    target = scatter.whitened(picture);
  }
  std::vector<Agreement> found;
  for (const Sample& sample : samples)
    found.push_back(
        agreementOf(seen, target, sample, picture.empty() ? first : turnedRows(scatter, sample.rows), first));
  for (std::size_t k = 0; k < erring.size(); ++k)
    found[k].likelihood += shapeOf(seen, samples[k], samples.front(), picture.size(), erring[k]);
  return found;
}

/// A stretch of the whole progress.
Progress stretch(const Progress& progress, double from, double to) {
  if (!progress) return {};
  return [&progress, from, to](double share) { return progress(from + (to - from) * share); };
}

/// Reps of the look and of the look with single mistakes; what one stage of the search has played the next
/// does not play again.
class Search {
 public:
  Search(const Setup& look, const Seen& seen, const Model& model, const LeakSearch& how)
      : look_(look), seen_(seen), model_(model), how_(how) {}

  /// The look as it is and with each of the mistakes, on n reps.
  std::vector<Agreement> compared(const std::vector<Mistake>& mistakes, int n, const Progress& progress) {
    const auto reps = static_cast<std::size_t>(n);
    std::vector<Key> keys{{}};
    for (const Mistake& mistake : mistakes)
      keys.push_back({mistake.man, mistake.fault.kind, mistake.fault.amount});
    play(keys, reps, progress);
    std::vector<Sample> samples;
    std::vector<int> erring;
    for (const Key& key : keys) samples.push_back(first(played_[key], reps)), erring.push_back(key.man);
    return agreementsOf(seen_, samples, erring);
  }

 private:
  struct Key {
    int man = kNobody;
    FaultKind kind{};
    double amount = 0.0;
    auto operator<=>(const Key&) const = default;
  };

  [[nodiscard]] Setup with(const Key& key) const {
    return key.man == kNobody ? look_ : withMistake(look_, {key.man, {key.kind, key.amount}});
  }
  [[nodiscard]] Sample first(const Sample& sample, std::size_t reps) const {
    const auto cut = static_cast<std::ptrdiff_t>(reps);
    const auto rows = static_cast<std::ptrdiff_t>(reps * rowOf(seen_, seen_).size());
    return {{sample.rows.begin(), sample.rows.begin() + rows},
            {sample.end.begin(), sample.end.begin() + cut},
            {sample.backer.begin(), sample.backer.begin() + cut}};
  }
  void play(const std::vector<Key>& keys, std::size_t reps, const Progress& progress) {
    std::map<std::size_t, std::set<Key>> lacking;  // by how many they have
    double all = 0.0, done = 0.0;
    for (const Key& key : keys)
      if (const std::size_t has = played_[key].end.size(); has < reps && lacking[has].insert(key).second)
        all += static_cast<double>(reps - has);
    for (const auto& [has, group] : lacking) {
      const double share = static_cast<double>((reps - has) * group.size()) / all;
      std::vector<Setup> looks;
      std::vector<Sample> samples;
      for (const Key& key : group) looks.push_back(with(key)), samples.push_back(std::move(played_[key]));
      lengthen(samples, seen_, looks, model_, how_.first_seed, reps, how_.threads,
               stretch(progress, done, done + share));
      done += share;
      std::size_t k = 0;
      for (const Key& key : group) played_[key] = std::move(samples[k++]);
    }
  }

  const Setup& look_;
  const Seen& seen_;
  const Model& model_;
  LeakSearch how_;
  std::map<Key, Sample> played_;
};

std::vector<Mistake> amountsOf(const Mistake& usual) {
  const FaultFacts& facts = factsOf(usual.fault.kind);
  if (facts.unit == "share") return {usual};
  std::vector<Mistake> found;
  for (const double times : kAmounts)
    if (times * facts.usual <= facts.most)
      found.push_back({usual.man, {usual.fault.kind, times * facts.usual}});
  return found;
}

/// Of the first `count`; the others were judged on less and stay behind them.
void likeliestFirst(std::vector<Candidate>& candidates, std::size_t count) {
  std::stable_sort(candidates.begin(), candidates.begin() + static_cast<std::ptrdiff_t>(count),
                   [](const Candidate& a, const Candidate& b) {
                     return a.marked != b.marked ? a.marked : a.likelihood > b.likelihood;
                   });
}

double logSum(const std::vector<double>& logs) {
  const double most = *std::max_element(logs.begin(), logs.end());
  double sum = 0.0;
  for (const double value : logs) sum += std::exp(value - most);
  return most + std::log(sum);
}

/// Likelihoods against that of the look without a mistake.
struct Ranking {
  std::vector<Candidate> candidates;
  int unmarked = 0;
};

Ranking firstLook(const Setup& look, Search& search, int n, const Progress& progress) {
  std::vector<Mistake> mistakes;
  for (const Mistakes& single : everyMistake(look, false)) mistakes.push_back(single.front());
  const auto all = search.compared(mistakes, n, progress);
  Ranking ranking;
  for (std::size_t k = 0; k < mistakes.size(); ++k) {
    const Agreement& it = all[k + 1];
    const bool marked = it.mark >= kMark || std::abs(it.states - all[0].states) >= kMark;
    ranking.candidates.push_back({mistakes[k], it.likelihood - all[0].likelihood, marked});
    ranking.unmarked += !marked;
  }
  likeliestFirst(ranking.candidates, ranking.candidates.size());
  return ranking;
}

/// More reps of the likeliest, in one amount or in several; each man and kind then counts with the mean over
/// amounts.
void refine(std::vector<Candidate>& candidates, std::size_t most, bool in_amounts, Search& search, int n,
            const Progress& progress) {
  const std::size_t count = std::min(most, candidates.size());
  std::vector<Mistake> tried;
  std::vector<std::size_t> owner;
  for (std::size_t k = 0; k < count; ++k) {
    const Mistake& usual = candidates[k].mistake;
    for (const Mistake& mistake : in_amounts ? amountsOf(usual) : std::vector<Mistake>{usual})
      tried.push_back(mistake), owner.push_back(k);
  }
  const auto all = search.compared(tried, n, progress);
  for (std::size_t k = 0; k < count; ++k) {
    std::vector<double> logs;
    double best = -1e300;
    for (std::size_t m = 0; m < tried.size(); ++m) {
      if (owner[m] != k) continue;
      logs.push_back(all[m + 1].likelihood - all[0].likelihood);
      if (logs.back() > best) best = logs.back(), candidates[k].mistake = tried[m];
    }
    candidates[k].likelihood = logSum(logs) - std::log(static_cast<double>(logs.size()));
  }
  likeliestFirst(candidates, count);
}

LeakResult weighed(const Setup& look, const Ranking& ranking) {
  LeakResult result;
  result.unmarked = ranking.unmarked;
  std::vector<double> logs;
  for (const Candidate& c : ranking.candidates)
    if (c.marked) logs.push_back(c.likelihood);
  logs.push_back(std::log(static_cast<double>(std::max<std::size_t>(logs.size(), 1))));  // nobody
  const double all = logSum(logs);
  result.sound = std::exp(logs.back() - all);
  for (const Candidate& c : ranking.candidates) {
    result.causes.push_back({c.mistake, c.marked ? std::exp(c.likelihood - all) : 0.0});
    const int level = look.men[static_cast<std::size_t>(c.mistake.man)].fit.level;
    result.by_level[static_cast<std::size_t>(level - 1)] += result.causes.back().weight;
  }
  return result;
}

}  // namespace

bool isEmpty(const Seen& seen) { return rowOf(seen, seen).empty() && !seen.end && !seen.backer; }

Seen seenOf(const Tape& tape, double t) {
  Seen seen;
  seen.t = t;
  const Frame frame = frameAt(tape, t);
  for (std::size_t k = 0; k < kMen; ++k) seen.men[k] = {frame.men[k].pos.x, frame.men[k].pos.y};
  seen.yards = tape.record.yards;
  return seen;
}

Comparison::Comparison(const Seen& seen, const std::vector<Setup>& looks, const Model& model,
                       std::uint64_t first_seed, int n, int threads, const Progress& progress) {
  std::vector<Sample> samples(looks.size());
  lengthen(samples, seen, looks, model, first_seed, static_cast<std::size_t>(n), threads, progress);
  looks_ = agreementsOf(seen, samples, {});
}

LeakResult causesOf(const Setup& look, const Seen& seen, const Model& model, const LeakSearch& how,
                    const Progress& progress) {
  Search search(look, seen, model, how);
  const auto reps = [&](double times) { return std::max(static_cast<int>(times * how.n), 2); };
  Ranking ranking = firstLook(look, search, reps(kFirstReps), stretch(progress, 0.0, 0.5));
  refine(ranking.candidates, kLikely, false, search, reps(kMoreReps), stretch(progress, 0.5, 0.8));
  refine(ranking.candidates, kRefined, true, search, reps(1.0), stretch(progress, 0.8, 1.0));
  return weighed(look, ranking);
}

Setup withMistake(Setup look, const Mistake& mistake) {
  look.men[static_cast<std::size_t>(mistake.man)].faults.push_back(mistake.fault);
  return look;
}

}  // namespace gapsound
