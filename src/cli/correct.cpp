#include <fmt/format.h>

#include "base/error.hpp"
#include "cli/print.hpp"
#include "cli/session.hpp"
#include "cli/verbs.hpp"
#include "io/atomic_file.hpp"
#include "io/seen_file.hpp"
#include "io/theme_file.hpp"
#include "painters/outputs.hpp"
#include "teach/correction.hpp"

namespace gapsound {
namespace {

constexpr int kRepairReps = 3;  // times the reps of the search: gains differ more than places
constexpr std::size_t kListed = 10;

Seen seenBy(const CorrectOptions& options, const Scenario& scenario, const Setup& look) {
  Seen seen;
  if (scenario.start) laySighting(*scenario.start, scenario.source, look, seen);
  if (!options.places.empty()) readPlaces(options.places, look, seen);
  for (const std::string& text : options.saw) laySighting(text, look, seen);
  if (options.at) seen.t = *options.at;
  seen.yards = options.gain;
  if (isEmpty(seen))
    throw InputError("options", "--saw, --seen, --gain", "nothing", "something that was seen of the snap");
  return seen;
}

/// What the verb works on.
struct Leak {
  Scenario scenario;
  Model model;
  Seen seen;
  LeakSearch search;
};

/// Repairs need a look that can be called otherwise; of a picture alone only the mistakes are told.
Correction explained(const Leak& leak) {
  Correction c;
  c.look = lookAtSnap(leak.scenario, library(), leak.model);
  c.calls = otherCalls(leak.scenario, library(), leak.model);
  ProgressLine causes("mistakes"), calls("calls");
  c.leak = causesOf(c.look, leak.seen, leak.model, leak.search, causes.reporter());
  c.behind = callsBehind(c.look, c.calls, leak.seen, leak.model, leak.search, calls.reporter());
  if (c.leak.causes.empty()) return c;
  LeakSearch repairs = leak.search;
  repairs.n *= kRepairReps;
  ProgressLine tried("repairs");
  c.repairs =
      repairsFor(c.look, c.leak.causes.front().mistake, c.calls, leak.model, repairs, tried.reporter());
  return c;
}

struct Shown {
  Setup before, after;
  std::uint64_t seed = 0;
};

Shown shownOf(const Leak& leak, const Correction& c) {
  const Mistake& mistake = c.leak.causes.front().mistake;
  Shown shown{withMistake(c.look, mistake), c.look, 0};
  if (c.repairs.good > 0) shown.after = withMistake(c.calls[c.repairs.repairs.front().call].look, mistake);
  const Comparison replay(leak.seen, {shown.before}, leak.model, leak.search.first_seed, leak.search.n,
                          leak.search.threads);
  shown.seed = leak.search.first_seed +
               seedToShow(shown.before, shown.after, replay.looks().front().off, leak.model, leak.search);
  return shown;
}

void writeFilm(const Leak& leak, const Correction& c, const Shown& shown, const std::string& file) {
  ClipScript script = clipOf(playTape(shown.before, leak.model, shown.seed), "as it was",
                             playTape(shown.after, leak.model, shown.seed), "repaired", repairWords(c) + ".");
  script.title = causeWords(c.look, c.leak.causes.front());
  ProgressLine progress("drawing");
  const auto report = progress.reporter();
  writeClip(script, shippedTheme("evening"), file, [&](double share) { report(share); });
}

Answer causeAnswer(const Setup& look, const LeakCause& cause) {
  const auto& man = look.men[static_cast<std::size_t>(cause.mistake.man)];
  return {{"player", man.id},
          {"level", man.fit.level},
          {"kind", factsOf(cause.mistake.fault.kind).name},
          {"amount", cause.mistake.fault.amount},
          {"weight", cause.weight}};
}

Answer callAnswer(const OtherCall& call) {
  return {{"path", call.path}, {"value", call.value}, {"words", call.words}};
}

Answer repairsAnswer(const Correction& c) {
  Answer repairs = Answer::array();
  for (const Repair& repair : c.repairs.repairs) {
    Answer row = callAnswer(c.calls[repair.call]);
    row["won_back"] = repair.won_back.difference;
    row["won_back_ci"] = asPair(repair.won_back.ci);
    repairs.push_back(row);
  }
  return repairs;
}

Answer answerOf(const Correction& c) {
  Answer causes = Answer::array(), settings = Answer::array();
  for (std::size_t k = 0; k < std::min(kListed, c.leak.causes.size()); ++k)
    causes.push_back(causeAnswer(c.look, c.leak.causes[k]));
  for (std::size_t k = 0; k < std::min(kListed, c.behind.size()); ++k) {
    settings.push_back(callAnswer(c.calls[c.behind[k].call]));
    settings.back()["weight"] = c.behind[k].weight;
  }
  const Answer repairs = repairsAnswer(c);
  return {{"sentence", correctionSentence(c)},
          {"level", causes.empty() ? Answer(nullptr) : causes.front()["level"]},
          {"cause", causes.empty() ? Answer(nullptr) : causes.front()},
          {"causes", causes},
          {"sound", c.leak.sound},
          {"by_level", c.leak.by_level},
          {"unmarked", c.leak.unmarked},
          {"settings", settings},
          {"mean_sound", c.repairs.mean_sound},
          {"mean_with", c.repairs.mean_with},
          {"cost", c.repairs.cost.difference},
          {"cost_ci", asPair(c.repairs.cost.ci)},
          {"repair", c.repairs.good > 0 ? repairs.front() : Answer(nullptr)},
          {"repairs", repairs},
          {"notes", correctionNotes(c)}};
}

void tell(const Correction& c) {
  fmt::print("{}\n\n", correctionSentence(c));
  for (const std::string& note : correctionNotes(c)) fmt::print("{}\n", note);
  if (c.repairs.repairs.empty()) return;
  fmt::print("\nWith the mistake {:.2f} yd a snap, without {:.2f}. What another call wins back:\n",
             c.repairs.mean_with, c.repairs.mean_sound);
  for (const Repair& repair : c.repairs.repairs)
    fmt::print("{:>+6.2f} ({:+.2f} to {:+.2f})  {}\n", repair.won_back.difference, repair.won_back.ci.low,
               repair.won_back.ci.high, c.calls[repair.call].words);
}

}  // namespace

int runCorrect(const CorrectOptions& options) {
  if (!options.out.empty()) requireWritable(options.out);
  Leak leak;
  leak.model = modelFor(options.model);
  leak.scenario = scenarioFor(options, options.file, options.changes, leak.model);
  leak.seen = seenBy(options, leak.scenario, lookAtSnap(leak.scenario, library(), leak.model));
  leak.search = {options.seed, options.n, options.jobs};
  const Correction correction = explained(leak);
  Answer answer = answerOf(correction);
  if (!options.out.empty() && !correction.leak.causes.empty()) {
    const Shown shown = shownOf(leak, correction);
    writeFilm(leak, correction, shown, options.out);
    answer["seed"] = shown.seed;
    answer["written"] = options.out;
  }
  if (options.json) {
    printAnswer(answer);
    return 0;
  }
  tell(correction);
  if (answer.contains("written")) fmt::print("\n{} written: seed {}\n", options.out, answer["seed"].dump());
  return 0;
}

}  // namespace gapsound
