#pragma once
#include <cstdint>
#include <string>
#include <vector>

#include "scenario/scenario.hpp"

namespace gapsound {

/// The scenario under edit with everything that was ever changed about it.
class Document {
 public:
  /// `file` is empty for one that was never saved; `saved_text` is what stands in the file.
  Document(Scenario scenario, std::string file, std::string saved_text);
  /// Throws as readScenario does.
  [[nodiscard]] static Document read(const std::string& file);

  [[nodiscard]] const Scenario& scenario() const { return now().scenario; }
  [[nodiscard]] std::uint64_t seed() const { return now().seed; }
  [[nodiscard]] const std::string& file() const { return file_; }
  [[nodiscard]] bool unsaved() const { return text() != saved_text_; }
  [[nodiscard]] std::string text() const;

  /// One step that undo takes back. `words` say what was done; steps with the same `gesture`, when it is not
  /// empty, one after the other become one step, as while a slider is dragged.
  void change(Scenario next, const std::string& words, const std::string& gesture = "");
  void choose(std::uint64_t seed);
  /// The next change of the same gesture is a step of its own.
  void endGesture();
  [[nodiscard]] bool canUndo() const { return at_ > 0; }
  [[nodiscard]] bool canRedo() const { return at_ + 1 < steps_.size(); }
  void undo();
  void redo();
  /// Where the present stands among all steps, and what was done from step `from` until now, in words.
  [[nodiscard]] std::size_t step() const { return at_; }
  [[nodiscard]] std::string wordsSince(std::size_t from) const;
  /// What undo would take back and redo bring again; "" where there is nothing.
  [[nodiscard]] std::string undoWords() const;
  [[nodiscard]] std::string redoWords() const;

  /// Throws Error(noAccess); nothing is changed then.
  void saveAs(const std::string& file);

 private:
  struct Step {
    Scenario scenario;
    std::uint64_t seed = 1;
    std::string words, gesture;
  };
  [[nodiscard]] const Step& now() const { return steps_[at_]; }
  void add(Step step);

  std::vector<Step> steps_;
  std::size_t at_ = 0;
  std::string file_, saved_text_;
};

}  // namespace gapsound
