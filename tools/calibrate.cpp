// Plays every look tagged sound and a set of looks nobody tuned on, and prints the calibration card:
// outcomes, timings, speeds and surroundings beside what real runs show. With --effects it prints the paired
// effects instead, with --drift how far engaged pairs move.
#include <fmt/core.h>
#include <fnmatch.h>
#include <unistd.h>

#include <CLI/CLI.hpp>
#include <algorithm>
#include <array>
#include <chrono>
#include <filesystem>
#include <map>
#include <optional>
#include <string_view>

#include "base/error.hpp"
#include "base/tick.hpp"
#include "calibration_looks.hpp"
#include "io/assets.hpp"
#include "io/library.hpp"
#include "io/model_file.hpp"
#include "io/scenario_file.hpp"
#include "scenario/resolve.hpp"
#include "study/card.hpp"
#include "study/effects.hpp"

using namespace gapsound;

namespace {

struct Options {
  int n = 400;
  int jobs = 0;
  std::uint64_t seed = 1;
  std::string looks = "*";
  std::string scenarios = "scenarios";
  std::string model;
  bool effects = false;
  bool drift = false;
  std::string items;
};

struct PlayedLook {
  CardLook look;
  Setup setup;
  std::vector<Summary> reps;
};

class Clock {
 public:
  [[nodiscard]] double seconds() const {
    return std::chrono::duration<double>(std::chrono::steady_clock::now() - start_).count();
  }

