// Plays the statements every coach agrees on as paired experiments on common random numbers and prints one
// table: effect, interval, p, what is asked for, and pass or miss.
#include <fmt/core.h>

#include <CLI/CLI.hpp>
#include <algorithm>
#include <array>

#include "base/error.hpp"
#include "io/assets.hpp"
#include "io/library.hpp"
#include "io/model_file.hpp"
#include "study/trade_facts.hpp"

using namespace gapsound;

namespace {

struct Options {
  int n = 0;
  int jobs = 0;
  std::uint64_t seed = 1;
  std::vector<int> only;
  std::string model;
  bool markdown = false;
};

double scaleOf(const Trial& trial) { return isShare(trial.what) ? 100.0 : 1.0; }

/// One line a trial and, at the end, how we read those not borne out.
class Lines {
 public:
  void open() const {
    fmt::print("    {:34}{:16}{:13}{:>6}{:>8}{:>8}{:>8}  {:15} {:>8}  {}\n", "B, not A", "look", "measure",
               "n", "A", "B", "B-A", "99.9 %", "p", "demand");
  }
  void add(const TradeFact& fact, const std::vector<TrialResult>& results) {
    fmt::print("{:2}  {} ({})\n", fact.number, fact.words, fact.source);
    for (std::size_t k = 0; k < results.size(); ++k) {
      print(fact.trials[k], results[k]);
      if (!results[k].holds)
        notes_.push_back(fmt::format("{:2}  {}: {}", fact.number, fact.trials[k].words, fact.trials[k].why));
    }
    std::fflush(stdout);
  }
  void close(const std::string& count) const {
    fmt::print("\n{}\n", count);
    if (!notes_.empty()) fmt::print("Trials not borne out, and how we read it (readings are not tested):\n");
    for (const std::string& note : notes_) fmt::print("{}\n", note);
  }

 private:
  static void print(const Trial& trial, const TrialResult& r) {
    const double scale = scaleOf(trial);
    fmt::print("    {:34}{:16}{:13}{:>6}{:>8.2f}{:>8.2f}{:>8.2f}  [{:6.2f},{:6.2f}] {:8.2g}  {:>4}  {}{}\n",
               trial.words, trial.b.title, nameOf(trial.what), r.paired.n, scale * r.mean_a, scale * r.mean_b,
               scale * r.paired.difference, scale * r.paired.ci.low, scale * r.paired.ci.high,
               r.paired.p_value, trial.sign > 0 ? "more" : "less", r.holds ? "pass" : "miss",
               trial.beyond ? ", beyond the statement" : "");
  }

  std::vector<std::string> notes_;
};

/// A row a statement, for a README.
class Markdown {
 public:
  static void open() { fmt::print("| | statement | measured | |\n|---|---|---|---|\n"); }
  static void add(const TradeFact& fact, const std::vector<TrialResult>& results) {
    std::string cells;
    for (std::size_t k = 0; k < results.size(); ++k)
      cells += (k > 0 ? "; " : "") + measured(fact.trials[k], results[k]);
    static constexpr const char* kWords[] = {"holds", "in part", "no"};
    fmt::print("| {} | {} | {} | {} |\n", fact.number, fact.words, cells,
               kWords[static_cast<int>(verdictOf(fact, results))]);
    std::fflush(stdout);
  }
  static void close(const std::string& count) { fmt::print("\n{}\n", count); }

 private:
  static std::string measured(const Trial& trial, const TrialResult& r) {
    const std::string size = fmt::format("{:+.2f} {}", scaleOf(trial) * r.paired.difference,
                                         isShare(trial.what) ? "in 100, " : "");
    return fmt::format("{}{} ({}) {}p {:.0e}", r.holds ? "" : "not: ", trial.words, nameOf(trial.what), size,
                       r.paired.p_value);
  }
};

class Bench {
 public:
  Bench(const Options& options, const Library& library, const Model& model)
      : options_(options), looks_(library, model, options.seed, options.jobs) {}
  [[nodiscard]] std::vector<TrialResult> played(const TradeFact& fact) {
    std::vector<TrialResult> results;
    for (const Trial& trial : fact.trials)
      results.push_back(judged(trial, options_.n > 0 ? options_.n : trial.n, looks_));
    ++verdicts_[static_cast<std::size_t>(verdictOf(fact, results))];
    return results;
  }
  [[nodiscard]] std::string count() const {
    return fmt::format("{} of {} statements hold, {} in part, {} not; 17 and 30 are exact tests, 32 is none",
                       verdicts_[0], verdicts_[0] + verdicts_[1] + verdicts_[2], verdicts_[1], verdicts_[2]);
  }

 private:
  const Options& options_;
  PlayedLooks looks_;
  std::array<int, 3> verdicts_{};
};

bool asked(const Options& options, int number) {
  return options.only.empty() ||
         std::find(options.only.begin(), options.only.end(), number) != options.only.end();
}

template <class Table>
void printFacts(const Options& options, Table table) {
  const Model model = readModel(options.model.empty() ? assetPath("model.json") : options.model);
  const Library library = readLibrary(assetPath(""));
  Bench bench(options, library, model);
  table.open();
  for (const TradeFact& fact : tradeFacts())
    if (asked(options, fact.number)) table.add(fact, bench.played(fact));
  table.close(bench.count());
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
  app.add_flag("--markdown", options.markdown, "a row a statement, for a README");
  CLI11_PARSE(app, argc, argv);
  try {
    if (options.markdown)
      printFacts(options, Markdown());
    else
      printFacts(options, Lines());
  } catch (const Error& error) {
    fmt::print(stderr, "facts: {}\n", error.what());
    return static_cast<int>(error.code());
  }
  return 0;
}
