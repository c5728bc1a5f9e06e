#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <chrono>
#include <string_view>

#include "base/error.hpp"
#include "looks.hpp"
#include "study/card.hpp"
#include "study/reps.hpp"

using namespace gapsound;

namespace calibration {
namespace {

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

std::vector<PlayedLook> playLooks(const Ground& ground) {
  std::vector<PlayedLook> played;
  std::vector<Setup> setups;
  for (CardLook& look : looksFor(ground.options)) {
    const auto setup = resolvedOrTold(look, ground);
    if (!setup) continue;
    setups.push_back(*setup);
    played.push_back({std::move(look), *setup, {}});
  }
  auto reps =
      playAll(setups, ground.model, ground.options.seed, ground.options.n, ground.options.jobs, tellProgress);
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
    fmt::print("{:>4}  {}\n", k + 1, looks[k].look.name);
    cards.push_back(cardOf(looks[k].reps, true));
  }
  fmt::print("{:16}", "");
  for (std::size_t k = from; k < to; ++k) fmt::print("{:>7}", k + 1);
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

}  // namespace

void printEachLook(const Ground& ground) {
  const Clock clock;
  const Options& options = ground.options;
  const auto looks = playLooks(ground);
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

}  // namespace calibration
