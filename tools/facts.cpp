// Plays the statements every coach agrees on as paired experiments on common random numbers and prints one
// table: effect, interval, p, what is asked for, and pass or miss.
#include <fmt/core.h>

#include <CLI/CLI.hpp>
#include <algorithm>

#include "base/error.hpp"
#include "io/assets.hpp"
#include "io/library.hpp"
#include "io/model_file.hpp"
#include "scenario/resolve.hpp"
#include "study/reps.hpp"
#include "study/trade_facts.hpp"

using namespace gapsound;

namespace {

struct Options {
  int n = 0;
  int jobs = 0;
  std::uint64_t seed = 1;
  std::vector<int> only;
  std::string model;
};

struct Table {
  const Options& options;
  const Library& library;
  const Model& model;
  int stated = 0, borne_out = 0, in_part = 0;
  std::vector<std::string> notes;

  TrialResult played(const Trial& trial) const {
    const std::vector<Setup> sides = {resolve(trial.a, library, model), resolve(trial.b, library, model)};
    const int n = options.n > 0 ? options.n : trial.n;
    const auto reps = playAll(sides, model, options.seed, n, options.jobs);
    return judge(trial, sides[0].direction, sides[1].direction, reps[0], reps[1]);
  }
  void print(const Trial& trial, const TrialResult& r) const {
    const double scale = isShare(trial.what) ? 100.0 : 1.0;
    fmt::print("    {:34}{:16}{:13}{:>6}{:>8.2f}{:>8.2f}{:>8.2f}  [{:6.2f},{:6.2f}] {:8.2g}  {:>4}  {}\n",
               trial.words, trial.b.title, nameOf(trial.what), r.paired.n, scale * r.mean_a, scale * r.mean_b,
               scale * r.paired.difference, scale * r.paired.ci.low, scale * r.paired.ci.high,
               r.paired.p_value, trial.sign > 0 ? "more" : "less", r.holds ? "pass" : "miss");
  }
  void add(const TradeFact& fact) {
    fmt::print("{:2}  {} ({})\n", fact.number, fact.words, fact.source);
    std::size_t held = 0;
    for (const Trial& trial : fact.trials) {
      const TrialResult r = played(trial);
      print(trial, r);
      if (!r.holds) notes.push_back(fmt::format("{:2}  {}: {}", fact.number, trial.words, trial.why));
      held += r.holds ? 1 : 0;
      std::fflush(stdout);
    }
    ++stated;
    borne_out += held == fact.trials.size() ? 1 : 0;
    in_part += held > 0 && held < fact.trials.size() ? 1 : 0;
  }
  void close() const {
    fmt::print(
        "\n{} of {} statements borne out by every trial, {} more by some of theirs; 17 and 30 are exact "
        "tests\n",
        borne_out, stated, in_part);
    if (!notes.empty()) fmt::print("Trials not borne out, and how we read it (readings are not tested):\n");
    for (const std::string& note : notes) fmt::print("{}\n", note);
  }
};

bool asked(const Options& options, int number) {
  return options.only.empty() ||
         std::find(options.only.begin(), options.only.end(), number) != options.only.end();
}

void printFacts(const Options& options) {
  const Model model = readModel(options.model.empty() ? assetPath("model.json") : options.model);
  const Library library = readLibrary(assetPath(""));
  fmt::print("    {:34}{:16}{:13}{:>6}{:>8}{:>8}{:>8}  {:15} {:>8}  {}\n", "B, not A", "look", "measure", "n",
             "A", "B", "B-A", "99.9 %", "p", "demand");
  Table table{options, library, model, 0, 0, 0, {}};
  for (const TradeFact& fact : tradeFacts())
    if (asked(options, fact.number)) table.add(fact);
  table.close();
}

}  // namespace

int main(int argc, char** argv) {
  Options options;
  CLI::App app("Plays the statements of the trade as paired experiments");
  app.add_option("--n,-n", options.n, "reps a side, each trial's own when absent")
      ->check(CLI::Range(2, 1000000));
  app.add_option("--only", options.only, "numbers of the statements, all when absent")->delimiter(',');
  app.add_option("--model", options.model, "file of model constants");
  app.add_option("--jobs", options.jobs, "threads, 0 for all cores");
  app.add_option("--seed", options.seed, "first seed");
  CLI11_PARSE(app, argc, argv);
  try {
    printFacts(options);
  } catch (const Error& error) {
    fmt::print(stderr, "facts: {}\n", error.what());
    return static_cast<int>(error.code());
  }
  return 0;
}
