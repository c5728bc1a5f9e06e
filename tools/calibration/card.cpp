#include <fmt/core.h>

#include <algorithm>
#include <numeric>

#include "set.hpp"
#include "tape_figures.hpp"

using namespace gapsound;

namespace calibration {
namespace {

constexpr const char* kKinds[] = {"zone", "gap", "man", "other"};

/// The card of one level's two halves.
struct Halves {
  std::vector<CardLine> fit, judge;
};

void printLooks(const std::vector<SetLook>& looks, const SetReps& reps) {
  for (const bool judges : {false, true}) {
    fmt::print("\n{}\n", judges ? "looks that judge" : "looks constants are fitted on");
    for (std::size_t k = 0; k < looks.size(); ++k) {
      if (looks[k].judges != judges) continue;
      double sum = 0.0;
      for (const Summary& rep : reps[k]) sum += rep.yards;
      fmt::print("  {:78}{:>6}  box {}  weight {:5.3f}  mean {:6.2f}\n", looks[k].title,
                 kKinds[static_cast<int>(looks[k].kind.kind)], looks[k].kind.box, looks[k].weight,
                 sum / static_cast<double>(reps[k].size()));
    }
  }
}

int judged(const std::vector<CardLine>& card) {
  return static_cast<int>(
      std::count_if(card.begin(), card.end(), [](const CardLine& l) { return l.band.has_value(); }));
}
int passed(const std::vector<CardLine>& card) {
  return static_cast<int>(
      std::count_if(card.begin(), card.end(), [](const CardLine& l) { return l.band && l.passes(); }));
}

void printPlain(const Halves& card) {
  fmt::print("{:42}{:>8}{:>8}{:>8}   {:16}\n", "pro", "fit", "judge", "real", "band");
  for (std::size_t k = 0; k < card.judge.size(); ++k) {
    const CardLine& line = card.judge[k];
    fmt::print("{:42}{:>8}{:>8}{:>8}   {:16}{}\n", line.name, figureOf(card.fit[k]), figureOf(line),
               line.real, bandOf(line), verdictOf(line));
  }
  fmt::print("{} of {} judged lines hold on the judging half, {} on the other\n", passed(card.judge),
             judged(card.judge), passed(card.fit));
}

void printMarkdown(const Halves& card) {
  fmt::print("| | fitted on | judged on | real | band | |\n|---|---|---|---|---|---|\n");
  for (std::size_t k = 0; k < card.judge.size(); ++k) {
    const CardLine& line = card.judge[k];
    fmt::print("| {} | {} | {} | {} | {} | {} |\n", line.name, figureOf(card.fit[k]), figureOf(line),
               line.real, bandOf(line), verdictOf(line));
  }
}

std::vector<CardLine> gainsOf(const std::vector<SetLook>& looks, const SetReps& reps, Level level) {
  auto whole = halfOf(looks, reps, false);
  for (const WeightedReps& look : halfOf(looks, reps, true)) whole.push_back(look);
  return gainCard(whole, level);
}

std::vector<CardLine> playedGains(const Ground& ground, Level level) {
  const auto looks = setLooks(ground, level);
  return gainsOf(looks, playSet(looks, ground, ground.model, ground.options.n), level);
}

/// Gains of both halves together at every level, beside those of the level's own league.
void printLevels(const std::vector<CardLine>& pro, const Ground& ground) {
  const auto college = playedGains(ground, Level::college), school = playedGains(ground, Level::high_school);
  if (ground.options.markdown)
    fmt::print("\n| both halves | pro | real | college | real | high school |\n|---|---|---|---|---|---|\n");
  else
    fmt::print("\n{:42}{:>8}{:>8}{:>9}{:>8}{:>13}\n", "both halves", "pro", "real", "college", "real",
               "high school");
  for (std::size_t k = 0; k < pro.size(); ++k)
    fmt::print(fmt::runtime(ground.options.markdown ? "| {} | {} | {} | {} | {} | {} |\n"
                                                    : "{:42}{:>8}{:>8}{:>9}{:>8}{:>13}\n"),
               pro[k].name, figureOf(pro[k]), pro[k].real, figureOf(college[k]), college[k].real,
               figureOf(school[k]));
}

}  // namespace

void printCard(const Ground& ground) {
  const auto looks = setLooks(ground, Level::pro);
  const SetReps reps = playSet(looks, ground, ground.model, ground.options.n);
  Halves card{calibrationCard(halfOf(looks, reps, false)), calibrationCard(halfOf(looks, reps, true))};
  addTapeFigures(looks, ground, card.fit, card.judge);
  if (ground.options.markdown) {
    printMarkdown(card);
  } else {
    printPlain(card);
    printLooks(looks, reps);
  }
  printLevels(gainsOf(looks, reps, Level::pro), ground);
}

}  // namespace calibration
