#pragma once
#include <string>
#include <vector>

namespace gapsound {

/// What every page and every clip says about contact and about itself, one thought a line.
[[nodiscard]] const std::vector<std::string>& cautionLines();
/// The same as one paragraph.
[[nodiscard]] std::string cautionText();
/// What the scout team may and may not do, for its cards.
[[nodiscard]] const std::string& cardCaution();

}  // namespace gapsound
