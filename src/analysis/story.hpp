#pragma once
#include <string>
#include <vector>

#include "analysis/account.hpp"
#include "analysis/cast.hpp"

namespace gapsound {

/// What a man saw of the man in front of him.
struct Sight {
  int whom = kNobody;  // kNobody: he had seen nothing
  bool lost = false;   // the man in front of him was not where his call needs him
  std::string words;   // "SE was kicked out"; "" when he had seen nothing
};

/// A tape read for telling: who is who, what each man knew by when, and the moment the run was decided.
/// Borrows the tape.
class Story {
 public:
  explicit Story(const Tape& tape);
  [[nodiscard]] const Tape& tape() const { return tape_; }
  [[nodiscard]] const Cast& cast() const { return cast_; }
  [[nodiscard]] const Man& man(int k) const { return tape_.setup.men[static_cast<std::size_t>(k)]; }
  [[nodiscard]] const std::string& id(int k) const { return man(k).id; }
  /// The crossing of the line, or the end where the ball never crossed.
  [[nodiscard]] int decisiveTick() const { return decisive_; }
  [[nodiscard]] const Frame& frame(int tick) const;
  [[nodiscard]] const Pose& pose(int k, int tick) const {
    return frame(tick).men[static_cast<std::size_t>(k)];
  }
  /// Last event of a kind by this man at or before a tick; nullptr when there is none.
  [[nodiscard]] const Event* last(Happening what, int man, int until) const;
  [[nodiscard]] bool happened(Happening what, int man) const;
  /// His last decision before the run was decided; nullptr when he made none.
  [[nodiscard]] const Event* decision(int man) const { return last(Happening::decides, man, decisive_); }
  /// The side he took the run for by then, +1 the offense's right; 0 while he had not read it.
  [[nodiscard]] int sideRead(int man, int until) const;
  /// What the man in front of him was to him when he decided; of the side he took the run for.
  [[nodiscard]] Sight sight(int man, int until) const;
  [[nodiscard]] FitRole role(int k) const;

 private:
  const Tape& tape_;
  Cast cast_;
  int decisive_ = 0;
};

/// The sentences of a coach's note, level by level, then the lane, then the tackle. Each is true of the tape.
[[nodiscard]] std::vector<std::string> whyOf(const Story& story, const Account& account);

}  // namespace gapsound