 private:
  std::chrono::steady_clock::time_point start_ = std::chrono::steady_clock::now();
};

bool tellProgress(double share) {
  static const bool watched = isatty(STDERR_FILENO) != 0;
  if (!watched) return true;
  fmt::print(stderr, "\r{:3.0f} %", 100.0 * share);
  if (share >= 1.0) fmt::print(stderr, "\r     \r");
  std::fflush(stderr);
  return true;
}

std::vector<CardLook> looksFor(const Options& options) {
  std::vector<CardLook> looks;
  std::vector<std::filesystem::path> files;
  for (const auto& entry : std::filesystem::directory_iterator(options.scenarios))
    if (entry.path().extension() == ".json") files.push_back(entry.path());
  std::sort(files.begin(), files.end());
  for (const auto& file : files) {
    if (file.stem().string().starts_with("plan-")) continue;
    const Scenario scenario = readScenario(file.string());
    if (std::find(scenario.tags.begin(), scenario.tags.end(), "sound") != scenario.tags.end())
      looks.push_back({file.stem().string(), scenario, true});
  }
  for (CardLook& look : madeLooks()) looks.push_back(std::move(look));
  std::erase_if(
      looks, [&](const CardLook& look) { return fnmatch(options.looks.c_str(), look.name.c_str(), 0) != 0; });
  return looks;
}

/// A look that does not resolve is named and left out, so that one bad file does not cost the whole card.
std::optional<Setup> resolvedOrTold(const CardLook& look, const Library& library, const Model& model) {
  try {
    return resolve(look.scenario, library, model);
  } catch (const InputError& error) {
    fmt::print(stderr, "left out: {}\n", error.what());
    return {};
  }
}

std::vector<PlayedLook> playLooks(const Options& options, const Library& library, const Model& model) {
  std::vector<PlayedLook> played;
  std::vector<Setup> setups;
  for (CardLook& look : looksFor(options)) {
    const auto setup = resolvedOrTold(look, library, model);
    if (!setup) continue;
    setups.push_back(*setup);
    played.push_back({std::move(look), *setup, {}});
  }
  auto reps = playAll(setups, model, options.seed, options.n, options.jobs, tellProgress);
  for (std::size_t k = 0; k < played.size(); ++k) played[k].reps = std::move(reps[k]);
  return played;
}

template <typename Counts>
std::vector<Summary> pooled(const std::vector<PlayedLook>& looks, const Counts& counts) {
  std::vector<Summary> all;
  for (const PlayedLook& look : looks)
    if (counts(look)) all.insert(all.end(), look.reps.begin(), look.reps.end());
  return all;
}

std::string printed(const CardLine& line) {
  if (line.name == "n") return fmt::format("{:.0f}", line.value);
  if (line.form == CardLine::Form::share) return fmt::format("{:.1f}", 100.0 * line.value);
  return fmt::format("{:.{}f}", line.value, line.form == CardLine::Form::one ? 1 : 2);
}

std::string printedBand(const CardLine& line) {
  if (!line.band) return "";
  const double scale = line.form == CardLine::Form::share ? 100.0 : 1.0;
  return fmt::format("{:g}-{:g}", scale * line.band->low, scale * line.band->high);
}

/// Men pull and the back has a designed lane.
bool isGapRun(const PlayedLook& look) {
  const auto& men = look.setup.men;
  return !look.setup.run.bends && std::any_of(men.begin(), men.begin() + kOffense, [](const Man& man) {
    return man.block.pull != PullStyle::none;
  });
}

void printPooled(const std::vector<PlayedLook>& looks) {
  const auto all = cardOf(pooled(looks, [](const PlayedLook&) { return true; }), false);
  const auto shipped = cardOf(pooled(looks, [](const PlayedLook& l) { return l.look.shipped; }), false);
  const auto made = cardOf(pooled(looks, [](const PlayedLook& l) { return !l.look.shipped; }), false);
  const auto gap = cardOf(pooled(looks, isGapRun), false);
  fmt::print("{:16}{:>8}{:>8}{:>8}{:>8}{:>10}{:>10}\n", "pooled", "all", "sound", "new", "gap", "real",
             "band");
  for (std::size_t k = 0; k < all.size(); ++k) {
    CardLine judged = all[k];
    if (judged.name == "top 1st contact") continue;
    if (judged.name == "cutback taken") judged.band = Interval{0.08, 0.25}, judged.value = gap[k].value;
    fmt::print("{:16}{:>8}{:>8}{:>8}{:>8}{:>10}{:>10}{}\n", all[k].name, printed(all[k]), printed(shipped[k]),
               printed(made[k]), printed(gap[k]), all[k].real, printedBand(judged),
               !judged.band      ? ""
               : judged.passes() ? "  pass"
                                 : "  miss");
  }
}

void printColumns(const std::vector<PlayedLook>& looks, std::size_t from, std::size_t to) {
  std::vector<std::vector<CardLine>> cards;
  fmt::print("\n");
  for (std::size_t k = from; k < to; ++k) {
    fmt::print("  {:c}  {}\n", static_cast<char>('a' + k), looks[k].look.name);
    cards.push_back(cardOf(looks[k].reps, true));
  }
  fmt::print("{:16}", "");
  for (std::size_t k = from; k < to; ++k) fmt::print("{:>7c}", static_cast<char>('a' + k));
  fmt::print("\n");
  for (std::size_t row = 0; row < cards.front().size(); ++row) {
    fmt::print("{:16}", cards.front()[row].name);
    for (const auto& card : cards) fmt::print("{:>7}", printed(card[row]));
    fmt::print("\n");
  }
  fmt::print("{:16}", "  who");
  for (std::size_t k = from; k < to; ++k) {
    const TopMan top = topFirstContact(looks[k].reps);
    fmt::print("{:>7}", top.man == kNobody ? "-" : looks[k].setup.men[static_cast<std::size_t>(top.man)].id);
  }
  fmt::print("\n");
}

/// What has to hold for each look by itself, not only pooled.
void printVerdicts(const std::vector<PlayedLook>& looks) {
  constexpr std::array<std::string_view, 4> kEachLook = {"blockers touch", "pullers met", "stood still",
                                                         "top 1st contact"};
  for (const PlayedLook& look : looks) {
    const double mean = meanOf(yardsOf(look.reps));
    if (look.look.shipped && (mean < 1.5 || mean > 8.0))
      fmt::print("{}: mean {:.2f}, band 1.5-8  miss\n", look.look.name, mean);
    for (const CardLine& line : cardOf(look.reps, true)) {
      const bool judged = std::find(kEachLook.begin(), kEachLook.end(), line.name) != kEachLook.end();
      if (judged && !line.passes())
        fmt::print("{}: {} {}, band {}  miss\n", look.look.name, line.name, printed(line), printedBand(line));
    }
  }
}

void printCard(const Options& options, const Library& library, const Model& model) {
  const Clock clock;
  const auto looks = playLooks(options, library, model);
  if (looks.empty()) throw InputError("calibrate", "--looks", options.looks, "a pattern that matches a look");
  printPooled(looks);
  constexpr std::size_t kColumns = 11;
  for (std::size_t from = 0; from < looks.size(); from += kColumns)
    printColumns(looks, from, std::min(from + kColumns, looks.size()));
  fmt::print("\n");
  printVerdicts(looks);
  const double spent = clock.seconds();
  fmt::print("{} looks x {} reps in {:.1f} s, {:.0f} reps/s\n", looks.size(), options.n, spent,
             static_cast<double>(looks.size()) * options.n / spent);
}

/// Plays each distinct side of the effects once.
class Sides {
 public:
  Sides(const Options& options, const Library& library, const Model& model)
      : options_(options), library_(library), model_(model) {
    for (const EffectLook& look : effectLooks())
      bases_[look.key] = {look, resolve(look.scenario, library, model)};
  }
  [[nodiscard]] const EffectLook& look(const std::string& key) const { return bases_.at(key).look; }
  [[nodiscard]] int direction(const std::string& key) const { return bases_.at(key).setup.direction; }

