#pragma once
#include <memory>
#include <string>
#include <vector>

#include "painters/window/fonts.hpp"
#include "painters/window/input.hpp"
#include "picture/theme.hpp"

namespace gapsound {

/// The one window: opens it, gathers what the user does, runs ImGui's frames, shows and keeps pictures.
class Stage {
 public:
  struct Size {
    int width = 1280, height = 720;  // pixels
  };
  /// `scale` is pixels a page unit. Throws Error(noAccess) without a display or a font.
  Stage(const std::string& title, Size size, double scale);
  ~Stage();
  Stage(const Stage&) = delete;
  Stage& operator=(const Stage&) = delete;

  /// Takes in what happened since the last call, waiting at most `wait_s` for the first thing; true when
  /// anything did.
  bool gather(double wait_s);
  /// True while gathered events still wait for their frame.
  [[nodiscard]] bool behind() const;
  /// Starts a frame `dt` seconds after the last one, with the key presses that fall into it.
  [[nodiscard]] std::vector<KeyPress> begin(double dt);
  /// Ends the frame and shows it on `ground`.
  void end(Colour ground);
  /// The next frame shown is also written as PNG; end() then throws Error(noAccess) where it cannot be.
  void keepNext(const std::string& file);

  [[nodiscard]] Size size() const;
  [[nodiscard]] double scale() const;
  [[nodiscard]] const FontShelf& fonts() const;
  /// Rebuilds the fonts; between frames only.
  void rescale(double scale);
  void retitle(const std::string& title);
  void fullScreen(bool on);
  /// The user asked the window to close; true once for each time.
  [[nodiscard]] bool wantsToClose();
  /// Files dropped on the window since the last call.
  [[nodiscard]] std::vector<std::string> dropped();
  /// Does what the user did, for pictures and tests.
  void pretend(const InputEvent& event);

 private:
  struct Parts;
  std::unique_ptr<Parts> parts_;
};

}  // namespace gapsound
