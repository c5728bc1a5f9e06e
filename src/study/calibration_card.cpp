#include <array>
#include <functional>

#include "study/calibration.hpp"
#include "study/weighted.hpp"

namespace gapsound {
namespace {

using Form = CardLine::Form;
using Looks = std::span<const WeightedReps>;
constexpr double kLongRun = 20.0;  // yd: correlations leave longer runs out, as the source does

/// What a league's own runs gained, as text, in the order of the card.
using GainRow = std::array<const char*, 12>;
constexpr GainRow kPro{"4.24", "6.44", "3", "-1", "1", "6", "10", "10.8", "19.8", "43.3", "10.8", "2.5"};
constexpr GainRow kCollege{"5.13", "7.84", "3", "0", "1", "7", "12", "9.4", "17.0", "49.1", "13.7", "3.8"};
constexpr GainRow kUnknown{"", "", "", "", "", "", "", "", "", "", "", ""};

/// One value of every rep that has it, each counting for its share of its look.
template <typename Has, typename Value>
Weighted collected(Looks looks, const Has& has, const Value& value) {
  Weighted all;
  for (const WeightedReps& look : looks) {
    const double each = look.weight / static_cast<double>(look.reps.size());
    for (const Summary& rep : look.reps)
      if (has(rep, look)) all.add(static_cast<double>(value(rep)), each);
  }
  return all;
}

template <typename Value>
Weighted ofAll(Looks looks, const Value& value) {
  return collected(
      looks, [](const Summary&, const WeightedReps&) { return true; }, value);
}

bool crossed(const Summary& rep, const WeightedReps&) { return rep.t_line >= 0.0; }
bool touched(const Summary& rep, const WeightedReps&) { return rep.t_first_contact >= 0.0; }
bool handed(const Summary& rep, const WeightedReps&) { return rep.t_handoff >= 0.0; }

template <typename Value>
double correlationWithGain(Looks looks, const Value& value) {
  WeightedPairs pairs;
  for (const WeightedReps& look : looks)
    for (const Summary& rep : look.reps)
      if (rep.t_line >= 0.0 && rep.yards <= kLongRun)
        pairs.add(static_cast<double>(value(rep)), rep.yards,
                  look.weight / static_cast<double>(look.reps.size()));
  return pairs.correlation();
}

double meanAgainst(Looks looks, int box) {
  return collected(
             looks, [=](const Summary&, const WeightedReps& look) { return look.box == box; },
             [](const Summary& rep) { return rep.yards; })
      .mean();
}

class Writer {
 public:
  explicit Writer(Looks looks) : looks_(looks) {}
  [[nodiscard]] std::vector<CardLine> lines() && { return std::move(lines_); }

  void gains(const GainRow& real, bool judged) {
    const auto band = [=](double low, double high) {
      return judged ? std::optional(Interval{low, high}) : std::nullopt;
    };
    const Weighted raw = ofAll(looks_, [](const Summary& rep) { return rep.yards; });
    const Weighted whole = ofAll(looks_, [](const Summary& rep) { return wholeYards(rep.yards); });
    const auto below = [&](double least) { return 1.0 - whole.shareFrom(least); };
    line("mean gain, yd", raw.mean(), Form::two, real[0], band(3.9, 5.1));
    line("standard deviation, yd", raw.sd(), Form::two, real[1], band(5.0, 7.8));
    line("median, yd", whole.quantile(0.5), Form::one, real[2], band(2.5, 3.5));
    line("10th percentile, yd", whole.quantile(0.1), Form::one, real[3]);
    line("25th percentile, yd", whole.quantile(0.25), Form::one, real[4]);
    line("75th percentile, yd", whole.quantile(0.75), Form::one, real[5]);
    line("90th percentile, yd", whole.quantile(0.9), Form::one, real[6]);
    line("lost, %", below(0.0), Form::share, real[7], band(0.07, 0.14));
    line("no gain, %", below(1.0), Form::share, real[8], band(0.15, 0.23));
    line("4 and more, %", whole.shareFrom(4.0), Form::share, real[9], band(0.39, 0.50));
    line("10 and more, %", whole.shareFrom(10.0), Form::share, real[10], band(0.085, 0.145));
    line("20 and more, %", whole.shareFrom(20.0), Form::share, real[11], band(0.015, 0.045));
  }

  void boxes() {
    constexpr std::array<const char*, kBoxes> real{"5.35", "4.97", "4.48", "4.12", "3.03"};
    int falls = 0;
    double before = 0.0;
    for (int box = kLeastBox; box <= kMostBox; ++box) {
      const double mean = meanAgainst(looks_, box);
      line("mean against " + std::to_string(box) + " in the box, yd", mean, Form::two,
           real[static_cast<std::size_t>(box - kLeastBox)]);
      falls += box > kLeastBox && mean < before;
      before = mean;
    }
    line("times it falls with one man more, of 4", falls, Form::one, "4", Interval{4.0, 4.0});
  }

