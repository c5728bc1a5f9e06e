#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "scenario/setup.hpp"

namespace gapsound {

/// The trade's word for a block: "down", "kick", "combo", ...; "runs" for the man who is to carry.
[[nodiscard]] std::string_view wordOf(BlockKind kind);

/// One attacker's job against the front faced, in ids; empty where there is nobody.
struct Assignment {
  std::string player;
  std::string block;      // word of his block, "snaps" and "runs" for passer and carrier
  std::string target;     // whom he starts for
  std::string with;       // his mate in a double team
  std::string climbs_to;  // where the climb goes, on a double team: of the one who leaves
  std::string pull;       // "open", "skip", "flat" for a puller
  bool leaves = false;    // of two, he climbs
};
/// Line from the play side to the back side, then the others in the order of the Setup.
[[nodiscard]] std::vector<Assignment> assignmentsOf(const Setup& setup);

}  // namespace gapsound
