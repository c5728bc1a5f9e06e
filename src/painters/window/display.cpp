#include "painters/window/display.hpp"

#include <X11/Xlib.h>

#include "base/error.hpp"

namespace gapsound {

DisplayHold::DisplayHold() : connection_(XOpenDisplay(nullptr)) {
  if (connection_ != nullptr) return;
  throw Error(ExitCode::noAccess, "the window needs a display; set DISPLAY, or use a verb that draws files");
}

DisplayHold::~DisplayHold() { XCloseDisplay(static_cast<Display*>(connection_)); }

}  // namespace gapsound
