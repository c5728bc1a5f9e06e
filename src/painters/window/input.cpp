#include "painters/window/input.hpp"

#include <algorithm>

namespace gapsound {
namespace {

constexpr auto kKeyNames = std::to_array<std::string_view>({
#define X(name) #name,
    GAPSOUND_KEYS(X)
#undef X
});

bool isFigure(std::string_view name) { return name.size() == 2 && name[0] == 'n' && name[1] <= '9'; }

/// What has happened in the frame being put together.
struct Told {
  bool button = false, wheel = false, key = false, text = false, move = false;
  std::array<bool, kKeys> keys{};

  [[nodiscard]] bool hides(const InputEvent& event) const {
    switch (event.kind) {
      case InputEvent::Kind::move:
        return button || wheel || key || text;
      case InputEvent::Kind::press:
      case InputEvent::Kind::release:
        return button || wheel || key;
      case InputEvent::Kind::wheel:
        return button || wheel;
      case InputEvent::Kind::key_down:
      case InputEvent::Kind::key_up:
        return keys[static_cast<std::size_t>(event.key)] || button || text;
      case InputEvent::Kind::text:
        return key || button || move || wheel;
      case InputEvent::Kind::lost_focus:
        return button || key || text;
    }
    return false;
  }

  void add(const InputEvent& event) {
    button |= event.kind == InputEvent::Kind::press || event.kind == InputEvent::Kind::release;
    wheel |= event.kind == InputEvent::Kind::wheel;
    text |= event.kind == InputEvent::Kind::text;
    move |= event.kind == InputEvent::Kind::move;
    if (event.kind != InputEvent::Kind::key_down && event.kind != InputEvent::Kind::key_up) return;
    key = keys[static_cast<std::size_t>(event.key)] = true;
  }
};

bool takePrefix(std::string_view& text, std::string_view prefix) {
  if (text.rfind(prefix, 0) != 0) return false;
  text.remove_prefix(prefix.size());
  return true;
}

}  // namespace

std::string_view nameOf(Key key) {
  if (key == Key::none) return "none";
  const std::string_view name = kKeyNames[static_cast<std::size_t>(key)];
  return isFigure(name) ? name.substr(1) : name;
}

std::optional<Key> keyNamed(std::string_view name) {
  for (int k = 0; k < kKeys; ++k) {
    if (nameOf(static_cast<Key>(k)) == name) return static_cast<Key>(k);
  }
  return std::nullopt;
}

std::string nameOf(const KeyPress& press) {
  std::string name;
  if (press.control) name += "ctrl+";
  if (press.alt) name += "alt+";
  if (press.shift) name += "shift+";
  return name + std::string(nameOf(press.key));
}

std::optional<KeyPress> keyPressNamed(std::string_view name) {
  KeyPress press;
  press.control = takePrefix(name, "ctrl+");
  press.alt = takePrefix(name, "alt+");
  press.shift = takePrefix(name, "shift+");
  const auto key = keyNamed(name);
  if (!key) return std::nullopt;
  press.key = *key;
  return press;
}

std::vector<InputEvent> InputQueue::next() {
  std::vector<InputEvent> frame;
  Told told;
  while (!waiting_.empty() && !told.hides(waiting_.front())) {
    told.add(waiting_.front());
    frame.push_back(waiting_.front());
    waiting_.pop_front();
  }
  return frame;
}

}  // namespace gapsound
