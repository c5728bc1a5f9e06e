#pragma once
#include <array>
#include <string>
#include <vector>

#include "football/phrases.hpp"
#include "picture/paper.hpp"
#include "study/distribution.hpp"
#include "study/sightings.hpp"
#include "teach/layout.hpp"

namespace gapsound {

/// One defender's line: where he stands, what he looks at, where he fits and how.
struct FitRow {
  std::string man, lines_up, key, role, landmark, technique;
};
/// What a level does when it sees something of the level in front of it.
struct IfThen {
  std::string seen;
  std::vector<std::string> does;
  int count = -1;  // reps in which it was seen; negative: not counted
};
/// A mistake that costs much, and who repairs it.
struct CostlyFault {
  std::string words;
  double loss = 0.0;  // yd
  std::string repair;
};

/// Everything a fit sheet says of one run against one call. What it counts it counted over `n` reps.
struct FitSheet {
  Tape drawn;  // without alignment spread, its gain nearest to the median of such reps
  std::string title, subtitle;
  int n = 0;
  Distribution gains;
  std::vector<FitRow> rows;
  std::vector<std::string> concerns;          // unowned gaps and unblocked ends
  std::array<std::vector<IfThen>, 3> levels;  // [level - 1], most seen first
  std::vector<CostlyFault> faults;            // costliest first
};

struct SheetLook {
  Paper paper = Paper::letter;
  bool large = false;  // type for the sideline
};

/// Plays n reps of the setup and a few without alignment spread for the picture. `faults` stay empty.
[[nodiscard]] FitSheet fitSheetOf(const Setup& setup, const Phrases& phrases, const Model& model,
                                  std::uint64_t first_seed, int n, int threads = 0);
/// At most three mistakes that surely cost something, costliest first: picked on a few reps, judged on the n
/// after them. `loss` is on the call, the repair by fitting off the man in front.
[[nodiscard]] std::vector<CostlyFault> costlyFaultsOf(const Setup& setup, const Model& model,
                                                      std::uint64_t first_seed, int n, int threads = 0);
/// One upright page.
[[nodiscard]] LaidPage fitSheetPage(const FitSheet& sheet, const SheetLook& look);

/// The rows alone, without playing.
[[nodiscard]] std::vector<FitRow> fitRowsOf(const Setup& setup, const Phrases& phrases);
/// The seed, without alignment spread, whose gain lies nearest to the median, as its tape.
[[nodiscard]] Tape typicalTape(const Setup& setup, const Model& model, std::uint64_t first_seed,
                               int threads = 0);

/// A week at a glance: runs as rows, calls as columns.
struct MasterCell {
  std::string fits;   // who edges, fits first, forces, cuts back
  double mean = 0.0;  // yd
  double stuffed = 0.0, ten_plus = 0.0;
  bool sound = true;  // every gap has an owner
};
struct MasterSheet {
  std::string title;
  int n = 0;
  std::vector<std::string> runs, calls;
  std::vector<std::vector<MasterCell>> cells;  // [run][call]
};
[[nodiscard]] MasterCell masterCellOf(const Setup& setup, const Distribution& gains);
/// One page, lying.
[[nodiscard]] LaidPage masterSheetPage(const MasterSheet& sheet, const SheetLook& look);

}  // namespace gapsound
