#pragma once
#include <atomic>
#include <cstdint>
#include <string>
#include <variant>
#include <vector>

#include "app/errand.hpp"
#include "app/study_settings.hpp"
#include "base/model.hpp"
#include "scenario/scenario.hpp"
#include "study/faults.hpp"
#include "study/matrix.hpp"
#include "study/vary.hpp"

namespace gapsound {

enum class StudyKind {
  sweep,     // one setting, or two at once
  mistakes,  // every mistake of every defender, off the man in front and on the call
  fronts     // every front of the library against every way this run is blocked
};
struct StudyOrder {
  StudyKind kind = StudyKind::sweep;
  Scenario look;
  std::vector<SweepRange> ranges;  // of a sweep, one or two
  int n = 100;                     // reps a cell
  std::uint64_t edition = 0;
};

/// What has come together so far.
struct StudyPicture {
  StudyOrder order;
  Setup setup;  // the look as it is, for the names of its men
  Plan plan;    // of fronts
  std::variant<std::monostate, SweepResult, FaultResult, MatrixResult> result;
  int played = 0;     // reps a cell
  std::string fault;  // why it cannot be played; "" when it can
  [[nodiscard]] bool done() const { return played >= order.n || !fault.empty(); }
};
/// The finding, or why there is none.
[[nodiscard]] std::string findingOf(const StudyPicture& picture);
/// Values, mistakes or pairs that can be opened.
[[nodiscard]] std::size_t cellsOf(const StudyPicture& picture);
/// What opening a cell makes of the look, and in words.
[[nodiscard]] Scenario lookOfCell(const StudyPicture& picture, std::size_t cell);
[[nodiscard]] std::string wordsOfCell(const StudyPicture& picture, std::size_t cell);

/// Plays the order in rounds that grow, a first picture after a few reps a cell, and leaves the picture in
/// the box after each, until it is done or stale. `share` tells how far it is, [0, 1].
void playStudy(const StudyOrder& order, const Model& model, const Errand::Stale& stale,
               std::atomic<double>& share, Mailbox<StudyPicture>& box);

}  // namespace gapsound
