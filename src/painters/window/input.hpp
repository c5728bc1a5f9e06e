#pragma once
#include <array>
#include <cstdint>
#include <deque>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/vec2.hpp"

namespace gapsound {

// clang-format off
#define GAPSOUND_KEYS(X)                                                                              \
  X(a) X(b) X(c) X(d) X(e) X(f) X(g) X(h) X(i) X(j) X(k) X(l) X(m) X(n) X(o) X(p) X(q) X(r) X(s)      \
  X(t) X(u) X(v) X(w) X(x) X(y) X(z) X(n0) X(n1) X(n2) X(n3) X(n4) X(n5) X(n6) X(n7) X(n8) X(n9)      \
  X(space) X(enter) X(escape) X(tab) X(backspace) X(del) X(left) X(right) X(up) X(down) X(home)       \
  X(end) X(page_up) X(page_down) X(f1) X(f2) X(f3) X(f4) X(f5) X(f6) X(f7) X(f8) X(f9) X(f10) X(f11)  \
  X(f12) X(comma) X(period) X(slash) X(minus) X(plus) X(left_bracket) X(right_bracket) X(control)     \
  X(shift) X(alt)
// clang-format on

/// The keys the window knows; n0 to n9 are the figures.
enum class Key : std::uint8_t {
#define X(name) name,
  GAPSOUND_KEYS(X)
#undef X
      none
};
inline constexpr int kKeys = static_cast<int>(Key::none);
/// Name of a key as typed in options and shown in the help: "space", "page_up", "1".
[[nodiscard]] std::string_view nameOf(Key key);
[[nodiscard]] std::optional<Key> keyNamed(std::string_view name);

/// A key with the modifiers held while it went down.
struct KeyPress {
  Key key = Key::none;
  bool control = false, shift = false, alt = false;
  bool operator==(const KeyPress&) const = default;
};
/// "ctrl+shift+z" and back.
[[nodiscard]] std::string nameOf(const KeyPress& press);
[[nodiscard]] std::optional<KeyPress> keyPressNamed(std::string_view name);

/// One thing the user did. Positions in pixels of the window.
struct InputEvent {
  enum class Kind : std::uint8_t { move, press, release, wheel, key_down, key_up, text, lost_focus };
  Kind kind = Kind::move;
  Vec2 at;                   // move
  int button = 0;            // press, release: 0 left, 1 right, 2 middle
  double amount = 0.0;       // wheel
  Key key = Key::none;       // key_down, key_up
  std::uint32_t letter = 0;  // text, Unicode
};

/// Hands events over frame by frame so that none of a frame hides another: a press and its release, a key and
/// its letter never fall into the same frame.
class InputQueue {
 public:
  void push(const InputEvent& event) { waiting_.push_back(event); }
  [[nodiscard]] bool empty() const { return waiting_.empty(); }
  /// The next events that one frame can tell apart, in order.
  [[nodiscard]] std::vector<InputEvent> next();

 private:
  std::deque<InputEvent> waiting_;
};

}  // namespace gapsound
