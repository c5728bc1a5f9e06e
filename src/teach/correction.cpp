#include "teach/correction.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace gapsound {
namespace {

constexpr std::size_t kOthers = 3;
constexpr double kWorthSaying = 0.05, kSure = 0.2;  // weights

std::string hundredths(double weight) { return fmt::format("{:.0f} in 100", 100.0 * weight); }

const std::string& idOf(const Correction& c) {
  return c.look.men[static_cast<std::size_t>(c.leak.causes.front().mistake.man)].id;
}

int levelOf(const Correction& c) {
  return c.look.men[static_cast<std::size_t>(c.leak.causes.front().mistake.man)].fit.level;
}

bool costs(const RepairResult& r) { return r.cost.ci.low > 0.0; }

std::string cheapest(const Correction& c) {
  const RepairResult& r = c.repairs;
  if (!costs(r))
    return fmt::format(
        "over many snaps it costs nothing for sure ({:+.1f} yd a snap, {:+.1f} to {:+.1f}), so no "
        "other call is worth it: {} has to do his job",
        r.cost.difference, r.cost.ci.low, r.cost.ci.high, idOf(c));
  if (r.good == 0)
    return fmt::format("no other call surely wins half of the {:.1f} yd a snap back: {} has to do his job",
                       r.cost.difference, idOf(c));
  const Repair& best = r.repairs.front();
  return fmt::format("the cheapest repair is {}, which wins {:.1f} of the {:.1f} yd a snap back",
                     c.calls[best.call].words, best.won_back.difference, r.cost.difference);
}

}  // namespace

std::string causeWords(const Setup& look, const LeakCause& cause) {
  const FaultFacts& facts = factsOf(cause.mistake.fault.kind);
  const std::string amount =
      facts.unit == "share" ? "" : fmt::format(" (about {:g} {})", cause.mistake.fault.amount, facts.unit);
  return fmt::format("{} {}{}", look.men[static_cast<std::size_t>(cause.mistake.man)].id, facts.words,
                     amount);
}

std::string correctionSentence(const Correction& c) {
  if (c.leak.causes.empty()) return "No man of this look can make a mistake that is known.";
  const LeakCause& first = c.leak.causes.front();
  if (c.leak.sound > first.weight)
    return fmt::format(
        "What was seen does not tell a mistake from luck: nobody's mistake {}, the likeliest one "
        "is {}, {}.",
        hundredths(c.leak.sound), causeWords(c.look, first), hundredths(first.weight));
  if (first.weight < kSure)
    return fmt::format("Several mistakes look like that; the likeliest is of level {}: {}, {}; {}.",
                       levelOf(c), causeWords(c.look, first), hundredths(first.weight), cheapest(c));
  return fmt::format("Level {} failed first: {}, {}; {}.", levelOf(c), causeWords(c.look, first),
                     hundredths(first.weight), cheapest(c));
}

std::vector<std::string> correctionNotes(const Correction& c) {
  std::vector<std::string> notes, others;
  for (std::size_t k = 1; k < c.leak.causes.size() && others.size() < kOthers; ++k)
    if (c.leak.causes[k].weight >= kWorthSaying)
      others.push_back(causeWords(c.look, c.leak.causes[k]) + ", " + hundredths(c.leak.causes[k].weight));
  if (!others.empty()) notes.push_back(fmt::format("It may also have been: {}.", fmt::join(others, "; ")));
  notes.push_back(fmt::format("By level: 1 {}, 2 {}, 3 {}; nobody's mistake {}.",
                              hundredths(c.leak.by_level[0]), hundredths(c.leak.by_level[1]),
                              hundredths(c.leak.by_level[2]), hundredths(c.leak.sound)));
  if (!c.behind.empty() && c.behind.front().weight > 0.5)
    notes.push_back(fmt::format("Without a mistake, another call would look like that: {}, {}.",
                                c.calls[c.behind.front().call].words, hundredths(c.behind.front().weight)));
  if (c.leak.unmarked > 0)
    notes.push_back(fmt::format("{} other mistakes leave no mark on what was seen; it says nothing of them.",
                                c.leak.unmarked));
  return notes;
}

std::string repairWords(const Correction& c) {
  if (c.repairs.good > 0) return c.calls[c.repairs.repairs.front().call].words;
  return idOf(c) + " does his job";
}

}  // namespace gapsound
