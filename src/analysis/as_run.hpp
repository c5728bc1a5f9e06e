#pragma once
#include "tape/tape.hpp"

namespace gapsound {

/// Who ran with the ball in the end: the carrier, or a quarterback who kept it. kNobody: nobody was meant to.
[[nodiscard]] int runnerOf(const Tape& tape);

/// The Setup as the play turned out: after a keep the quarterback is the carrier, his aim is the designed
/// lane, and the run goes to the side he aims at.
[[nodiscard]] Setup asRun(const Tape& tape);

/// `what` of the tape with asRun() as its Setup when the quarterback kept, of the tape itself otherwise.
template <class What>
auto withSetupAsRun(const Tape& tape, const What& what) {
  if (!tape.record.kept) return what(tape.setup);
  const Setup setup = asRun(tape);
  return what(setup);
}

}  // namespace gapsound
