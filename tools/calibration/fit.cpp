#include <fmt/core.h>
#include <fnmatch.h>
#include <nlopt.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <memory>

#include "base/error.hpp"
#include "io/assets.hpp"
#include "io/atomic_file.hpp"
#include "io/model_file.hpp"
#include "set.hpp"

using namespace gapsound;

namespace calibration {
namespace {

constexpr int kSearchReps = 60;
constexpr double kFirstStep = 0.12;  // of a constant's range
constexpr double kTether = 0.5;      // price of moving one constant through its whole range

std::string modelFile(const Options& options) {
  return options.model.empty() ? assetPath("model.json") : options.model;
}

/// A constant the search may move.
struct Knob {
  ModelField field;
  ConstantRange range;
  double start = 0.0;
  [[nodiscard]] double valueAt(double share) const {
    const double value = range.low + share * (range.high - range.low);
    const double grid = std::pow(10.0, std::floor(std::log10(std::max(range.high - range.low, 1e-9))) - 3.0);
    return std::clamp(std::round(value / grid) * grid, range.low,
                      range.high);  // no more digits than it is worth
  }
  [[nodiscard]] double share(double value) const { return (value - range.low) / (range.high - range.low); }
};

bool asked(const Options& options, const std::string& name) {
  return options.constants.empty() ||
         std::any_of(options.constants.begin(), options.constants.end(),
                     [&](const std::string& p) { return fnmatch(p.c_str(), name.c_str(), 0) == 0; });
}

std::vector<Knob> knobsFor(const Ground& ground) {
  const std::string file = modelFile(ground.options);
  const auto ranges = constantRanges(file);
  const auto estimates = estimatedConstants(file);
  std::vector<Knob> knobs;
  for (const ModelField& field : kModelFields) {
    const std::string name(field.name);
    if (std::find(estimates.begin(), estimates.end(), name) == estimates.end() ||
        !asked(ground.options, name))
      continue;
    knobs.push_back({field, ranges.at(name), ground.model.*field.value});
  }
  return knobs;
}

/// Both halves' cards with one set of constants.
struct Cards {
  std::vector<CardLine> fit, judge;
};

/// The distance of the fit half's card from its bands as a function of the knobs, on the same seeds every
/// time.
class Search {
 public:
  Search(const Ground& ground, std::vector<Knob> knobs, int n)
      : ground_(ground), knobs_(std::move(knobs)), n_(n) {}

  [[nodiscard]] Model modelAt(const std::vector<double>& shares) const {
    Model model = ground_.model;
    for (std::size_t k = 0; k < knobs_.size(); ++k)
      model.*knobs_[k].field.value = knobs_[k].valueAt(shares[k]);
    return model;
  }
  [[nodiscard]] Cards cards(const Model& model, bool judge_too) const {
    const Ground moved{ground_.options, ground_.library, model};
    auto looks = setLooks(moved, Level::pro);
    if (!judge_too) std::erase_if(looks, [](const SetLook& look) { return look.judges; });
    const SetReps reps = playSet(looks, moved, model, n_);
    Cards cards;
    cards.fit = calibrationCard(halfOf(looks, reps, false));
    if (judge_too) cards.judge = calibrationCard(halfOf(looks, reps, true));
    return cards;
  }
  /// From where the constants stand; NLopt's subplex (Rowan 1990), which needs no slopes and bears steps in
  /// what it searches.
  [[nodiscard]] std::vector<double> best(int evaluations) {
    std::vector<double> shares;
    for (const Knob& knob : knobs_) shares.push_back(knob.share(knob.start));
    best_ = shares;
    const auto n = static_cast<unsigned>(knobs_.size());
    const std::unique_ptr<nlopt_opt_s, void (*)(nlopt_opt)> opt(nlopt_create(NLOPT_LN_SBPLX, n),
                                                                nlopt_destroy);
    nlopt_set_min_objective(opt.get(), &Search::value, this);
    nlopt_set_lower_bounds1(opt.get(), 0.0);
    nlopt_set_upper_bounds1(opt.get(), 1.0);
    nlopt_set_initial_step1(opt.get(), kFirstStep);
    nlopt_set_maxeval(opt.get(), evaluations);
    double least = 0.0;
    nlopt_optimize(opt.get(), shares.data(), &least);
    return best_;
  }
  [[nodiscard]] const std::vector<Knob>& knobs() const { return knobs_; }
  [[nodiscard]] int evaluations() const { return evaluations_; }

