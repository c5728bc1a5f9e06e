#pragma once
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "study/distribution.hpp"

namespace gapsound {

/// One line of the calibration card: a figure of a set of reps, beside what real runs show.
struct CardLine {
  enum class Form { share, one, two };  // how it is printed: percent, one or two decimals
  std::string name;
  double value = 0.0;
  Form form = Form::two;
  std::string real;              // what tracking and play lists give, as text; "" where nothing is known
  std::optional<Interval> band;  // where the pooled figure has to lie
  [[nodiscard]] bool passes() const { return !band || (value >= band->low && value <= band->high); }
};

/// All lines for one set of reps. The first-contact line counts men by index, so it is meaningful for one
/// look; `men_are_comparable` false leaves it at 0.
[[nodiscard]] std::vector<CardLine> cardOf(std::span<const Summary> reps, bool men_are_comparable);

/// The man who makes the most first contacts, and his share of them; kNobody and 0 without contacts.
struct TopMan {
  int man = kNobody;
  double share = 0.0;
};
[[nodiscard]] TopMan topFirstContact(std::span<const Summary> reps);

}  // namespace gapsound
