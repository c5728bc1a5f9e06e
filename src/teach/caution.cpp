#include "teach/caution.hpp"

#include <fmt/ranges.h>

namespace gapsound {

const std::vector<std::string>& cautionLines() {
  static const std::vector<std::string> lines{
      "Contact is led by the shoulder; the head is up and out of it.",
      "Label every drill with its contact level: air, bag, control, thud or live.",
      "The rule book and the medical staff overrule this picture.",
      "A simulation ranks calls. It is no verdict on a player."};
  return lines;
}

std::string cautionText() { return fmt::format("{}", fmt::join(cautionLines(), " ")); }

const std::string& cardCaution() {
  static const std::string words =
      "Contact level of this rep: ______. Hands and shoulders, head out. No block below the waist, in the "
      "back or on a "
      "man who cannot see it; crack blocks high and from the front. Check the current rule book.";
  return words;
}

}  // namespace gapsound
