#include "app/hands.hpp"

#include <sstream>

#include "base/error.hpp"
#include "base/nearest.hpp"

namespace gapsound {
namespace {

using Kind = InputEvent::Kind;

InputEvent key(Kind kind, Key which) { return {kind, {}, 0, 0.0, which, 0}; }
InputEvent moveTo(Vec2 at) { return {Kind::move, at, 0, 0.0, Key::none, 0}; }
InputEvent button(Kind kind) { return {kind, {}, 0, 0.0, Key::none, 0}; }

std::string trimmed(const std::string& text) {
  const auto from = text.find_first_not_of(' ');
  return from == std::string::npos ? "" : text.substr(from, text.find_last_not_of(' ') - from + 1);
}

std::vector<std::string> namesOf(const std::map<std::string, PageRect>& places) {
  std::vector<std::string> names;
  names.reserve(places.size());
  for (const auto& [name, box] : places) names.push_back(name);
  return names;
}

}  // namespace

std::vector<InputEvent> keyEvents(const KeyPress& press) {
  std::vector<InputEvent> events;
  const std::pair<bool, Key> modifiers[] = {
      {press.control, Key::control}, {press.alt, Key::alt}, {press.shift, Key::shift}};
  for (const auto& [on, which] : modifiers) {
    if (on) events.push_back(key(Kind::key_down, which));
  }
  events.push_back(key(Kind::key_down, press.key));
  events.push_back(key(Kind::key_up, press.key));
  for (const auto& [on, which] : modifiers) {
    if (on) events.push_back(key(Kind::key_up, which));
  }
  return events;
}

std::vector<InputEvent> clickEvents(Vec2 at) {
  return {moveTo(at), button(Kind::press), button(Kind::release)};
}

std::vector<InputEvent> dragEvents(Vec2 from, Vec2 to) {
  constexpr int kSteps = 8;
  std::vector<InputEvent> events{moveTo(from), button(Kind::press)};
  for (int i = 1; i <= kSteps; ++i) events.push_back(moveTo(from + (1.0 * i / kSteps) * (to - from)));
  events.push_back(button(Kind::release));
  return events;
}

std::vector<InputEvent> typeEvents(const std::string& text) {
  std::vector<InputEvent> events;
  for (const char letter : text) {
    events.push_back({Kind::text, {}, 0, 0.0, Key::none, static_cast<std::uint32_t>(letter)});
  }
  for (const InputEvent& event : keyEvents({Key::enter, false, false, false})) events.push_back(event);
  return events;
}

std::vector<InputEvent> eventsFor(const std::string& deed, const std::map<std::string, PageRect>& places) {
  constexpr std::string_view kType = "type ";
  if (const auto press = keyPressNamed(deed)) return keyEvents(*press);
  if (deed.rfind(kType, 0) == 0) return typeEvents(deed.substr(kType.size()));
  const auto place = places.find(deed);
  if (place == places.end())
    throw InputError("options", "--do", deed, "a key, type TEXT, or " + nameHint(deed, namesOf(places)));
  return clickEvents(place->second.middle());
}

std::vector<std::string> deedsIn(const std::string& text) {
  std::vector<std::string> deeds;
  std::istringstream in(text);
  for (std::string part; std::getline(in, part, ',');) {
    if (const std::string deed = trimmed(part); !deed.empty()) deeds.push_back(deed);
  }
  return deeds;
}

}  // namespace gapsound
