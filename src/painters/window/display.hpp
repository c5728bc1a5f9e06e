#pragma once

namespace gapsound {

/// A connection to the display, held while the window is made: a server without any client may start over.
class DisplayHold {
 public:
  /// Throws Error(noAccess) in one line when no display can be opened.
  DisplayHold();
  ~DisplayHold();
  DisplayHold(const DisplayHold&) = delete;
  DisplayHold& operator=(const DisplayHold&) = delete;

 private:
  void* connection_;
};

}  // namespace gapsound
