#pragma once
#include <cstdint>
#include <functional>
#include <set>
#include <string>
#include <vector>

namespace gapsound {

/// One file of a week's folder.
struct WeekStep {
  std::string part;                               // "sheets"
  std::string file;                               // in the folder: "sheets/over-quarters.pdf"
  std::function<void(const std::string&)> write;  // writes it whole or not at all; given the full path
};

/// A name made safe for a file: small letters, figures and hyphens; a number is added when it is taken.
[[nodiscard]] std::string fileNameOf(const std::string& name, std::set<std::string>& taken);

/// The folder of a week. It remembers in week.json what it was made from and which files are done, so that a
/// run that was stopped goes on where it was, and a changed plan starts over.
class WeekFolder {
 public:
  /// `key` is everything the files depend on. Makes the folder. Throws Error(noAccess).
  WeekFolder(std::string folder, const std::string& key);
  /// Does the steps not yet done, of these parts only (empty: all), telling each on standard error.
  /// InputError for a part nobody knows and for a file that a link would put outside the folder.
  void make(const std::vector<WeekStep>& steps, const std::vector<std::string>& only);
  /// Every file that is there, in order, as paths.
  [[nodiscard]] std::vector<std::string> files() const;

 private:
  [[nodiscard]] std::string placeOf(const std::string& file) const;
  [[nodiscard]] bool isDone(const std::string& file) const;
  void remember(const std::string& file);
  void recall();

  std::string folder_, made_from_;
  std::vector<std::string> done_;
};

}  // namespace gapsound
