#pragma once
#include <cstdint>
#include <string>

#include "base/model.hpp"
#include "scenario/scenario.hpp"
#include "scenario/setup.hpp"
#include "tape/tape.hpp"

/// Looks nobody thought of, and what must be true of every rep of them.
namespace gapsound::looks {

struct AnyLook {
  Scenario scenario;
  Setup setup;
  std::uint64_t seed = 1;
};

/// A legal look of library names with a call, special men and mistakes, drawn by RapidCheck; only within one
/// of its properties. Discards the case when the library has no such look.
[[nodiscard]] AnyLook anyLook();

/// How far two men's outlines are in one another in this picture, yd; 0 when they are apart.
[[nodiscard]] double overlapOf(const Setup& setup, const Frame& frame, int a, int b);

/// What is wrong with this rep of a look: empty when nothing is.
[[nodiscard]] std::string wrongWith(const Tape& tape, const Model& model);

}  // namespace gapsound::looks
