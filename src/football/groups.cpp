#include "football/groups.hpp"

#include <array>

namespace gapsound {
namespace {
constexpr std::array<std::string_view, kGroups> kNames = {
    "receiver", "corner", "safety", "back",       "fullback", "tight_end", "quarterback",
    "backer",   "edge",   "tackle", "off_tackle", "guard",    "center"};
}  // namespace

std::string_view nameOf(Group group) { return kNames[static_cast<std::size_t>(group)]; }

std::optional<Group> groupNamed(std::string_view name) {
  for (std::size_t i = 0; i < kNames.size(); ++i) {
    if (kNames[i] == name) return static_cast<Group>(i);
  }
  return std::nullopt;
}

}  // namespace gapsound
