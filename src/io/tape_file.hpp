#pragma once
#include <string>

#include "tape/tape.hpp"

namespace gapsound {

/// Writes a tape as one CBOR map: gapsound_tape (format), seed, title, rate (frames a second), direction,
/// men [{id, attacks, mass_kg}], frames [{men: [[x, y, vx, vy, face x, face y, engaged, down] ...],
/// ball: [x, y], carrier}], events [{tick, what, man, other, code}], ended, yards, hash. Yards and
/// yards per second in single precision, -1 for nobody. Throws Error(noAccess).
void writeTape(const std::string& file, const Tape& tape);

}  // namespace gapsound
