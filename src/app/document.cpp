#include "app/document.hpp"

#include <utility>

#include "io/atomic_file.hpp"
#include "io/scenario_file.hpp"

namespace gapsound {
namespace {

constexpr const char* kSeedWords = "another rep";

}  // namespace

Document::Document(Scenario scenario, std::string file, std::string saved_text)
    : file_(std::move(file)), saved_text_(std::move(saved_text)) {
  steps_.push_back({std::move(scenario), 1, "", ""});
}

Document Document::read(const std::string& file) {
  Scenario scenario = readScenario(file);
  std::string text = toFile(scenario);
  return {std::move(scenario), file, std::move(text)};
}

std::string Document::text() const { return toFile(scenario()); }

void Document::add(Step step) {
  steps_.resize(at_ + 1);
  if (!step.gesture.empty() && at_ > 0 && step.gesture == now().gesture) {
    steps_[at_] = std::move(step);
    return;
  }
  steps_.push_back(std::move(step));
  ++at_;
}

void Document::change(Scenario next, const std::string& words, const std::string& gesture) {
  add({std::move(next), seed(), words, gesture});
}

void Document::choose(std::uint64_t seed) {
  if (seed == now().seed) return;
  add({scenario(), seed, kSeedWords, "seed"});
}

void Document::endGesture() { steps_[at_].gesture.clear(); }

void Document::undo() {
  if (canUndo()) --at_;
  endGesture();
}

void Document::redo() {
  if (canRedo()) ++at_;
  endGesture();
}

std::string Document::wordsSince(std::size_t from) const {
  constexpr std::size_t kMost = 3;
  std::vector<std::string> words;
  for (std::size_t k = from + 1; k <= at_; ++k) {
    if (steps_[k].words != kSeedWords) words.push_back(steps_[k].words);
  }
  if (words.size() > kMost) return std::to_string(words.size()) + " changes";
  std::string joined;
  for (const std::string& each : words) joined += (joined.empty() ? "" : ", ") + each;
  return joined;
}

std::string Document::undoWords() const { return canUndo() ? now().words : ""; }
std::string Document::redoWords() const { return canRedo() ? steps_[at_ + 1].words : ""; }

void Document::saveAs(const std::string& file) {
  Scenario saved = scenario();
  saved.source = file;
  const std::string content = toFile(saved);
  writeAtomically(file, content);
  file_ = file;
  saved_text_ = content;
  for (Step& step : steps_) step.scenario.source = file;
}

}  // namespace gapsound
