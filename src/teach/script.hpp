#pragma once
#include <string>
#include <vector>

#include "picture/paper.hpp"
#include "scenario/plan.hpp"
#include "teach/layout.hpp"

namespace gapsound {

/// Minutes of full contact (thud and live) a school team should not pass, and how many days may have any:
/// "Recommendations and guidelines for minimizing head impact exposure and concussion risk in football", task
/// force of the school federation, 2014. Each state decides; air, bag and control are not limited.
struct ContactGuidance {
  double a_day = 30.0, a_week_low = 60.0, a_week = 90.0;  // minutes
  int days = 3;
};

/// One rep of an inside-run period.
struct ScriptRow {
  int rep = 0;
  std::string card, run, call, intent, contact;
  double minute = 0.0;  // it begins in the period
};
struct DayScript {
  std::string day;
  PracticeDay period;
  std::vector<ScriptRow> rows;
};
/// What the script needs to know of a run: its card number and what to look at in each call.
struct ScriptRun {
  std::string name, card;
  std::vector<std::string> intents;  // by call
  double share = 0.0;
};

/// Each day's reps, shared among the runs by how often they are run, every run once before any twice; calls
/// take turns. Without charted shares all runs count the same.
[[nodiscard]] std::vector<DayScript> scriptsOf(const std::vector<PracticeDay>& days,
                                               const std::vector<ScriptRun>& runs,
                                               const std::vector<std::string>& calls);
/// Minutes of full contact in a day and in the week, and a sentence for each figure passed; empty: none is.
[[nodiscard]] double fullContact(const PracticeDay& day);
[[nodiscard]] std::vector<std::string> contactWarnings(const std::vector<PracticeDay>& days,
                                                       const ContactGuidance& guidance = {});
/// One upright page a day, warnings of the week on each.
[[nodiscard]] std::vector<LaidPage> scriptPages(const std::vector<DayScript>& days, Paper paper);

}  // namespace gapsound
