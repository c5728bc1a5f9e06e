#pragma once
#include <optional>
#include <string>
#include <vector>

namespace gapsound {

/// What the window remembers from one start to the next.
struct Settings {
  std::string theme = "paper";
  int ui_scale = 100;  // per cent: 100, 150, 200
  bool hints = true;   // not yet waved away
};

/// Work that was not saved when a window went down.
struct Recovered {
  std::string file;  // it was opened from; "" for none
  std::string text;  // the scenario
};

/// A folder for settings, recent files and unsaved work. Whatever cannot be read or written there is passed
/// over in silence: the window works without it.
class StateFolder {
 public:
  /// An empty path: nothing is remembered.
  explicit StateFolder(std::string path) : path_(std::move(path)) {}
  /// XDG_STATE_HOME/gapsound, else HOME/.local/state/gapsound, else none.
  [[nodiscard]] static StateFolder usual();

  [[nodiscard]] Settings settings() const;
  void keep(const Settings& settings) const;
  /// Latest first, only files that are still there, at most twelve.
  [[nodiscard]] std::vector<std::string> recent() const;
  void remember(const std::string& file) const;

  /// Unsaved work of this process, to be found by the next start should it go down.
  void keepUnsaved(const std::string& file, const std::string& text) const;
  void dropUnsaved() const;
  /// Takes over the unsaved work of a window that is no longer running; of this file only, unless it is "".
  [[nodiscard]] std::optional<Recovered> recover(const std::string& file = "") const;

 private:
  [[nodiscard]] std::string in(const std::string& name) const;
  void write(const std::string& name, const std::string& content) const;

  std::string path_;
};

}  // namespace gapsound
