#include "painters/window/imgui_input.hpp"

#include <imgui.h>

#include <algorithm>

namespace gapsound {
namespace {

constexpr std::pair<ImGuiKey, Key> kMap[] = {{ImGuiKey_Tab, Key::tab},
                                             {ImGuiKey_LeftArrow, Key::left},
                                             {ImGuiKey_RightArrow, Key::right},
                                             {ImGuiKey_UpArrow, Key::up},
                                             {ImGuiKey_DownArrow, Key::down},
                                             {ImGuiKey_PageUp, Key::page_up},
                                             {ImGuiKey_PageDown, Key::page_down},
                                             {ImGuiKey_Home, Key::home},
                                             {ImGuiKey_End, Key::end},
                                             {ImGuiKey_Delete, Key::del},
                                             {ImGuiKey_Backspace, Key::backspace},
                                             {ImGuiKey_Space, Key::space},
                                             {ImGuiKey_Enter, Key::enter},
                                             {ImGuiKey_Escape, Key::escape},
                                             {ImGuiKey_A, Key::a},
                                             {ImGuiKey_C, Key::c},
                                             {ImGuiKey_V, Key::v},
                                             {ImGuiKey_X, Key::x},
                                             {ImGuiKey_Y, Key::y},
                                             {ImGuiKey_Z, Key::z}};

bool held(Key key) { return ImGui::GetIO().KeysDown[static_cast<int>(key)]; }

void releaseAll() {
  ImGuiIO& io = ImGui::GetIO();
  std::fill(std::begin(io.KeysDown), std::end(io.KeysDown), false);
  std::fill(std::begin(io.MouseDown), std::end(io.MouseDown), false);
}

/// Lays one event on ImGui's state; modifiers come from the keys held, not from what the event says.
void lay(const InputEvent& event, std::vector<KeyPress>& pressed) {
  ImGuiIO& io = ImGui::GetIO();
  switch (event.kind) {
    case InputEvent::Kind::move:
      io.MousePos = {static_cast<float>(event.at.x), static_cast<float>(event.at.y)};
      break;
    case InputEvent::Kind::press:
    case InputEvent::Kind::release:
      io.MouseDown[event.button] = event.kind == InputEvent::Kind::press;
      break;
    case InputEvent::Kind::wheel:
      io.MouseWheel += static_cast<float>(event.amount);
      break;
    case InputEvent::Kind::key_down:
      io.KeysDown[static_cast<int>(event.key)] = true;
      pressed.push_back({event.key, held(Key::control), held(Key::shift), held(Key::alt)});
      break;
    case InputEvent::Kind::key_up:
      io.KeysDown[static_cast<int>(event.key)] = false;
      break;
    case InputEvent::Kind::text:
      if (!held(Key::control)) io.AddInputCharacter(event.letter);
      break;
    case InputEvent::Kind::lost_focus:
      releaseAll();
      break;
  }
}

}  // namespace

struct ImGuiHost::Parts {
  ImGuiContext* context = nullptr;
  std::function<std::basic_string<std::uint8_t>()> read;
  std::function<void(const std::string&)> write;
  std::string clipboard;
};

ImGuiHost::ImGuiHost() : parts_(std::make_unique<Parts>()) {
  IMGUI_CHECKVERSION();
  parts_->context = ImGui::CreateContext();
  ImGuiIO& io = ImGui::GetIO();
  io.IniFilename = nullptr;
  io.LogFilename = nullptr;
  io.ConfigInputTextCursorBlink = false;
  io.ConfigWindowsMoveFromTitleBarOnly = true;
  for (const auto& [theirs, ours] : kMap) io.KeyMap[theirs] = static_cast<int>(ours);
}

ImGuiHost::~ImGuiHost() { ImGui::DestroyContext(parts_->context); }

std::vector<KeyPress> ImGuiHost::begin(const std::vector<InputEvent>& events, double dt, int width,
                                       int height) {
  ImGuiIO& io = ImGui::GetIO();
  std::vector<KeyPress> pressed;
  for (const InputEvent& event : events) lay(event, pressed);
  io.KeyCtrl = held(Key::control), io.KeyShift = held(Key::shift), io.KeyAlt = held(Key::alt);
  io.DisplaySize = {static_cast<float>(width), static_cast<float>(height)};
  io.DeltaTime = static_cast<float>(std::clamp(dt, 1e-4, 0.2));
  ImGui::NewFrame();
  return pressed;
}

void ImGuiHost::useClipboard(std::function<std::basic_string<std::uint8_t>()> read,
                             std::function<void(const std::string&)> write) {
  parts_->read = std::move(read);
  parts_->write = std::move(write);
  ImGuiIO& io = ImGui::GetIO();
  io.ClipboardUserData = parts_.get();
  io.GetClipboardTextFn = [](void* user) {
    auto& parts = *static_cast<Parts*>(user);
    const auto text = parts.read();
    parts.clipboard.assign(text.begin(), text.end());
    return parts.clipboard.c_str();
  };
  io.SetClipboardTextFn = [](void* user, const char* text) { static_cast<Parts*>(user)->write(text); };
}

}  // namespace gapsound
