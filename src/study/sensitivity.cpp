#include "study/sensitivity.hpp"

namespace gapsound {
namespace {

Scenario look(const char* front) {
  Scenario s;
  s.source = "sensitivity";
  s.title = std::string("power against ") + front;
  s.level = Level::pro;
  s.offense.formation = "F03";
  s.offense.scheme = "R01";
  s.defense.front = front;
  return s;
}

Scenario counter() {
  Scenario s = look("D01");
  s.title = "counter against D01";
  s.offense.scheme = "R02";
  return s;
}

Scenario withSafety(Scenario s, double read_s, double downhill_yps) {
  s.players["SS"].read_delay_s = read_s;
  s.players["SS"].downhill_yps = downhill_yps;
  return s;
}

Scenario withFault(Scenario s, const char* man, FaultKind kind, double amount) {
  s.faults.push_back({man, {kind, amount}});
  return s;
}

Scenario onCall(Scenario s, const char* man) {
  s.players[man].fit_off = FitOff::call;
  return s;
}

double answer(const Played& played, int headline, std::size_t rep) {
  const auto at = static_cast<std::size_t>(2 * headline);
  return played[at + 1][rep].yards - played[at][rep].yards;
}

struct Means {
  double yards = 0.0, cutback = 0.0;
};
Means meansOf(const Played& played, std::size_t reps) {
  Means sum;
  double n = 0.0;
  for (const auto& side : played) {
    for (std::size_t k = 0; k < reps; ++k) {
      const Summary& rep = side[k];
      sum.yards += rep.yards;
      sum.cutback += rep.cutback_taken ? 1.0 : 0.0;
      n += 1.0;
    }
  }
  return n > 0.0 ? Means{sum.yards / n, sum.cutback / n} : sum;
}

}  // namespace

std::array<Headline, kHeadlines> headlines() {
  const Scenario power = look("D01"), early = withSafety(counter(), 0.5, 5.0);
  const Scenario sound = withSafety(power, 1.1, 9.0);
  const Scenario kicked = withFault(power, "SE", FaultKind::kicked_out, 1.0);
  return {{{"an early safety at 9 yd/s, not 5", early, withSafety(counter(), 0.5, 9.0)},
           {"the first backer scrapes too wide", sound, withFault(sound, "S", FaultKind::scrape_wide, 2.0)},
           {"kicked end: over the top anyway", kicked, onCall(kicked, "S")},
           {"4-2-5 over, not 4-3 over, against power", power, look("D03")}}};
}

Paired answerOf(const Played& played, int headline) {
  std::vector<double> a, b;
  const auto at = static_cast<std::size_t>(2 * headline);
  for (const Summary& rep : played[at]) a.push_back(rep.yards);
  for (const Summary& rep : played[at + 1]) b.push_back(rep.yards);
  return pairedDifference(a, b, 0.99);
}

Sensitivity sensitivityOf(const Played& unchanged, const Played& changed) {
  Sensitivity s;
  const std::size_t reps = changed.front().size();
  const Means before = meansOf(unchanged, reps), after = meansOf(changed, reps);
  s.yards = after.yards - before.yards;
  s.cutback = after.cutback - before.cutback;
  for (int k = 0; k < kHeadlines; ++k) {
    std::vector<double> a, b;
    for (std::size_t rep = 0; rep < reps; ++rep) {
      a.push_back(answer(unchanged, k, rep));
      b.push_back(answer(changed, k, rep));
    }
    s.shift[static_cast<std::size_t>(k)] = pairedDifference(a, b, 0.99);
  }
  return s;
}

bool couldTurn(const Paired& answer, const Paired& shift) {
  const double moved = answer.difference + shift.difference;
  return moved * answer.difference < 0.0 && shift.p_value < 0.05;
}

}  // namespace gapsound
