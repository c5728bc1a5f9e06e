#pragma once
#include <string>
#include <string_view>
#include <vector>

namespace gapsound {

/// Letters in lower case, everything else untouched (ASCII).
[[nodiscard]] std::string lowered(std::string_view text);
/// Same text, whatever the case of its letters.
[[nodiscard]] bool sameName(std::string_view a, std::string_view b);
/// Fewest single-letter changes that turn one name into the other, case ignored.
[[nodiscard]] int editDistance(std::string_view a, std::string_view b);
/// The known names most like `text`, nearest first, at most `most`; ties in the order given.
[[nodiscard]] std::vector<std::string> nearestNames(std::string_view text,
                                                    const std::vector<std::string>& known,
                                                    std::size_t most = 3);
/// What a refused name is answered with: `nearest "counter GH", "counter GT" (of 18)`; short lists are given
/// whole.
[[nodiscard]] std::string nameHint(std::string_view text, const std::vector<std::string>& known);

}  // namespace gapsound
