#pragma once
#include <array>
#include <optional>
#include <string>
#include <vector>

#include "football/states.hpp"

namespace gapsound {

inline constexpr int kFitRoles = 11;

/// What a man in a role is told, by the call's structure.
struct RoleWords {
  std::string name;
  struct Way {
    std::string landmark, technique;
  };
  std::array<Way, 2> ways;     // [Structure]
  std::optional<Way> no_kick;  // an edge whom nobody comes to kick or log
};
/// What a lineman does about what he sees of the man over him.
struct LineRead {
  std::string seen;                 // after "if"
  std::array<std::string, 2> does;  // [Structure]
};

/// The words of sheets, cards and questions, read from assets/library/phrases.json; edited by coaches.
struct Phrases {
  std::array<RoleWords, kFitRoles> roles;  // by FitRole
  std::vector<LineRead> line_reads;
  std::array<std::string, kEndStates> ends;        // after the end's name
  std::array<std::string, kBackerStates> backers;  // after the first backer's name
  std::array<std::string, kFits> fits;             // what a man is told
};

}  // namespace gapsound
