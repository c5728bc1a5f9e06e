#pragma once
#include <string>
#include <vector>

#include "scenario/setup.hpp"

namespace gapsound {

/// A puller or lead blocker and the two men the call puts around him.
struct Bracket {
  std::string blocker;
  std::string on;               // the defender he is for; empty: whoever shows
  std::string inside, outside;  // id of the man on that side of him; empty: nobody
};

/// A man who comes through or around the line for somebody: a puller, or a back, wing or receiver who kicks,
/// logs, wraps, leads or inserts.
[[nodiscard]] bool isLead(const BlockJob& job, bool attached);

/// The bracket rule: every puller and lead needs a defender inside and one outside of him. The man he is for
/// takes the side that spill or box gives him, the next man of the fit by the call the other one. Backers
/// called to shoot bracket nobody.
[[nodiscard]] std::vector<Bracket> bracketsOf(const Setup& setup);

}  // namespace gapsound
