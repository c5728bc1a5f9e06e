#pragma once
#include <cstdint>
#include <optional>
#include <string_view>
#include <vector>

namespace gapsound {

/// A mistake laid on one man on purpose: it changes his intent or path, never a contact's result.
enum class FaultKind : std::uint8_t {
  kicked_out,
  washed,
  reached,
  upfield,
  crossed_inside,
  scrape_wide,
  scrape_late,
  wrong_key,
  no_fold,
  over_run,
  too_deep,
  inside_lost,
  too_fast,
  too_slow,
  late_read,
  flowed,
  missed_tackle,
  whiff,
  late_pull,
  early_climb
};
inline constexpr int kFaultKinds = 20;

struct Fault {
  FaultKind kind = FaultKind::late_read;
  double amount = 0.0;  // yd, s, yd/s or a probability, by kind
  bool operator==(const Fault&) const = default;
};

/// Facts of a kind that messages, sheets and checks need. Probability kinds range over [0, 1].
struct FaultFacts {
  FaultKind kind;
  std::string_view name;
  std::string_view unit;  // "yd", "s", "yd/s", "share"
  double usual;           // amount when none is given
  double most;            // allowed (0, most]
  // who may have it: "end", "line", "backer", "level2", "fitter", "edge", "folder", "behind", "downhill",
  // "defender", "blocker", "puller", "climber"
  std::string_view who;
  std::string_view words;  // what a coach calls it
};

[[nodiscard]] const std::vector<FaultFacts>& faultTable();
[[nodiscard]] const FaultFacts& factsOf(FaultKind kind);
[[nodiscard]] std::optional<FaultKind> faultNamed(std::string_view name);

}  // namespace gapsound