  const std::vector<Summary>& reps(const std::string& key, const std::vector<Turn>& turns, int n) {
    std::string name = key;
    for (const Turn& t : turns) name += fmt::format("/{}:{}", static_cast<int>(t.lever), t.amount);
    auto& played = played_[name];
    if (played.size() < static_cast<std::size_t>(n)) {
      const Base& base = bases_.at(key);
      const Setup setup = resolve(turned(base.look.scenario, base.setup, turns), library_, model_);
      played = playMany(setup, model_, options_.seed, n, options_.jobs, tellProgress);
    }
    return played;
  }

 private:
  struct Base {
    EffectLook look;
    Setup setup;
  };
  const Options& options_;
  const Library& library_;
  const Model& model_;
  std::map<std::string, Base> bases_;
  std::map<std::string, std::vector<Summary>> played_;
};

std::string demandOf(const Effect& effect) {
  if (effect.demand == Demand::reported) return "report";
  if (effect.demand == Demand::bounded) return fmt::format("< {:g}", effect.margin);
  return effect.margin > 0.0 ? fmt::format(">= {:g}", effect.margin) : "> 0";
}

void printEffect(const Effect& effect, const EffectLook& look, const EffectResult& r) {
  const bool share = effect.measure == Measure::cutback_open || effect.measure == Measure::cutback_taken ||
                     effect.measure == Measure::twelve_plus;
  const double s = share ? 100.0 : 1.0;
  fmt::print(
      "{:2}{:38}{:18}{:>6}{:>7.2f}{:>7.2f}{:>7.2f}  [{:6.2f},{:6.2f}] [{:6.2f},{:6.2f}] {:8.2g}  {:>7}  {}\n",
      effect.item, effect.words, look.words, r.paired.n, s * r.mean_a, s * r.mean_b, s * r.paired.difference,
      s * r.paired.ci.low, s * r.paired.ci.high, s * r.wide.low, s * r.wide.high, r.paired.p_value,
      demandOf(effect),
      effect.demand == Demand::reported ? ""
      : r.holds                         ? "pass"
                                        : "miss");
  std::fflush(stdout);
}

void printEffects(const Options& options, bool n_given, const Library& library, const Model& model) {
  Sides sides(options, library, model);
  fmt::print("{:2}{:38}{:18}{:>6}{:>7}{:>7}{:>7}  {:15} {:15} {:>8}  {:>7}\n", "", "effect", "look", "n", "A",
             "B", "B-A", "95 %", "99.9 %", "p", "demand");
  for (Effect effect : effectList()) {
    if (!options.items.empty() && options.items.find(effect.item) == std::string::npos) continue;
    if (n_given) effect.n = options.n;
    const auto a = sides.reps(effect.look, effect.a, effect.n);
    const auto b = sides.reps(effect.look, effect.b, effect.n);
    printEffect(effect, sides.look(effect.look), judge(effect, sides.direction(effect.look), a, b));
  }
}

/// Movement of an engaged pair's middle downfield over the second after first touch, both on their feet.
void gatherDrift(const Tape& tape, std::vector<double>& drift, std::vector<double>& touch) {
  const auto& frames = tape.record.frames;
  for (std::size_t k = 0; k < kOffense; ++k) {
    if (tape.setup.men[k].group == Group::receiver) continue;
    for (std::size_t tick = 0; tick + kTicksPerSecond < frames.size(); ++tick) {
      const int other = frames[tick].men[k].engaged;
      if (other == kNobody) continue;
      const auto middle = [&](const Frame& f) {
        return 0.5 * (f.men[k].pos.y + f.men[static_cast<std::size_t>(other)].pos.y);
      };
      touch.push_back(seconds(static_cast<int>(tick)));
      if (frames[tick + kTicksPerSecond].men[k].engaged == other)
        drift.push_back(middle(frames[tick + kTicksPerSecond]) - middle(frames[tick]));
      break;
    }
  }
}

void printDrift(const Options& options, const Library& library, const Model& model) {
  std::vector<double> drift, touch;
  for (const CardLook& look : looksFor(options)) {
    const auto setup = resolvedOrTold(look, library, model);
    if (!setup) continue;
    for (int rep = 0; rep < options.n; ++rep)
      gatherDrift(playTape(*setup, model, options.seed + static_cast<std::uint64_t>(rep)), drift, touch);
  }
  fmt::print("pairs {}, drift over 1 s p10 {:.2f} median {:.2f} p90 {:.2f} (real -1.1, 0.13, 1.2)\n",
             drift.size(), quantileOf(drift, 0.1), medianOf(drift), quantileOf(drift, 0.9));
  fmt::print("first touch p10 {:.2f} median {:.2f} p90 {:.2f} s (real quartiles 0.5-1.0, median 0.75)\n",
             quantileOf(touch, 0.1), medianOf(touch), quantileOf(touch, 0.9));
}

}  // namespace

