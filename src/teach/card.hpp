#pragma once
#include <string>
#include <vector>

#include "picture/paper.hpp"
#include "tape/tape.hpp"
#include "teach/layout.hpp"

namespace gapsound {

/// A card the scout team runs a play from: their play drawn against our call.
struct ScoutCard {
  std::string number;  // "3R"
  std::string play;    // as the staff calls it
  std::string look;    // "F01 R01 right, middle, 1 and 10"
  std::string call;    // ours
  Tape drawn;
  std::vector<std::string> movers;  // who pulls, kicks, leads or carries, at most four lines
};

/// `drawn` is a rep of the card's look; jobs are read from its setup.
[[nodiscard]] ScoutCard scoutCardOf(const Tape& drawn, const std::string& number, const std::string& play,
                                    const std::string& call);

struct CardLook {
  Paper paper = Paper::letter;
  int to_a_page = 1;  // 1 lying, 2 upright, 4 lying
};
/// Cards in order, as many to a page as asked for; the last page may have room left.
[[nodiscard]] std::vector<LaidPage> cardPages(const std::vector<ScoutCard>& cards, const CardLook& look);

}  // namespace gapsound
