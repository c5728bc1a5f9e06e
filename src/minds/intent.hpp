#pragma once
#include <cstdint>

#include "base/vec2.hpp"
#include "football/states.hpp"
#include "scenario/setup.hpp"

namespace gapsound {

/// How a blocker drives the man he has hands on.
enum class Drive : std::uint8_t {
  with_leverage,
  kick_out,
  double_team,
  shield  // only stays in his way
};

/// What a man tries to do until his next decision. The body and the contact decide what comes of it.
struct Intent {
  Vec2 want;               // velocity he wants, yd/s
  Vec2 face{0.0, 1.0};     // where he turns his chest, unit
  Vec2 push{0.0, 0.0};     // where he pushes when in contact, unit; zero: straight ahead
  int hands_on = kNobody;  // blocker: the opponent he means to take
  Drive drive = Drive::with_leverage;
  double stand = 0.0;      // blocker in a double team: which side of the man he stands on, -1 or +1; 0 alone
  bool takes_any = false;  // blocker: also whoever free gets in his way
  bool lets_go = false;    // blocker: gives up his present block (a climb)
  bool attacks = false;    // defender: tries to tackle the ball when he can touch it
};

/// What a defender has made of the play so far; recorded for the account.
struct Reading {
  int direction = 0;                 // side he thinks the run goes: +1 offense's right, -1 left, 0 not read
  double since_s = 0.0;              // when he concluded it
  EndState end = EndState::open;     // state of the end in front of him, as he sees it
  LineState line = LineState::held;  // state of the lineman in front of him, as he sees it
  BackerState backer = BackerState::reading;  // state of the first backer, as he sees it
  Fit fit = Fit::called;                      // what he decided to do about it
  bool declared = false;                      // he has left his fit and goes for the ball
};

}  // namespace gapsound
