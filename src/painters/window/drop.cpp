#include "painters/window/drop.hpp"

#include <X11/Xatom.h>
#include <X11/Xlib.h>

#include <charconv>
#include <sstream>
#include <string_view>
#include <utility>

namespace gapsound {
namespace {

std::string decoded(const std::string& text) {
  std::string plain;
  for (std::size_t i = 0; i < text.size(); ++i) {
    int code = 0;
    const char* digits = text.data() + i + 1;
    const bool whole = text[i] == '%' && i + 2 < text.size();
    if (whole && std::from_chars(digits, digits + 2, code, 16).ptr == digits + 2) {
      plain += static_cast<char>(code);
      i += 2;
    } else {
      plain += text[i];
    }
  }
  return plain;
}

}  // namespace

std::vector<std::string> filesInUriList(const std::string& text) {
  constexpr std::string_view kFile = "file://";
  std::vector<std::string> files;
  std::istringstream in(text);
  for (std::string line; std::getline(in, line);) {
    while (!line.empty() && line.back() == '\r') line.pop_back();
    if (line.rfind(kFile, 0) != 0) continue;
    const auto path = line.find('/', kFile.size());  // past the name of the machine
    if (path != std::string::npos) files.push_back(decoded(line.substr(path)));
  }
  return files;
}

struct DropTarget::Parts {
  Display* display = nullptr;
  Window target = 0, proxy = 0, source = 0;
  std::vector<std::string> files;

  [[nodiscard]] Atom atom(const char* name) const { return XInternAtom(display, name, False); }

  void announce(Window window, const char* name, Atom type, unsigned long value) const {
    XChangeProperty(display, window, atom(name), type, 32, PropModeReplace,
                    reinterpret_cast<const unsigned char*>(&value), 1);
  }

  void answer(const char* name, long second, Atom action) const {
    XEvent event{};
    event.xclient.type = ClientMessage;
    event.xclient.window = source;
    event.xclient.message_type = atom(name);
    event.xclient.format = 32;
    event.xclient.data.l[0] = static_cast<long>(target);
    event.xclient.data.l[1] = second;
    const int last = std::string_view(name) == "XdndStatus" ? 4 : 2;
    event.xclient.data.l[last] = static_cast<long>(action);
    XSendEvent(display, source, False, NoEventMask, &event);
    XFlush(display);
  }

  void hear(const XClientMessageEvent& message) {
    if (message.message_type == atom("XdndPosition")) {
      source = static_cast<Window>(message.data.l[0]);
      answer("XdndStatus", 1, atom("XdndActionCopy"));
    } else if (message.message_type == atom("XdndDrop")) {
      source = static_cast<Window>(message.data.l[0]);
      XConvertSelection(display, atom("XdndSelection"), atom("text/uri-list"), atom("GAPSOUND_DROP"), proxy,
                        static_cast<Time>(message.data.l[2]));
    }
  }

  void receive(const XSelectionEvent& selection) {
    constexpr long kMost = 1 << 18;  // words of the list
    Atom type = None;
    int format = 0;
    unsigned long items = 0, left = 0;
    unsigned char* bytes = nullptr;
    if (selection.property == None ||
        XGetWindowProperty(display, proxy, selection.property, 0, kMost, True, AnyPropertyType, &type,
                           &format, &items, &left, &bytes) != Success) {
      return answer("XdndFinished", 0, None);
    }
    const auto dropped = filesInUriList(std::string(reinterpret_cast<const char*>(bytes), items));
    XFree(bytes);
    files.insert(files.end(), dropped.begin(), dropped.end());
    answer("XdndFinished", 1, atom("XdndActionCopy"));
  }
};

DropTarget::DropTarget(unsigned long window) : parts_(std::make_unique<Parts>()) {
  constexpr unsigned long kVersion = 5;
  Parts& p = *parts_;
  p.display = XOpenDisplay(nullptr);
  if (p.display == nullptr) return;
  p.target = window;
  p.proxy = XCreateSimpleWindow(p.display, DefaultRootWindow(p.display), -10, -10, 1, 1, 0, 0, 0);
  p.announce(p.proxy, "XdndAware", XA_ATOM, kVersion);
  p.announce(p.proxy, "XdndProxy", XA_WINDOW, p.proxy);
  p.announce(p.target, "XdndAware", XA_ATOM, kVersion);
  p.announce(p.target, "XdndProxy", XA_WINDOW, p.proxy);
  XFlush(p.display);
}

DropTarget::~DropTarget() {
  if (parts_->display != nullptr) XCloseDisplay(parts_->display);
}

std::vector<std::string> DropTarget::take() {
  Parts& p = *parts_;
  while (p.display != nullptr && XPending(p.display) > 0) {
    XEvent event;
    XNextEvent(p.display, &event);
    if (event.type == ClientMessage) p.hear(event.xclient);
    if (event.type == SelectionNotify) p.receive(event.xselection);
  }
  return std::exchange(p.files, {});
}

}  // namespace gapsound
