#include "analysis/story.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "analysis/words.hpp"

namespace gapsound {

Story::Story(const Tape& tape) : tape_(tape), cast_(castOf(tape.setup)) {
  decisive_ = tape.record.line_tick >= 0 ? tape.record.line_tick : tape.record.end_tick;
}

const Frame& Story::frame(int tick) const {
  const auto& frames = tape_.record.frames;
  return frames[static_cast<std::size_t>(std::clamp(tick, 0, static_cast<int>(frames.size()) - 1))];
}

const Event* Story::last(Happening what, int man, int until) const {
  const Event* found = nullptr;
  for (const Event& event : tape_.record.events)
    if (event.what == what && event.man == man && event.tick <= until) found = &event;
  return found;
}

bool Story::happened(Happening what, int man) const {
  return last(what, man, tape_.record.end_tick) != nullptr;
}

FitRole Story::role(int k) const {
  return tape_.setup.direction > 0 ? man(k).fit.if_right : man(k).fit.if_left;
}

std::string Story::sight(int man, int until) const {
  const Event* backer = last(Happening::backer_state, man, until);
  const Event* end = last(Happening::end_state, man, until);
  const bool others = cast_.first_backer != kNobody && cast_.first_backer != man;
  if (others && backer != nullptr && static_cast<BackerState>(backer->code) != BackerState::reading)
    return fmt::format("{} {}", id(cast_.first_backer), saidOf(static_cast<BackerState>(backer->code)));
  if (end != nullptr && cast_.end != kNobody && cast_.end != man &&
      static_cast<EndState>(end->code) != EndState::open)
    return fmt::format("{} {}", id(cast_.end), saidOf(static_cast<EndState>(end->code)));
  return {};
}

}  // namespace gapsound