 private:
  static double value(unsigned n, const double* shares, double*, void* self) {
    return static_cast<Search*>(self)->costOf({shares, shares + n});
  }
  double costOf(const std::vector<double>& shares) {
    double cost = distanceFromBands(cards(modelAt(shares), false).fit);
    for (std::size_t k = 0; k < knobs_.size(); ++k) {
      const double moved = shares[k] - knobs_[k].share(knobs_[k].start);
      cost += kTether * moved * moved;
    }
    ++evaluations_;
    if (evaluations_ > 1 && cost >= least_) return cost;
    least_ = cost;
    best_ = shares;
    fmt::print(stderr, "card {}: distance {:.2f}\n", evaluations_, cost);
    return cost;
  }

  const Ground& ground_;
  std::vector<Knob> knobs_;
  int n_;
  int evaluations_ = 0;
  double least_ = 0.0;
  std::vector<double> best_;
};

std::map<std::string, double> movedConstants(const Search& search, const std::vector<double>& shares) {
  std::map<std::string, double> moved;
  for (std::size_t k = 0; k < shares.size(); ++k) {
    const Knob& knob = search.knobs()[k];
    const double value = knob.valueAt(shares[k]);
    if (std::abs(value - knob.start) > 1e-3 * (knob.range.high - knob.range.low))
      moved[std::string(knob.field.name)] = value;
  }
  return moved;
}

void printMoved(const Search& search, const std::map<std::string, double>& moved) {
  fmt::print("{:24}{:>10}{:>10}{:>10}{:>10}\n", "constant", "was", "is", "low", "high");
  for (const Knob& knob : search.knobs()) {
    const auto it = moved.find(std::string(knob.field.name));
    if (it == moved.end()) continue;
    fmt::print("{:24}{:>10.4g}{:>10.4g}{:>10.4g}{:>10.4g}\n", it->first, knob.start, it->second,
               knob.range.low, knob.range.high);
  }
  fmt::print("{} of {} constants moved over {} cards\n\n", moved.size(), search.knobs().size(),
             search.evaluations());
}

int missesOf(const std::vector<CardLine>& card) {
  return static_cast<int>(
      std::count_if(card.begin(), card.end(), [](const CardLine& line) { return !line.passes(); }));
}

void printBothCards(const Cards& before, const Cards& after) {
  fmt::print("{:42}{:>8}{:>8}{:>10}{:>8}   {:16}\n", "", "fit was", "is", "judge was", "is", "band");
  for (std::size_t k = 0; k < after.judge.size(); ++k) {
    const CardLine& line = after.judge[k];
    if (!line.band) continue;
    fmt::print("{:42}{:>8}{:>8}{:>10}{:>8}   {:16}{}\n", line.name, figureOf(before.fit[k]),
               figureOf(after.fit[k]), figureOf(before.judge[k]), figureOf(line), bandOf(line),
               verdictOf(line));
  }
  fmt::print("misses: fit {} to {}, judge {} to {}; distance: fit {:.2f} to {:.2f}, judge {:.2f} to {:.2f}\n",
             missesOf(before.fit), missesOf(after.fit), missesOf(before.judge), missesOf(after.judge),
             distanceFromBands(before.fit), distanceFromBands(after.fit), distanceFromBands(before.judge),
             distanceFromBands(after.judge));
}

}  // namespace

void fitConstants(const Ground& ground, bool n_given) {
  const std::string file = modelFile(ground.options);
  if (ground.options.write) requireWritable(file);
  Search search(ground, knobsFor(ground), n_given ? ground.options.n : kSearchReps);
  if (search.knobs().empty())
    throw InputError("calibrate", "--constants", ground.options.constants.front(),
                     "a pattern that matches an estimate");
  const auto shares = search.best(ground.options.evaluations);
  const auto moved = movedConstants(search, shares);
  Model found = ground.model;
  for (const Knob& knob : search.knobs()) {
    const auto it = moved.find(std::string(knob.field.name));
    if (it != moved.end()) found.*knob.field.value = it->second;
  }
  printMoved(search, moved);
  printBothCards(search.cards(ground.model, true), search.cards(found, true));
  if (!ground.options.write) return;
  writeAtomically(file, withValues(readWhole(file), moved));
  fmt::print("{} written\n", file);
}

}  // namespace calibration
