#pragma once
#include <array>
#include <span>
#include <string>
#include <vector>

#include "scenario/scenario.hpp"
#include "scenario/setup.hpp"
#include "study/card.hpp"

namespace gapsound {

/// What a run is blocked as: zone; a gap scheme with pullers; man-blocked; the rest (trap, toss, draw).
enum class RunKind { zone, gap, man, other };
inline constexpr int kRunKinds = 4;
inline constexpr int kLeastBox = 5, kMostBox = 9;
inline constexpr int kBoxes = kMostBox - kLeastBox + 1;

struct CalibrationLook {
  bool judges = false;  // of the half that judges; else of the half constants are fitted on
  RunKind kind = RunKind::zone;
  Scenario scenario;
};

/// The looks the simulation is calibrated on, and how often real teams meet their like.
struct CalibrationSet {
  std::array<double, kRunKinds> kinds{};  // shares, by RunKind
  std::array<double, kBoxes> boxes{};     // shares, by men in the box from 5 to 9
  std::vector<CalibrationLook> looks;
};

/// Defenders at the snap within 8 yd of the line and 2 yd outside the last attached blocker (an estimate of
/// how the league counts them).
[[nodiscard]] int menInBox(const Setup& setup);

/// Which margins a look belongs to.
struct LookClass {
  RunKind kind = RunKind::zone;
  int box = 7;
};
/// Weights of looks, adding up to 1, whose sums by kind and by box are the set's shares: iterative
/// proportional fitting (Deming & Stephan 1940). A class without a look gets nothing; a box outside 5 to 9
/// counts as the nearest.
[[nodiscard]] std::vector<double> rakedWeights(const CalibrationSet& set, std::span<const LookClass> looks);

/// The reps of one look and what they count for together. Borrows the reps.
struct WeightedReps {
  std::span<const Summary> reps;
  double weight = 1.0;
  bool under_center = false;
  int box = 7;
};

/// The calibration card of pro runs: figures of the weighted reps beside what real ones show (play-by-play
/// 2009-2022, hand-off states 2017-19, one whole game of tracking of 2017), most with the band they have to
/// lie in.
[[nodiscard]] std::vector<CardLine> calibrationCard(std::span<const WeightedReps> looks);
/// The gains alone, beside those of a level's own league: pro runs of 2015-19, a college conference's 2018;
/// nothing is known of high schools.
[[nodiscard]] std::vector<CardLine> gainCard(std::span<const WeightedReps> looks, Level level);

/// How far a card is from the middles of its bands: sum of squares in half bands, 0 at best.
[[nodiscard]] double distanceFromBands(std::span<const CardLine> card);

}  // namespace gapsound
