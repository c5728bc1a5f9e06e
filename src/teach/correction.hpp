#pragma once
#include <string>
#include <vector>

#include "study/repairs.hpp"

namespace gapsound {

/// A leak explained: what caused it and what repairs it.
struct Correction {
  Setup look;  // as called
  LeakResult leak;
  std::vector<OtherCall> calls;  // what could be called otherwise
  std::vector<CallCause> behind;
  RepairResult repairs;  // of the first cause
};
/// "S scrapes too wide (about 2 yd)".
[[nodiscard]] std::string causeWords(const Setup& look, const LeakCause& cause);
/// Which level failed first, through whom, and the cheapest repair, in one sentence.
[[nodiscard]] std::string correctionSentence(const Correction& correction);
/// What else to know: other causes, another call that explains it, what cannot be told.
[[nodiscard]] std::vector<std::string> correctionNotes(const Correction& correction);
/// Over the clip: what the second picture has that the first has not.
[[nodiscard]] std::string repairWords(const Correction& correction);

}  // namespace gapsound
