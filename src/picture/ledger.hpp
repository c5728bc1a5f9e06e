#pragma once
#include <string>
#include <vector>

#include "analysis/lanes.hpp"
#include "picture/display_list.hpp"
#include "scenario/setup.hpp"

namespace gapsound {

struct LedgerLook {
  PageRect box;        // page
  double text = 15.0;  // page units
  double stroke = 1.0;
};

/// One cell for every lane wide enough to run through, standing under its lane as the field camera shows
/// it: gap and width, owner and whether he is there, margin. Cells keep their order and never overlap.
[[nodiscard]] Panel ledgerPanel(const Setup& setup, const std::vector<Lane>& lanes, const Camera& field,
                                const LedgerLook& look);
/// "absent", "beaten", "missed", "there"; "" when the lane needs no word.
[[nodiscard]] std::string causeText(Cause cause);

}  // namespace gapsound
