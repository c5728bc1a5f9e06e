#pragma once
#include <functional>
#include <memory>
#include <string>
#include <vector>

#include "painters/window/input.hpp"

namespace gapsound {

/// One ImGui context fed with our events; needs neither a window nor a graphics card.
class ImGuiHost {
 public:
  ImGuiHost();
  ~ImGuiHost();
  ImGuiHost(const ImGuiHost&) = delete;
  ImGuiHost& operator=(const ImGuiHost&) = delete;
  /// Starts a frame of this size in pixels; returns the keys that went down in it.
  [[nodiscard]] std::vector<KeyPress> begin(const std::vector<InputEvent>& events, double dt, int width,
                                            int height);
  void useClipboard(std::function<std::basic_string<std::uint8_t>()> read,
                    std::function<void(const std::string&)> write);

 private:
  struct Parts;
  std::unique_ptr<Parts> parts_;
};

}  // namespace gapsound
