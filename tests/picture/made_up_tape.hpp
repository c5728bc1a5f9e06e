#pragma once
#include <array>
#include <string>

#include "analysis/lanes.hpp"
#include "base/tick.hpp"
#include "tape/tape.hpp"

namespace gapsound::made_up {

struct Spot {
  const char* id;
  Group group;
  int level;
  Vec2 at;    // at the snap
  Vec2 goes;  // where he is drawn to, straight
};

/// An outside-right run drawn by hand: nobody decides anything, everybody slides along his line.
inline constexpr std::array<Spot, kMen> kSpots{{
    {"LT", Group::tackle, 0, {-2.75, -1.1}, {-1.6, 1.0}},
    {"LG", Group::guard, 0, {-1.35, -1.0}, {3.6, 2.4}},
    {"C", Group::center, 0, {0.0, -0.5}, {-0.5, 0.9}},
    {"RG", Group::guard, 0, {1.35, -1.0}, {0.9, 1.4}},
    {"RT", Group::tackle, 0, {2.75, -1.1}, {1.6, 1.2}},
    {"Y", Group::tight_end, 0, {4.4, -1.0}, {3.4, 3.4}},
    {"H", Group::fullback, 0, {1.4, -4.3}, {5.4, 0.4}},
    {"T", Group::back, 0, {0.0, -7.2}, {4.2, 4.0}},
    {"Q", Group::quarterback, 0, {0.0, -1.3}, {-2.0, -6.0}},
    {"X", Group::receiver, 0, {-16.0, -0.5}, {-14.0, 6.0}},
    {"Z", Group::receiver, 0, {17.0, -1.5}, {14.0, 6.0}},
    {"WE", Group::edge, 1, {-3.2, 0.8}, {-1.0, 1.6}},
    {"NT", Group::off_tackle, 1, {-0.7, 0.8}, {-0.2, 1.5}},
    {"DT", Group::off_tackle, 1, {1.8, 0.8}, {1.2, 1.9}},
    {"SE", Group::edge, 1, {4.9, 0.8}, {5.7, 1.0}},
    {"W", Group::backer, 2, {-2.0, 4.5}, {1.6, 3.2}},
    {"M", Group::backer, 2, {1.4, 4.5}, {3.9, 2.9}},
    {"S", Group::backer, 2, {5.8, 3.6}, {6.6, 2.2}},
    {"FS", Group::safety, 3, {-5.0, 10.5}, {0.5, 6.0}},
    {"SS", Group::safety, 3, {6.0, 10.0}, {5.2, 4.8}},
    {"CL", Group::corner, 3, {-15.5, 6.5}, {-12.0, 8.0}},
    {"CR", Group::corner, 3, {16.5, 6.5}, {12.5, 6.0}},
}};
inline constexpr int kBack = 7, kPasser = 8;

inline Setup setup() {
  Setup look;
  look.title = "Power right";
  for (std::size_t i = 0; i < kMen; ++i) {
    Man& man = look.men[i];
    man.id = kSpots[i].id;
    man.attacks = i < kOffense;
    man.group = kSpots[i].group;
    man.spot = kSpots[i].at;
    man.fit.level = kSpots[i].level == 0 ? 1 : kSpots[i].level;
  }
  look.passer = kPasser;
  look.carrier = kBack;
  look.formation = "F01", look.front = "D01", look.scheme = "R01", look.structure = "spill",
  look.shell = "quarters";
  return look;
}

inline Frame frame(double share, bool handed_off) {
  Frame now;
  for (std::size_t i = 0; i < kMen; ++i) {
    const Spot& spot = kSpots[i];
    const Vec2 path = spot.goes - spot.at;
    now.men[i] = {spot.at + share * path, 0.3 * path, unit(path), kNobody, false};
    if (share < 0.1) now.men[i].face = {0.0, i < kOffense ? 1.0 : -1.0};
  }
  const auto lock = [&](std::size_t a, std::size_t d) {
    now.men[a].engaged = static_cast<std::int8_t>(d);
    now.men[d].engaged = static_cast<std::int8_t>(a);
  };
  if (share > 0.4) lock(2, 12), lock(3, 13), lock(4, 13), lock(6, 14);
  now.carrier = handed_off ? kBack : kPasser;
  now.ball = now.men[static_cast<std::size_t>(now.carrier)].pos;
  return now;
}

/// Four seconds, hand-off at 1.2 s, the line at 2.4 s, contact at 3.0 s.
inline Tape tape() {
  Tape made{setup(), 7, {}};
  const int last = ticks(4.0);
  for (int tick = 0; tick <= last; ++tick) {
    made.record.frames.push_back(frame(static_cast<double>(tick) / last, tick >= ticks(1.2)));
  }
  made.record.events = {{0, Happening::snap, kNobody, kNobody, 0},
                        {ticks(0.7), Happening::saw_key, 16, 6, 1},
                        {ticks(0.8), Happening::saw_key, 15, 1, 1},
                        {ticks(0.9), Happening::decides, 16, kNobody, static_cast<int>(Fit::over_top)},
                        {ticks(1.1), Happening::saw_key, 19, 16, 1},
                        {ticks(1.2), Happening::handoff, kBack, kPasser, 0},
                        {ticks(1.3), Happening::decides, 19, kNobody, static_cast<int>(Fit::alley)},
                        {ticks(1.6), Happening::engages, 6, 14, 0},
                        {ticks(2.4), Happening::crosses_line, kBack, kNobody, 0},
                        {ticks(3.0), Happening::first_contact, 16, kBack, 0},
                        {ticks(3.0), Happening::tries_tackle, 16, kBack, 0},
                        {ticks(4.0), Happening::down, kBack, kNobody, 0}};
  made.record.yards = 4.0;
  made.record.end_tick = last;
  made.record.handoff_tick = ticks(1.2), made.record.line_tick = ticks(2.4);
  made.record.first_contact_tick = ticks(3.0);
  return made;
}

/// One open way, one contested, one closed.
inline std::vector<Lane> lanes() {
  Lane open{2.2,          4.4, 1.0, 13, 14, "C+", 16, 0.5, 0.85, 0.35, LaneState::open, Relation::designed,
            Cause::absent};
  Lane contested{0.2, 1.6, 1.0, 12, 13, "A+", 15, 0.6, 0.66, 0.06, LaneState::contested, Relation::inside,
                 {}};
  Lane closed{-2.3, -0.9, 1.0, 11, 12, "B-", 11, 0.9, 0.3, -0.6, LaneState::closed, Relation::cutback, {}};
  return {closed, contested, open};
}

}  // namespace gapsound::made_up