  void times() {
    const auto handOff = [&](bool under_center) {
      return collected(
                 looks_,
                 [=](const Summary& rep, const WeightedReps& look) {
                   return rep.t_handoff >= 0.0 && look.under_center == under_center;
                 },
                 [](const Summary& rep) { return rep.t_handoff; })
          .quantile(0.5);
    };
    line("hand-off under center, s", handOff(true), Form::two, "1.4", Interval{1.2, 1.5});
    line("hand-off from the gun, s", handOff(false), Form::two, "1.1", Interval{0.95, 1.25});
    median("line crossed, s", crossed, &Summary::t_line, "2.5", Interval{2.25, 2.75});
    const Weighted reached = ofAll(looks_, [](const Summary& rep) { return rep.t_line < 0.0 ? 1.0 : 0.0; });
    line("never crossed the line, %", reached.mean(), Form::share, "12.5", Interval{0.08, 0.17});
    median("first contact, s", touched, &Summary::t_first_contact, "3.1", Interval{2.7, 3.5});
    line("end, s", ofAll(looks_, [](const Summary& rep) { return rep.t_end; }).quantile(0.5), Form::two,
         "4.3", Interval{3.8, 4.8});
  }

  void carrier() {
    median("speed at the hand-off, yd/s", handed, &Summary::speed_handoff, "4.5", Interval{4.0, 5.0});
    median("depth at the hand-off, yd", handed, &Summary::depth_handoff, "4.9");
    median("speed at the line, yd/s", crossed, &Summary::speed_line, "5.3", Interval{4.7, 6.2});
    line("best speed, yd/s", ofAll(looks_, [](const Summary& rep) { return rep.best_speed; }).quantile(0.5),
         Form::two, "6.0", Interval{5.5, 7.0});
    median("nearest defender at the line, yd", crossed, &Summary::nearest_defender_line, "1.3",
           Interval{1.0, 1.7});
    line("defenders within 3 yd there",
         collected(looks_, crossed, [](const Summary& rep) { return rep.defenders_within_3; }).quantile(0.5),
         Form::one, "3", Interval{2.0, 4.0});
    line("yards after contact, mean",
         collected(looks_, touched, [](const Summary& rep) { return rep.yards_after_contact; }).mean(),
         Form::two, "1.6", Interval{1.2, 2.1});
    line("first contact to tackle, s",
         collected(looks_, touched, [](const Summary& rep) { return rep.t_end - rep.t_first_contact; })
             .quantile(0.5),
         Form::two, "1.0", Interval{0.7, 1.3});
  }

  void movement() {
    const auto mean = [&](double Summary::*field) {
      return ofAll(looks_, [=](const Summary& rep) { return rep.*field; }).mean();
    };
    line("offensive line forward after 1 s, yd", mean(&Summary::line_forward_1s), Form::two, "0.4",
         Interval{0.2, 0.7});
    line("after 2 s", mean(&Summary::line_forward_2s), Form::two, "1.1", Interval{0.7, 1.6});
    line("after 3 s", mean(&Summary::line_forward_3s), Form::two, "2.0", Interval{1.4, 2.7});
    line("backers forward after 1 s, yd", mean(&Summary::backers_forward_1s), Form::two, "0.8");
    line("backers forward after 2 s, yd", mean(&Summary::backers_forward_2s), Form::two, "2.2");
  }

  void correlations() {
    line("gain against defenders near, r",
         correlationWithGain(looks_, [](const Summary& rep) { return rep.defenders_within_3; }), Form::two,
         "-0.61", Interval{-0.76, -0.46});
    line("gain against speed at the line, r",
         correlationWithGain(looks_, [](const Summary& rep) { return rep.speed_line; }), Form::two, "0.58",
         Interval{0.43, 0.73});
    line("gain against nearest defender, r",
         correlationWithGain(looks_, [](const Summary& rep) { return rep.nearest_defender_line; }), Form::two,
         "0.48");
  }

 private:
  void line(std::string name, double value, Form form, const char* real, std::optional<Interval> band = {}) {
    lines_.push_back({std::move(name), value, form, real, band});
  }
  template <typename Has>
  void median(const char* name, const Has& has, double Summary::*field, const char* real,
              std::optional<Interval> band = {}) {
    line(name, collected(looks_, has, [=](const Summary& rep) { return rep.*field; }).quantile(0.5),
         Form::two, real, band);
  }

  Looks looks_;
  std::vector<CardLine> lines_;
};

}  // namespace

std::vector<CardLine> calibrationCard(Looks looks) {
  Writer writer(looks);
  writer.gains(kPro, true);
  writer.boxes();
  writer.times();
  writer.carrier();
  writer.movement();
  writer.correlations();
  return std::move(writer).lines();
}

std::vector<CardLine> gainCard(Looks looks, Level level) {
  Writer writer(looks);
  writer.gains(level == Level::pro ? kPro : level == Level::college ? kCollege : kUnknown, false);
  return std::move(writer).lines();
}

}  // namespace gapsound
