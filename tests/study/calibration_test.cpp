#include "study/calibration.hpp"

#include <doctest/doctest.h>

#include <boost/math/statistics/univariate_statistics.hpp>
#include <set>

#include "io/assets.hpp"
#include "io/calibration_file.hpp"
#include "looks.hpp"
#include "scenario/check.hpp"
#include "study/weighted.hpp"

using namespace gapsound;
using doctest::Approx;

namespace {

const CalibrationSet& set() {
  static const CalibrationSet read = readCalibrationSet(assetPath("calibration.json"));
  return read;
}

Setup setupOf(const CalibrationLook& look) {
  return resolve(look.scenario, looks::library(), looks::model());
}

std::vector<LookClass> classesOf(bool judges) {
  std::vector<LookClass> classes;
  for (const CalibrationLook& look : set().looks)
    if (look.judges == judges) classes.push_back({look.kind, menInBox(setupOf(look))});
  return classes;
}

Summary gain(double yards) {
  Summary rep;
  rep.yards = yards;
  return rep;
}

const CardLine& lineNamed(const std::vector<CardLine>& card, const std::string& name) {
  for (const CardLine& line : card)
    if (line.name == name) return line;
  FAIL("no line " << name);
  return card.front();
}

}  // namespace

TEST_CASE("the calibration set: two halves of at least twelve sound looks, no look in both") {
  std::set<std::string> titles;
  int judging = 0;
  for (const CalibrationLook& look : set().looks) {
    CAPTURE(look.scenario.title);
    judging += look.judges;
    CHECK(titles.insert(look.scenario.title).second);
    for (const GapOwner& gap : gapsOf(setupOf(look))) CHECK_FALSE(gap.owners.empty());
  }
  CHECK(judging >= 12);
  CHECK(set().looks.size() - static_cast<std::size_t>(judging) >= 12);
}

TEST_CASE("the calibration set spreads over formations, fronts, shells and both directions") {
  for (const bool judges : {false, true}) {
    std::set<std::string> formations, fronts, shells;
    int left = 0, all = 0;
    for (const CalibrationLook& look : set().looks) {
      if (look.judges != judges) continue;
      formations.insert(look.scenario.offense.formation);
      fronts.insert(look.scenario.defense.front);
      shells.insert(look.scenario.defense.shell);
      left += look.scenario.offense.direction == "left";
      ++all;
    }
    CHECK(formations.size() >= 8);
    CHECK(fronts.size() >= 6);
    CHECK(shells.size() >= 3);
    CHECK(left >= all / 3);
    CHECK(left <= 2 * all / 3);
  }
}

// Shares of runs and of men in the box as a league's teams show them (2022, weeks 1-9, for the box; the kinds
// of run are common practice, no source).
TEST_CASE("either half's weights add up to the shares real teams show") {
  for (const bool judges : {false, true}) {
    const auto classes = classesOf(judges);
    const auto weights = rakedWeights(set(), classes);
    std::array<double, kRunKinds> kinds{};
    std::array<double, kBoxes> boxes{};
    double sum = 0.0, most = 0.0;
    for (std::size_t k = 0; k < classes.size(); ++k) {
      kinds[static_cast<std::size_t>(classes[k].kind)] += weights[k];
      boxes[static_cast<std::size_t>(classes[k].box - kLeastBox)] += weights[k];
      sum += weights[k];
      most = std::max(most, weights[k]);
    }
    CHECK(sum == Approx(1.0));
    for (std::size_t k = 0; k < kinds.size(); ++k) CHECK(kinds[k] == Approx(set().kinds[k]).epsilon(0.02));
    for (std::size_t k = 0; k < boxes.size(); ++k) CHECK(boxes[k] == Approx(set().boxes[k]).epsilon(0.02));
    CHECK(most < 0.15);  // no look speaks for the rest
  }
}

TEST_CASE("raking by hand: two kinds in two boxes") {
  CalibrationSet two;
  two.kinds = {0.75, 0.25, 0.0, 0.0};
  two.boxes = {0.0, 0.5, 0.5, 0.0, 0.0};
  const std::vector<LookClass> looks{
      {RunKind::zone, 6}, {RunKind::zone, 7}, {RunKind::gap, 6}, {RunKind::gap, 7}};
  const auto weights = rakedWeights(two, looks);
  CHECK(weights[0] == Approx(0.375));
  CHECK(weights[1] == Approx(0.375));
  CHECK(weights[2] == Approx(0.125));
  CHECK(weights[3] == Approx(0.125));
}

TEST_CASE("weighted figures are those of values repeated by their weight") {
  Weighted weighted;
  WeightedPairs pairs, plain;
  std::vector<double> repeated;
  for (const auto& [value, weight] : {std::pair{2.0, 1}, {3.0, 4}, {-1.0, 2}, {11.0, 1}}) {
    weighted.add(value, weight);
    pairs.add(value, value * value, weight);
    for (int k = 0; k < weight; ++k) {
      repeated.push_back(value);
      plain.add(value, value * value, 1.0);
    }
  }
  CHECK(weighted.mean() == Approx(boost::math::statistics::mean(repeated)));
  CHECK(weighted.sd() == Approx(std::sqrt(boost::math::statistics::variance(repeated))));
  CHECK(weighted.quantile(0.5) == 3.0);
  CHECK(weighted.quantile(0.25) == -1.0);
  CHECK(weighted.shareFrom(3.0) == Approx(5.0 / 8.0));
  CHECK(pairs.correlation() == Approx(plain.correlation()));
  CHECK(Weighted{}.quantile(0.5) == 0.0);
}

TEST_CASE("a look counts by its weight, not by its reps") {
  const std::vector<Summary> much(30, gain(10.0)), little(3, gain(-2.0));
  const std::vector<WeightedReps> looks{{much, 0.25, true, 6}, {little, 0.75, false, 7}};
  const auto card = calibrationCard(looks);
  CHECK(lineNamed(card, "mean gain, yd").value == Approx(1.0));
  CHECK(lineNamed(card, "lost, %").value == Approx(0.75));
  CHECK(lineNamed(card, "10 and more, %").value == Approx(0.25));
  CHECK(lineNamed(card, "mean against 6 in the box, yd").value == Approx(10.0));
  CHECK(lineNamed(card, "mean against 7 in the box, yd").value == Approx(-2.0));
  CHECK(lineNamed(card, "never crossed the line, %").value == Approx(1.0));
  CHECK(lineNamed(card, "mean gain, yd").passes() == false);
}

TEST_CASE("a card at the middles of its bands is at no distance, half a band off at one") {
  std::vector<CardLine> card(2);
  card[0].band = Interval{1.0, 3.0}, card[0].value = 2.0;
  CHECK(distanceFromBands(card) == Approx(0.0));
  card[0].value = 3.0;
  CHECK(distanceFromBands(card) == Approx(1.0));
}
