#pragma once
#include <cstdint>
#include <string>

#include "scenario/setup.hpp"
#include "sim/record.hpp"

namespace gapsound {

/// The recording of a rep: where it came from and every frame of it.
struct Tape {
  static constexpr int kFormat = 1;
  Setup setup;
  std::uint64_t seed = 1;
  Record record;
};

/// The picture at `t` seconds, positions interpolated between ticks; held at both ends.
[[nodiscard]] Frame frameAt(const Tape& tape, double t);
/// Length of the tape in seconds.
[[nodiscard]] double lengthOf(const Tape& tape);

}  // namespace gapsound
