#pragma once
#include <cstdint>
#include <optional>
#include <string_view>

namespace gapsound {

/// Kinds of men, by body and habits.
enum class Group : std::uint8_t {
  receiver,
  corner,
  safety,
  back,
  fullback,
  tight_end,
  quarterback,
  backer,
  edge,
  tackle,
  off_tackle,
  guard,
  center
};
inline constexpr int kGroups = 13;

[[nodiscard]] std::string_view nameOf(Group group);
[[nodiscard]] std::optional<Group> groupNamed(std::string_view name);

}  // namespace gapsound
