#include "app/difference.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>

#include "analysis/words.hpp"
#include "base/tick.hpp"
#include "teach/view.hpp"

namespace gapsound {
namespace {

constexpr double kLater = 0.1;  // s by which the same thing must come later or sooner to be told

using Tick = LadderTick;

/// What a man does for the n-th time is compared with what he does for the n-th time in the other rep.
const Tick* sameIn(const Rep& rep, const Tick& wanted, int nth) {
  for (const Tick& tick : rep.ticks) {
    if (tick.man == wanted.man && tick.row == wanted.row && tick.words == wanted.words && nth-- == 0)
      return &tick;
  }
  return nullptr;
}

int countBefore(const Rep& rep, const Tick& tick) {
  return static_cast<int>(std::count_if(rep.ticks.begin(), rep.ticks.end(), [&](const Tick& other) {
    return &other < &tick && other.man == tick.man && other.words == tick.words;
  }));
}

/// Ticks of the defense that say something: what a man decides, and what he sees once there is something to
/// see.
bool tells(const Tick& tick) {
  for (const auto& nothing : {saidOf(EndState::open), saidOf(BackerState::reading)}) {
    if (tick.words.ends_with(nothing)) return false;
  }
  return tick.kind == LadderKind::decided || tick.kind == LadderKind::saw;
}

std::string toldOf(const Rep& held, const Tick& tick, int nth) {
  const Tick* before = sameIn(held, tick, nth);
  if (before == nullptr) return fmt::format("at {:.2f} s {}", tick.t, tick.words);
  return fmt::format("{}, at {:.2f} s and not at {:.2f} s", tick.words, tick.t, before->t);
}

bool differs(const Rep& other, const Rep& own, const Tick& tick) {
  const Tick* same = sameIn(other, tick, countBefore(own, tick));
  return same == nullptr || std::abs(same->t - tick.t) > kLater;
}

std::optional<std::string> firstDifference(const Rep& held, const Rep& now) {
  for (const Tick& tick : now.ticks) {
    if (tells(tick) && differs(held, now, tick)) return toldOf(held, tick, countBefore(now, tick));
  }
  for (const Tick& tick : held.ticks) {
    if (tells(tick) && differs(now, held, tick)) return fmt::format("no longer: {}", tick.words);
  }
  return std::nullopt;
}

/// The first man to be somewhere else, and when.
std::optional<std::string> firstElsewhere(const Rep& held, const Rep& now) {
  constexpr double kElsewhere = 0.4;  // yd
  const auto& before = held.tape.record.frames;
  const auto& after = now.tape.record.frames;
  for (std::size_t tick = 0; tick < std::min(before.size(), after.size()); ++tick) {
    for (std::size_t man = 0; man < static_cast<std::size_t>(kMen); ++man) {
      if (distance(before[tick].men[man].pos, after[tick].men[man].pos) < kElsewhere) continue;
      return fmt::format("{} is somewhere else from {:.2f} s on", now.tape.setup.men[man].id,
                         seconds(static_cast<int>(tick)));
    }
  }
  return std::nullopt;
}

std::string whereItLed(const Rep& held, const Rep& now) {
  constexpr double kAlike = 0.35;  // yd
  const Record& before = held.tape.record;
  const Record& after = now.tape.record;
  if (std::abs(before.yards - after.yards) < kAlike) return "It ends the same way, a " + endingLine(after);
  return fmt::format("It ends in a {}, not in a {}", endingLine(after), endingLine(before));
}

}  // namespace

std::string differenceWords(const Rep& held, const Rep& now, const std::string& change) {
  const std::string lead = change.empty() ? "First, " : change + ": first, ";
  if (held.tape.record.hash == now.tape.record.hash)
    return change + (change.empty() ? "" : ": ") + "nothing is different in this rep.";
  auto first = firstDifference(held, now);
  if (!first) first = firstElsewhere(held, now);
  return lead + first.value_or("they differ by less than a step") + ". " + whereItLed(held, now) + ".";
}

}  // namespace gapsound
