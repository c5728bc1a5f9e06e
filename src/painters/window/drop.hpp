#pragma once
#include <memory>
#include <string>
#include <vector>

namespace gapsound {

/// Takes files dropped on a window by the XDND protocol, version 5, on a connection of its own.
class DropTarget {
 public:
  /// `window` is the X id of a window that exists for as long as this does.
  explicit DropTarget(unsigned long window);
  ~DropTarget();
  DropTarget(const DropTarget&) = delete;
  DropTarget& operator=(const DropTarget&) = delete;
  /// Files dropped since the last call.
  [[nodiscard]] std::vector<std::string> take();

 private:
  struct Parts;
  std::unique_ptr<Parts> parts_;
};

/// Paths in a text/uri-list (RFC 2483), "file:///a%20b" as "/a b"; other addresses are left out.
[[nodiscard]] std::vector<std::string> filesInUriList(const std::string& text);

}  // namespace gapsound