int main(int argc, char** argv) {
  Options options;
  CLI::App app("Plays the calibration looks and prints the card");
  auto* n = app.add_option("--n,-n", options.n, "reps of each look")->check(CLI::Range(1, 1000000));
  app.add_option("--looks", options.looks, "shell pattern of the looks' names");
  app.add_option("--scenarios", options.scenarios, "folder of the shipped looks");
  app.add_option("--model", options.model, "file of model constants");
  app.add_option("--jobs", options.jobs, "threads, 0 for all cores");
  app.add_option("--seed", options.seed, "first seed");
  app.add_flag("--effects", options.effects, "the paired effects instead of the card");
  app.add_option("--items", options.items, "letters of the effects to run, all when absent");
  app.add_flag("--drift", options.drift, "how far engaged pairs move instead of the card (try --n 40)");
  CLI11_PARSE(app, argc, argv);
  try {
    const Model model = readModel(options.model.empty() ? assetPath("model.json") : options.model);
    const Library library = readLibrary(assetPath(""));
    if (options.effects)
      printEffects(options, n->count() > 0, library, model);
    else if (options.drift)
      printDrift(options, library, model);
    else
      printCard(options, library, model);
  } catch (const Error& error) {
    fmt::print(stderr, "calibrate: {}\n", error.what());
    return static_cast<int>(error.code());
  }
  return 0;
}
