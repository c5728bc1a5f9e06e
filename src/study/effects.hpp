#pragma once
#include <string>
#include <vector>

#include "analysis/cast.hpp"
#include "scenario/scenario.hpp"
#include "study/reps.hpp"
#include "study/statistics.hpp"

namespace gapsound {

/// One thing changed about a look, on the man the look casts for it.
enum class Lever {
  safety_read,       // read_delay_s of the play-side safety
  safety_downhill,   // his downhill_yps
  safety_late,       // fault late_read on him, s
  safety_to_call,    // he runs to his called spot
  backer_late,       // fault late_read on the first backer, s
  backer_wide,       // fault scrape_wide on him, yd
  backer_to_call,    // he runs to his called spot
  end_kicked,        // fault kicked_out on the play-side end, yd
  box,               // the call is box instead of spill
  back_safety_flows  // fault flowed on the safety away from the run
};
struct Turn {
  Lever lever;
  double amount = 0.0;
};

enum class Measure {
  yards,
  cutback_open,
  cutback_taken,
  crossing,
  twelve_plus
};  // crossing: yd toward the play side
enum class Demand {
  more,     // at least `margin` more, at the confidence asked for
  bounded,  // the upper bound of the difference stays below `margin`
  reported  // no demand, the size is printed
};

/// A claim about two sides of one look on common random numbers.
struct Effect {
  std::string item;   // "a" ... "g"
  std::string words;  // what side B has that side A has not
  std::string look;   // key into effectLooks()
  std::vector<Turn> a, b;
  Measure measure = Measure::yards;
  Demand demand = Demand::more;
  double margin = 0.0;
  double alpha = 0.001;
  int n = 3000;
  bool shown = true;  // false: the present model does not show it; printed as a miss, not asserted by a test
  bool costly = false;  // from more reps than a test has time for: the command plays it, no test asserts it
};

struct EffectLook {
  std::string key, words;
  Scenario scenario;
};
[[nodiscard]] std::vector<EffectLook> effectLooks();
[[nodiscard]] std::vector<Effect> effectList();

/// Lays the turns on a look whose cast is known. Throws Error(badInput) when the look lacks the man.
[[nodiscard]] Scenario turned(Scenario look, const Setup& resolved, const std::vector<Turn>& turns);

struct EffectResult {
  Paired paired;  // at 95 %
  Interval wide;  // at 99.9 %
  double mean_a = 0, mean_b = 0;
  bool holds = true;  // always true for reported
};
/// Judges an effect on the reps of its two sides, seed by seed. Reps that never crossed are left out of
/// `crossing`.
[[nodiscard]] EffectResult judge(const Effect& effect, int direction, const std::vector<Summary>& a,
                                 const std::vector<Summary>& b);

}  // namespace gapsound
