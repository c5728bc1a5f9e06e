#include <fmt/format.h>

#include <algorithm>

#include "analysis/story.hpp"
#include "analysis/words.hpp"
#include "base/tick.hpp"

namespace gapsound {
namespace {

void addDecision(const Story& story, int man, std::vector<Moment>& moments) {
  if (man == kNobody) return;
  const Event* decision = story.decision(man);
  if (decision == nullptr) return;
  const std::string_view did = story.man(man).fit.off_the_man_in_front
                                   ? setsOutTo(static_cast<Fit>(decision->code))
                                   : "runs to his call";
  moments.push_back({seconds(decision->tick), fmt::format("{} {}", story.id(man), did)});
}

void addTick(int tick, std::string words, std::vector<Moment>& moments) {
  if (tick >= 0) moments.push_back({seconds(tick), std::move(words)});
}

void addFirstContact(const Story& story, std::vector<Moment>& moments) {
  for (const Event& event : story.tape().record.events) {
    if (event.what != Happening::first_contact) continue;
    const int defender = isOffense(event.man) ? event.other : event.man;
    addTick(event.tick,
            defender == kNobody ? "First contact" : fmt::format("{} makes first contact", story.id(defender)),
            moments);
    return;
  }
}

}  // namespace

std::vector<Moment> momentsOf(const Tape& tape) {
  std::vector<Moment> moments;
  if (tape.record.frames.empty()) return moments;
  const Story story(tape);
  addTick(0, "Snap", moments);
  addTick(tape.record.handoff_tick, "Hand-off", moments);
  addDecision(story, story.cast().first_backer, moments);
  addDecision(story, story.cast().safety, moments);
  addTick(tape.record.line_tick, "Crosses the line", moments);
  addFirstContact(story, moments);
  addTick(tape.record.end_tick, fmt::format("Gain of {}", yards(tape.record.yards)), moments);
  std::stable_sort(moments.begin(), moments.end(),
                   [](const Moment& a, const Moment& b) { return a.t < b.t; });
  return moments;
}

}  // namespace gapsound
