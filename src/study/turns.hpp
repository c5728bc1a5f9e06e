#pragma once
#include <string>
#include <vector>

#include "base/model.hpp"
#include "football/library.hpp"
#include "scenario/scenario.hpp"
#include "scenario/setup.hpp"

namespace gapsound {

/// One setting of the defense that a staff can call otherwise, and the look with it.
struct OtherCall {
  std::string path, value;  // as --set takes them: "players.SS.depth_yd", "7"
  std::string words;        // "SS at 7 yd, not 10"
  int level = 0;            // whose level it concerns; 0: all
  int price = 1;  // 1: one man stands or moves otherwise, 2: a level fits otherwise, 3: a word for all
  Setup look;
};

/// What may be called otherwise than in this scenario: depth and speed of safeties, depth of backers, what a
/// level fits off, spill or box, the backside backer's word, a movement of the front. What the library
/// refuses is left out.
[[nodiscard]] std::vector<OtherCall> otherCalls(const Scenario& scenario, const Library& library,
                                                const Model& model);

/// The look a scenario has at the snap: of one that starts from film, the look its men came from.
[[nodiscard]] Setup lookAtSnap(const Scenario& scenario, const Library& library, const Model& model);

}  // namespace gapsound
