#include "study/card.hpp"

#include <algorithm>
#include <array>

namespace gapsound {
namespace {

using Form = CardLine::Form;
constexpr double kLongRun = 20.0;  // yd: correlations leave longer runs out, as the source does

template <typename Value>
double averageOf(std::span<const Summary> reps, const Value& value) {
  double sum = 0.0;
  for (const Summary& rep : reps) sum += static_cast<double>(value(rep));
  return reps.empty() ? 0.0 : sum / static_cast<double>(reps.size());
}

template <typename Part, typename Whole>
double ratioOf(std::span<const Summary> reps, const Part& part, const Whole& whole) {
  double hits = 0.0, all = 0.0;
  for (const Summary& rep : reps) {
    hits += part(rep);
    all += whole(rep);
  }
  return all > 0.0 ? hits / all : 0.0;
}

template <typename Value>
double correlationWithYards(std::span<const Summary> reps, const Value& value) {
  std::vector<double> yards, values;
  for (const Summary& rep : reps) {
    if (rep.t_line < 0.0 || rep.yards > kLongRun) continue;
    yards.push_back(rep.yards);
    values.push_back(static_cast<double>(value(rep)));
  }
  return correlationOf(values, yards);
}

class CardWriter {
 public:
  CardWriter(std::span<const Summary> reps, bool comparable) : reps_(reps), d_(distributionOf(reps)) {
    gains();
    times();
    speeds();
    surroundings();
    movement();
    choices();
    if (comparable)
      line("top 1st contact", topFirstContact(reps).share, Form::share, "", Interval{0.0, 0.35});
    else
      line("top 1st contact", 0.0, Form::share);
  }
  [[nodiscard]] std::vector<CardLine> lines() && { return std::move(lines_); }

 private:
  void line(const char* name, double value, Form form, const char* real = "",
            std::optional<Interval> band = {}) {
    lines_.push_back({name, value, form, real, band});
  }

  void gains() {
    line("n", d_.n, Form::one);
    line("mean", d_.mean, Form::two, "4.24", Interval{3.4, 5.4});
    line("sd", d_.sd, Form::two, "6.44");
    line("median", d_.median, Form::one, "3", Interval{2.5, 4.0});
    line("p10", d_.p10, Form::one, "-1");
    line("p90", d_.p90, Form::one, "10");
    line("< 0", d_.lost, Form::share, "10.8");
    line("<= 0", d_.stuffed, Form::share, "19.8", Interval{0.13, 0.26});
    line(">= 4", d_.four_plus, Form::share, "43.3", Interval{0.33, 0.52});
    line(">= 10", d_.ten_plus, Form::share, "10.8", Interval{0.065, 0.15});
    line(">= 20", d_.twenty_plus, Form::share, "2.5", Interval{0.01, 0.06});
    line("never crossed", d_.timing.never_crossed, Form::share, "12.5");
  }

  void times() {
    const Timing& t = d_.timing;
    line("t hand-off", t.t_handoff, Form::two, "1.1-1.4", Interval{1.0, 1.5});
    line("t line", t.t_line, Form::two, "2.5", Interval{2.2, 2.9});
    line("t 1st contact", t.t_first_contact, Form::two, "3.1", Interval{2.5, 3.6});
    line("t end", t.t_end, Form::two, "4.3", Interval{3.4, 5.2});
    line("contact to end", t.contact_to_end, Form::two, "1.0");
    line("after contact", t.after_contact_mean, Form::two, "1.6");
  }

  void speeds() {
    const Timing& t = d_.timing;
    line("v hand-off", t.speed_handoff, Form::two, "4.5");
    line("depth hand-off", t.depth_handoff, Form::two, "4.9");
    line("v line", t.line_speed, Form::two, "5.3", Interval{4.5, 6.3});
    line("v 1.0 s", t.speed_1s, Form::two, "4.3");
    line("v 1.5 s", t.speed_1_5s, Form::two, "5.3");
    line("v 2.0 s", t.speed_2s, Form::two, "5.9");
    line("best speed", t.best_speed, Form::two, "6.0");
  }

  void surroundings() {
    line("nearest at line", d_.timing.nearest_defender_line, Form::two, "1.3", Interval{0.9, 1.9});
    line("within 3 yd", d_.timing.defenders_within_3, Form::one, "3");
    line("r men near", correlationWithYards(reps_, [](const Summary& s) { return s.defenders_within_3; }),
         Form::two, "-.61");
    line("r speed", correlationWithYards(reps_, [](const Summary& s) { return s.speed_line; }), Form::two,
         ".58");
    line("r nearest", correlationWithYards(reps_, [](const Summary& s) { return s.nearest_defender_line; }),
         Form::two, ".48");
  }

  void movement() {
    const auto mean = [&](double Summary::*field) {
      return averageOf(reps_, [=](const Summary& s) { return s.*field; });
    };
    line("line fwd 1 s", mean(&Summary::line_forward_1s), Form::two, "0.4");
    line("line fwd 2 s", mean(&Summary::line_forward_2s), Form::two, "1.1");
    line("line fwd 3 s", mean(&Summary::line_forward_3s), Form::two, "2.0");
    line("backers 1 s", mean(&Summary::backers_forward_1s), Form::two, "0.8");
    line("backers 1.5 s", mean(&Summary::backers_forward_1_5s), Form::two, "1.5");
    line("backers 2 s", mean(&Summary::backers_forward_2s), Form::two, "2.2");
  }

  void choices() {
    line("cutback open", d_.cutback_open, Form::share);
    line("cutback taken", d_.cutback_taken, Form::share, "gap 8-25");
    line("bounced", d_.bounced, Form::share);
    line("missed tackles", d_.missed_tackles, Form::share, "10");
    line("blockers touch",
         ratioOf(
             reps_, [](const Summary& s) { return s.blockers_touched; },
             [](const Summary& s) { return s.blockers; }),
         Form::share, "", Interval{0.85, 1.0});
    const auto pullers = [](const Summary& s) { return s.pullers; };
    const bool pulls = averageOf(reps_, pullers) > 0.0;
    line("pullers met",
         ratioOf(
             reps_, [](const Summary& s) { return s.pullers_met; }, pullers),
         Form::share, "", pulls ? std::optional(Interval{0.8, 1.0}) : std::nullopt);
    line("stood still", averageOf(reps_, [](const Summary& s) { return s.stood_still; }), Form::share, "",
         Interval{0.0, 0.02});
  }

  std::span<const Summary> reps_;
  Distribution d_;
  std::vector<CardLine> lines_;
};

}  // namespace

TopMan topFirstContact(std::span<const Summary> reps) {
  std::array<int, kMen> hits{};
  int all = 0;
  for (const Summary& rep : reps) {
    if (rep.first_contact_man == kNobody) continue;
    ++hits[static_cast<std::size_t>(rep.first_contact_man)];
    ++all;
  }
  if (all == 0) return {};
  const auto top = std::max_element(hits.begin(), hits.end());
  return {static_cast<int>(top - hits.begin()), static_cast<double>(*top) / all};
}

std::vector<CardLine> cardOf(std::span<const Summary> reps, bool men_are_comparable) {
  return CardWriter(reps, men_are_comparable).lines();
}

}  // namespace gapsound
