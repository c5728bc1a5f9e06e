#pragma once
#include <optional>
#include <span>
#include <string>

#include "app/desk.hpp"
#include "painters/window/input.hpp"

namespace gapsound {

/// Something a key does. The help and the hints under the mouse read from the same table.
struct Command {
  KeyPress press;
  const char* name;   // as written on its button, where it has one
  const char* words;  // for the help
  void (*run)(Desk&);
};
[[nodiscard]] std::span<const Command> commands();
/// The command of that name; throws Error(ourFault) when there is none.
[[nodiscard]] const Command& commandNamed(std::string_view name);
/// Runs what the key stands for; false when it stands for nothing.
bool runKey(Desk& desk, const KeyPress& press);

}  // namespace gapsound
