#pragma once
#include <functional>
#include <map>
#include <string>
#include <vector>

#include "painters/window/input.hpp"
#include "picture/display_list.hpp"

namespace gapsound {

/// The events a pair of hands would make.
[[nodiscard]] std::vector<InputEvent> keyEvents(const KeyPress& press);
[[nodiscard]] std::vector<InputEvent> clickEvents(Vec2 at);
[[nodiscard]] std::vector<InputEvent> dragEvents(Vec2 from, Vec2 to);
[[nodiscard]] std::vector<InputEvent> typeEvents(const std::string& text);

/// One thing to do in the window, as written after --do: a key ("space", "ctrl+z"), "type 6.5", or the name
/// of a button or row to click. Throws InputError for a name that is not on the screen.
[[nodiscard]] std::vector<InputEvent> eventsFor(const std::string& deed,
                                                const std::map<std::string, PageRect>& places);
/// "m, Downhill, type 9" taken apart.
[[nodiscard]] std::vector<std::string> deedsIn(const std::string& text);

}  // namespace gapsound
