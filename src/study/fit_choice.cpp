#include "study/fit_choice.hpp"

#include <algorithm>
#include <cmath>

#include "analysis/story.hpp"
#include "base/tick.hpp"

namespace gapsound {
namespace {

constexpr int kFewest = 12;         // reps in which a state must come about to pick deeds
constexpr double kSamePlace = 1.1;  // yd; two fits that end closer are one answer

FitRole roleOf(const Setup& setup, int man) {
  const FitJob& fit = setup.men[static_cast<std::size_t>(man)].fit;
  return setup.direction > 0 ? fit.if_right : fit.if_left;
}

bool isBacker(FitRole role) {
  return role == FitRole::first_backer || role == FitRole::fill_backer || role == FitRole::overlap_backer;
}

/// The row of the table that his role reads; null for the others.
Fit* rowOf(FitTable& fits, FitRole role, Structure structure) {
  const auto s = static_cast<std::size_t>(structure);
  switch (role) {
    case FitRole::first_backer:
      return fits.first_backer[s];
    case FitRole::fill_backer:
      return fits.fill_backer[s];
    case FitRole::overlap_backer:
      return fits.overlap_backer[s];
    case FitRole::alley:
      return fits.alley;
    default:
      return nullptr;
  }
}

int statesOf(FitRole role) { return isBacker(role) ? kEndStates : kBackerStates; }

struct Seen {
  int state = 0;  // 0: nothing, or he goes by his call
  double t = 0.0;
};

bool readsAState(FitRole role) { return isBacker(role) || role == FitRole::alley; }

/// When a man who goes by his call knew where the run goes.
Seen knewTheRun(const Story& story, int man) {
  const Event* read = story.last(Happening::saw_key, man, story.decisiveTick());
  return {0, seconds(read != nullptr ? read->tick : std::max(0, story.tape().record.handoff_tick))};
}

Seen seenBy(const Tape& tape, int man, FitRole role) {
  const Story story(tape);
  if (!readsAState(role)) return knewTheRun(story, man);
  const Happening what = isBacker(role) ? Happening::end_state : Happening::backer_state;
  const Event* last = story.last(what, man, story.decisiveTick());
  if (last == nullptr) return {};
  return {last->code, seconds(last->tick)};
}

/// Other fits a man of the role might choose, whatever he sees.
std::vector<Fit> otherFits(FitRole role) {
  using F = Fit;
  if (isBacker(role))
    return {F::called, F::over_top, F::new_edge, F::inside, F::inside_half, F::tight_double, F::hang};
  if (role == FitRole::alley) return {F::called, F::alley, F::insert, F::cutback_window};
  return {};
}

/// Mistakes that take a man of the role to another place, far enough to be told apart in a picture.
std::vector<Fault> otherPlaces(FitRole role) {
  using F = FaultKind;
  switch (role) {
    case FitRole::first_backer:
    case FitRole::fill_backer:
    case FitRole::overlap_backer:
      return {{F::scrape_wide, 3.5}, {F::over_run, 3.5}, {F::flowed, 1.0}, {F::too_deep, 3.0}};
    case FitRole::alley:
      return {{F::over_run, 3.5}, {F::too_deep, 4.0}, {F::inside_lost, 3.0}};
    case FitRole::cutback:
      return {{F::flowed, 1.0}, {F::over_run, 4.0}, {F::too_deep, 4.0}};
    case FitRole::force:
      return {{F::inside_lost, 3.0}, {F::too_deep, 4.0}, {F::over_run, 3.5}};
    case FitRole::edge:
      return {{F::upfield, 2.5}, {F::crossed_inside, 2.5}, {F::washed, 3.0}, {F::kicked_out, 2.5}};
    case FitRole::back_edge:
      return {{F::upfield, 3.0}, {F::crossed_inside, 2.5}, {F::washed, 3.0}};
    case FitRole::interior:
      return {{F::upfield, 3.0}, {F::crossed_inside, 2.5}, {F::washed, 3.0}, {F::reached, 1.5}};
    default:
      return {};
  }
}

/// What he might do instead, whatever he sees.
std::vector<FitDeed> deedsOf(FitRole role, Fit right) {
  std::vector<FitDeed> deeds;
  for (const Fit fit : otherFits(role))
    if (fit != right) deeds.push_back({fit, {}});
  for (const Fault& fault : otherPlaces(role)) deeds.push_back({right, fault});
  return deeds;
}

struct Played {
  double yards = 0.0;
  Vec2 place;
};
using Reps = std::vector<Played>;

Played playedBy(const Tape& tape, int man) {
  const Story story(tape);
  return {std::min(tape.record.yards, kLongestCounted), story.pose(man, story.decisiveTick()).pos};
}

Reps playWith(const Setup& setup, const FitChoice& choice, const FitDeed& deed, const Model& model,
              const std::vector<std::uint64_t>& seeds, int threads) {
  Reps played(seeds.size());
  visitSeeds(withDeed(setup, choice, deed), model, seeds, threads,
             [&](std::size_t rep, const Tape& tape) { played[rep] = playedBy(tape, choice.man); });
  return played;
}

std::vector<double> yardsOf(const Reps& played) {
  std::vector<double> yards;
  for (const Played& rep : played) yards.push_back(rep.yards);
  return yards;
}

FitOption optionOf(const FitDeed& deed, const Reps& played, const Reps& right, std::size_t shown) {
  const Paired paired = pairedDifference(yardsOf(right), yardsOf(played));
  return {deed, meanOf(yardsOf(played)), played[shown].place, paired.difference, paired.ci};
}

/// The reps of one state: seeds to pick deeds on, then seeds to judge them on.
struct Case {
  int state = 0;
  std::vector<std::uint64_t> picking, judging;
  std::vector<double> times;  // of the judging ones
};

std::vector<Case> casesOf(const std::vector<Seen>& seen, FitRole role, std::uint64_t first_seed) {
  std::vector<Case> cases;
  const std::size_t third = seen.size() / 3;
  for (int state = readsAState(role) ? 1 : 0; state < (readsAState(role) ? statesOf(role) : 1); ++state) {
    Case found{state, {}, {}, {}};
    for (std::size_t rep = 0; rep < seen.size(); ++rep) {
      if (seen[rep].state != state) continue;
      if (rep < third)
        found.picking.push_back(first_seed + rep);
      else
        found.judging.push_back(first_seed + rep), found.times.push_back(seen[rep].t);
    }
    if (static_cast<int>(std::min(found.picking.size(), found.judging.size())) >= kFewest)
      cases.push_back(found);
  }
  return cases;
}

/// The likeliest rival and the costliest mistakes, from the picking seeds.
std::vector<FitDeed> picked(const Setup& setup, const FitChoice& choice, const Model& model, const Case& reps,
                            int threads) {
  struct Tried {
    FitDeed deed;
    double cost;
  };
  const Reps right = playWith(setup, choice, choice.right.deed, model, reps.picking, threads);
  std::vector<Tried> tried;
  for (const FitDeed& deed : deedsOf(choice.role, choice.right.deed.fit)) {
    const Reps played = playWith(setup, choice, deed, model, reps.picking, threads);
    double apart = 0.0;
    for (std::size_t i = 0; i < played.size(); ++i)
      apart += distance(played[i].place, right[i].place) / static_cast<double>(played.size());
    if (apart >= 0.7 * kSamePlace) tried.push_back({deed, meanOf(yardsOf(played)) - meanOf(yardsOf(right))});
  }
  std::stable_sort(tried.begin(), tried.end(),
                   [](const Tried& a, const Tried& b) { return a.cost < b.cost; });
  std::vector<FitDeed> deeds;
  for (std::size_t i = 0; i < tried.size(); ++i)
    if (i == 0 || i + 4 > tried.size()) deeds.push_back(tried[i].deed);
  return deeds;
}

bool inSight(Vec2 place) { return std::abs(place.x) < 8.5 && -3.5 < place.y && place.y < 8.5; }

/// How poor a rep is for showing: an odd gain, a late moment, places out of sight or all in one.
double oddness(std::size_t rep, double median, double t, const Reps& right, const std::vector<Reps>& others) {
  double odd =
      std::abs(right[rep].yards - median) + (t > 2.3 ? 6.0 : 0.0) + (inSight(right[rep].place) ? 0.0 : 20.0);
  for (const Reps& other : others) {
    const double apart = distance(other[rep].place, right[rep].place);
    odd += apart < 1.2 * kSamePlace || apart > 6.5 || !inSight(other[rep].place) ? 4.0 : 0.0;
  }
  return odd;
}

/// The rep to show: the plainest one.
std::size_t shownRep(const Case& reps, const Reps& right, const std::vector<Reps>& others) {
  const double median = medianOf(yardsOf(right));
  std::size_t best = 0;
  for (std::size_t rep = 1; rep < right.size(); ++rep) {
    const auto odd = [&](std::size_t k) { return oddness(k, median, reps.times[k], right, others); };
    if (odd(rep) < odd(best)) best = rep;
  }
  return best;
}

/// The choice a man had in one state of the man he reads, nothing judged yet.
FitChoice choiceIn(const Setup& setup, int man, FitRole role, int state) {
  FitTable fits = setup.fits;
  const FitJob& job = setup.men[static_cast<std::size_t>(man)].fit;
  const Fit* row = rowOf(fits, role, structureFor(job, setup.direction));
  FitChoice choice;
  choice.man = man, choice.role = role;
  if (row != nullptr) choice.right.deed.fit = row[state];
  if (isBacker(role)) choice.end = static_cast<EndState>(state);
  if (role == FitRole::alley) choice.backer = static_cast<BackerState>(state);
  return choice;
}

void judge(FitChoice& choice, const Setup& setup, const Model& model, const Case& reps, int threads) {
  const auto deeds = picked(setup, choice, model, reps, threads);
  const Reps right = playWith(setup, choice, choice.right.deed, model, reps.judging, threads);
  std::vector<Reps> others;
  others.reserve(deeds.size());
  for (const FitDeed& deed : deeds)
    others.push_back(playWith(setup, choice, deed, model, reps.judging, threads));
  const std::size_t shown = shownRep(reps, right, others);
  choice.n = static_cast<int>(reps.judging.size());
  choice.seed = reps.judging[shown], choice.t = reps.times[shown];
  choice.right = optionOf(choice.right.deed, right, right, shown);
  for (std::size_t i = 0; i < deeds.size(); ++i)
    choice.others.push_back(optionOf(deeds[i], others[i], right, shown));
  std::stable_sort(choice.others.begin(), choice.others.end(),
                   [](const FitOption& a, const FitOption& b) { return a.difference < b.difference; });
}

double widest(const FitChoice& choice) { return choice.others.empty() ? 0.0 : choice.others.back().ci.low; }

}  // namespace

bool FitDeed::operator==(const FitDeed& other) const {
  const bool same = fit == other.fit && fault.has_value() == other.fault.has_value();
  return same && (!fault || (fault->kind == other.fault->kind && fault->amount == other.fault->amount));
}

std::vector<FitOption> FitChoice::wrong(double margin) const {
  std::vector<FitOption> found;
  for (const FitOption& option : others) {
    const bool apart = std::all_of(found.begin(), found.end(), [&](const FitOption& other) {
      return distance(other.place, option.place) >= kSamePlace;
    });
    const bool costs = option.difference >= margin && option.ci.low > 0.0 && inSight(option.place);
    if (costs && apart && distance(option.place, right.place) >= kSamePlace) found.push_back(option);
  }
  return found;
}

bool FitChoice::clear(double margin) const {
  return !others.empty() && others.front().difference > -0.25 && !wrong(margin).empty();
}

Setup withDeed(const Setup& setup, const FitChoice& choice, const FitDeed& deed) {
  Setup other = setup;
  Man& man = other.men[static_cast<std::size_t>(choice.man)];
  if (deed.fault) man.faults.push_back(*deed.fault);
  Fit* row = rowOf(other.fits, choice.role, structureFor(man.fit, setup.direction));
  const int state = choice.end      ? static_cast<int>(*choice.end)
                    : choice.backer ? static_cast<int>(*choice.backer)
                                    : 0;
  if (row != nullptr && state > 0) row[state] = deed.fit;
  return other;
}

std::vector<FitChoice> choicesOf(const Setup& setup, int man, const Model& model, std::uint64_t first_seed,
                                 int n, int threads) {
  const FitRole role = roleOf(setup, man);
  if (deedsOf(role, Fit::called).empty()) return {};
  std::vector<Seen> seen(static_cast<std::size_t>(std::max(n, 0)));
  visitAll({setup}, model, first_seed, n, threads,
           [&](std::size_t, std::size_t rep, const Tape& tape) { seen[rep] = seenBy(tape, man, role); });
  std::vector<FitChoice> choices;
  for (const Case& reps : casesOf(seen, role, first_seed)) {
    FitChoice choice = choiceIn(setup, man, role, reps.state);
    judge(choice, setup, model, reps, threads);
    choices.push_back(std::move(choice));
  }
  std::stable_sort(choices.begin(), choices.end(),
                   [](const FitChoice& a, const FitChoice& b) { return widest(a) > widest(b); });
  return choices;
}

std::vector<OtherPlace> otherPlacesIn(const Tape& tape, int man, const Model& model, double margin) {
  constexpr std::size_t kMostPlaces = 3;
  const FitRole role = roleOf(tape.setup, man);
  const Seen seen = seenBy(tape, man, role);
  if (readsAState(role) && seen.state == 0) return {};
  const FitChoice choice = choiceIn(tape.setup, man, role, seen.state);
  const Played own = playedBy(tape, man);
  std::vector<OtherPlace> found, apart;
  for (const FitDeed& deed : deedsOf(role, choice.right.deed.fit)) {
    const Played other = playedBy(playTape(withDeed(tape.setup, choice, deed), model, tape.seed), man);
    if (other.yards >= own.yards + margin && inSight(other.place))
      found.push_back({other.place, other.yards});
  }
  std::stable_sort(found.begin(), found.end(),
                   [](const OtherPlace& a, const OtherPlace& b) { return a.yards > b.yards; });
  const auto near = [](Vec2 a, Vec2 b) { return distance(a, b) < kSamePlace; };
  for (const OtherPlace& place : found) {
    const bool taken = std::any_of(apart.begin(), apart.end(),
                                   [&](const OtherPlace& other) { return near(other.place, place.place); });
    if (!taken && !near(place.place, own.place) && apart.size() < kMostPlaces) apart.push_back(place);
  }
  return apart;
}

}  // namespace gapsound
