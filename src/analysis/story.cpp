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

int Story::sideRead(int man, int until) const {
  const Event* read = last(Happening::saw_key, man, until);
  return read == nullptr ? 0 : read->code;
}

Sight Story::sight(int man, int until) const {
  const int side = sideRead(man, until);
  const Cast cast = castOf(tape_.setup, side == 0 ? tape_.setup.direction : side);
  const Event* read = last(Happening::saw_key, man, until);
  const auto since = [&](const Event* e) {  // what he saw before he changed sides was of other men
    return e == nullptr || (read != nullptr && e->tick < read->tick) ? nullptr : e;
  };
  const Event* backer = since(last(Happening::backer_state, man, until));
  const Event* end = since(last(Happening::end_state, man, until));
  const auto of = [&](int whom, auto state) {
    return Sight{whom, isLost(state), fmt::format("{} {}", id(whom), saidOf(state))};
  };
  const bool others = cast.first_backer != kNobody && cast.first_backer != man;
  if (others && backer != nullptr && static_cast<BackerState>(backer->code) != BackerState::reading)
    return of(cast.first_backer, static_cast<BackerState>(backer->code));
  if (end != nullptr && cast.end != kNobody && cast.end != man &&
      static_cast<EndState>(end->code) != EndState::open)
    return of(cast.end, static_cast<EndState>(end->code));
  return {};
}

}  // namespace gapsound
