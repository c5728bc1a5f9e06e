#pragma once
#include <map>
#include <string>
#include <vector>

#include "base/model.hpp"
#include "football/library.hpp"
#include "scenario/scenario.hpp"
#include "scenario/setup.hpp"

namespace gapsound {

/// A run the opponent shows.
struct PlanRun {
  std::string name;  // as the staff calls it; never empty
  OffensePlan offense;
  FieldSpot field;
  double share = 0.0;  // of their runs, [0, 1]; 0: not charted
  int seen = 0;        // snaps it was charted on; 0: not charted
  double gain = 0.0;   // mean yards when they ran it, valid when seen > 0
  bool thin = false;   // charted too seldom to trust its share or gain
  std::string note;
};

/// One of our calls.
struct PlanCall {
  std::string name;  // never empty
  DefensePlan defense;
};

/// An inside-run period of the week's practice.
struct PracticeDay {
  std::string day = "Tuesday";
  int reps = 16;
  double minutes = 12.0;
  std::string contact = "thud";             // air, bag, control, thud, live
  double other_full_contact_minutes = 0.0;  // thud and live of the rest of that day
};

/// A week: their runs, our calls, what is special about single men, the periods they are practised in. Plain
/// data; names are looked up when a pair is resolved.
struct Plan {
  int format = 1;
  std::string source = "plan";  // file it came from, for messages
  std::string title;
  Level level = Level::high_school;
  std::string clock = "hand";
  std::vector<PlanRun> runs;
  std::vector<PlanCall> calls;
  std::map<std::string, ManSettings> players;  // laid on every pair whose look has the man
  std::vector<PracticeDay> practice;
};

/// Run and call, by their place in the plan, as a scenario without the players; [0, runs) and [0, calls).
[[nodiscard]] Scenario pairOf(const Plan& plan, std::size_t run, std::size_t call);
/// The pair with the settings of those players its look has. Throws InputError like resolve().
[[nodiscard]] Scenario pairWithPlayers(const Plan& plan, std::size_t run, std::size_t call,
                                       const Library& library, const Model& model);
/// Every pair resolved, result[run][call]. Throws InputError for a player who is in none of the looks, too.
[[nodiscard]] std::vector<std::vector<Setup>> resolveAll(const Plan& plan, const Library& library,
                                                         const Model& model);

}  // namespace gapsound
