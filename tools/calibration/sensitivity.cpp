#include <fmt/core.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <string>
#include <vector>

#include "base/model.hpp"
#include "io/assets.hpp"
#include "io/model_file.hpp"
#include "options.hpp"
#include "scenario/resolve.hpp"
#include "study/reps.hpp"
#include "study/sensitivity.hpp"

using namespace gapsound;

namespace calibration {
namespace {

/// Moves every constant that is an estimate by 20 % either way, on common random numbers, and prints what
/// that does to the gain, to the cutbacks taken and to the four headline answers.
class SensitivityTable {
 public:
  struct Options {
    int n = 30;            // reps of a side in the first round
    int confirm = 600;     // pairs when an answer might turn
    int answers = 2000;    // pairs of the unchanged answers
    double seconds = 900;  // no further constant is begun after that
    std::uint64_t seed = 1;
    int jobs = 0;
  };
  SensitivityTable(const Options& options, const Library& library, const Model& model)
      : options_(options), library_(library), model_(model) {}

  void print(const std::vector<std::string>& estimates) {
    unchanged_ = played(model_, options_.answers);
    printAnswers();
    fmt::print("\n{:24}{:>9}{:>9}{:>10}{:>10}   {}\n", "constant", "yd -20 %", "yd +20 %", "cut -20 %",
               "cut +20 %", "answers turned");
    playEach(estimates, [this](const ModelField& field) { printConstant(field); });
    fmt::print("\n{}; {:.0f} s\n", count(), spent());
  }

  /// The answers, the constants that move much and those that turn an answer, for a README.
  void printShort(const std::vector<std::string>& estimates) {
    unchanged_ = played(model_, options_.answers);
    fmt::print("| answer | yd | 99 % |\n|---|---|---|\n");
    for (int k = 0; k < kHeadlines; ++k) {
      const Paired p = answerOf(unchanged_, k);
      fmt::print("| {} {} | {:+.2f} | {:.2f} to {:.2f} |\n", k + 1,
                 headlines()[static_cast<std::size_t>(k)].words, p.difference, p.ci.low, p.ci.high);
    }
    fmt::print(
        "\n| constant | mean gain at -20 %, +20 %, yd | cutbacks in 100 | answer turned "
        "|\n|---|---|---|---|\n");
    playEach(estimates, [this](const ModelField& field) { printIfMuch(field); });
    fmt::print("\n{}.\n", count());
  }

 private:
  template <class Each>
  void playEach(const std::vector<std::string>& estimates, Each each) {
    for (const ModelField& field : kModelFields) {
      if (std::find(estimates.begin(), estimates.end(), field.name) == estimates.end()) continue;
      if (spent() > options_.seconds) {
        ++left_;
        continue;
      }
      each(field);
    }
  }
  [[nodiscard]] std::string count() const {
    return fmt::format("{} constants tried, {} turn an answer, {} left for want of time", tried_, turning_,
                       left_);
  }
  [[nodiscard]] double spent() const {
    return std::chrono::duration<double>(std::chrono::steady_clock::now() - start_).count();
  }
  [[nodiscard]] Played played(const Model& model, int n) const {
    std::vector<Setup> setups;
    for (const Headline& h : headlines()) {
      setups.push_back(resolve(h.a, library_, model));
      setups.push_back(resolve(h.b, library_, model));
    }
    return playAll(setups, model, options_.seed, n, options_.jobs);
  }
  [[nodiscard]] Played playedAnswer(const Model& model, int k, int n) const {
    const Headline h = headlines()[static_cast<std::size_t>(k)];
    return playAll({resolve(h.a, library_, model), resolve(h.b, library_, model)}, model, options_.seed, n,
                   options_.jobs);
  }
  void printAnswers() const {
    for (int k = 0; k < kHeadlines; ++k) {
      const Paired p = answerOf(unchanged_, k);
      fmt::print("answer {}  {:42}{:6.2f} yd [{:5.2f},{:5.2f}] at 99 %, n {}\n", k + 1,
                 headlines()[static_cast<std::size_t>(k)].words, p.difference, p.ci.low, p.ci.high, p.n);
    }
  }
  /// On more reps the answer's sign with the changed constant is the other one: how much it then is, and
  /// "unsure" when its interval at 99 % still holds zero. Empty when it does not turn.
  [[nodiscard]] std::string turned(const Model& model, int k, double factor) const {
    const Paired then = answerOf(playedAnswer(model, k, options_.confirm), 0);
    if (then.difference * answerOf(unchanged_, k).difference >= 0.0) return "";
    const bool unsure = then.ci.low < 0.0 && then.ci.high > 0.0;
    return fmt::format(" {} at {:+.0f} %: {:.2f} yd{}", k + 1, 100.0 * (factor - 1.0), then.difference,
                       unsure ? ", unsure" : "");
  }
  Sensitivity moved(const ModelField& field, double factor, std::string& words) const {
    Model model = model_;
    model.*field.value *= factor;
    const Sensitivity s = sensitivityOf(unchanged_, played(model, options_.n));
    for (int k = 0; k < kHeadlines; ++k) {
      if (couldTurn(answerOf(unchanged_, k), s.shift[static_cast<std::size_t>(k)]))
        words += turned(model, k, factor);
    }
    return s;
  }
  struct Row {
    Sensitivity less, more;
    std::string words;
  };
  Row rowOf(const ModelField& field) {
    Row row;
    row.less = moved(field, 0.8, row.words);
    row.more = moved(field, 1.2, row.words);
    ++tried_;
    turning_ += row.words.empty() ? 0 : 1;
    return row;
  }
  void printConstant(const ModelField& field) {
    const Row row = rowOf(field);
    fmt::print("{:24}{:>9.2f}{:>9.2f}{:>10.1f}{:>10.1f}  {}\n", field.name, row.less.yards, row.more.yards,
               100.0 * row.less.cutback, 100.0 * row.more.cutback, row.words);
    std::fflush(stdout);
  }
  void printIfMuch(const ModelField& field) {
    const Row row = rowOf(field);
    const double most = std::max(std::abs(row.less.yards), std::abs(row.more.yards));
    if (most < kMuch && row.words.empty()) return;
    fmt::print("| {} | {:+.2f}, {:+.2f} | {:+.1f}, {:+.1f} |{} |\n", field.name, row.less.yards,
               row.more.yards, 100.0 * row.less.cutback, 100.0 * row.more.cutback, row.words);
    std::fflush(stdout);
  }

  static constexpr double kMuch = 0.75;  // yd of mean gain

  Options options_;
  const Library& library_;
  const Model& model_;
  std::chrono::steady_clock::time_point start_ = std::chrono::steady_clock::now();
  Played unchanged_;
  int tried_ = 0, turning_ = 0, left_ = 0;
};

}  // namespace

void printSensitivity(const Ground& ground, bool n_given) {
  SensitivityTable::Options table;
  if (n_given) table.n = std::min(ground.options.n, table.answers);
  table.seed = ground.options.seed;
  table.jobs = ground.options.jobs;
  table.seconds = 60.0 * ground.options.minutes;
  const std::string& own = ground.options.model;
  const auto estimates = estimatedConstants(own.empty() ? assetPath("model.json") : own);
  SensitivityTable sensitivity(table, ground.library, ground.model);
  ground.options.markdown ? sensitivity.printShort(estimates) : sensitivity.print(estimates);
}

}  // namespace calibration
