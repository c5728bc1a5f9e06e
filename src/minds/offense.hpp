#pragma once
#include <array>
#include <cstdint>
#include <vector>

#include "athlete/body.hpp"
#include "base/model.hpp"
#include "base/stream.hpp"
#include "minds/glimpse.hpp"
#include "minds/intent.hpp"
#include "scenario/setup.hpp"

namespace gapsound {

/// What the offense agreed on in its own huddle. Always a run to the right: play() turns left runs over.
struct PlaySheet {
  std::array<BlockJob, kOffense> jobs;
  BackJob run;
  ReadJob read;
  int carrier = kNobody;
  int passer = kNobody;
  int kicker = kNobody;   // mate who kicks the end out, if any
  int wrapper = kNobody;  // mate who leads through, if any
};
[[nodiscard]] PlaySheet playSheetOf(const Setup& setup);
/// The same for a quarterback who pulled the ball and runs it himself.
[[nodiscard]] PlaySheet keeperSheetOf(const PlaySheet& sheet);

struct BlockerMemory {
  double start_s = 0.1;  // when he moves, s
  int target = kNobody;
  int left_man = kNobody;  // the man he climbed off, not to be taken again before `left_until_s`
  double left_until_s = 0.0;
  double next_look_s = 0.0;  // when he next asks whether his target is still the right one
  double touched_s = -1.0;   // since when he has had hands on his man, s
  bool turned_up = false;    // puller: has turned upfield
  std::uint32_t erred = 0;   // bit k: a fault of kind k has changed what he does
};

struct RunnerMemory {
  double start_s = 0.25;
  int leg = 0;  // next point of the path to the mesh
  double next_look_s = 0.0;
  double choice_x = 0.0;   // where he means to cross the line
  Vec2 heading{0.0, 1.0};  // beyond the line
  double free_s = 1.0;     // daylight on the chosen path, s
  double bias_until_s = 0.0;
  double bias = 0.0;  // his own taste at the moment
  bool chosen = false;
  Stream luck{0, 0, "runner"};
};

struct PasserMemory {
  bool decided = false;  // read plays: he has given or pulled the ball
  bool keeps = false;
};

/// Everything an attacker may decide from. Borrowed for one decision.
struct AttackerView {
  const Glimpse& glimpse;
  const Model& model;
  const Body& body;
  const PlaySheet& sheet;
  const std::vector<Fault>& faults;
};

[[nodiscard]] Intent decideBlocker(const AttackerView& view, BlockerMemory& memory);
/// The back before he has the ball: his steps and the mesh.
[[nodiscard]] Intent decideApproach(const AttackerView& view, RunnerMemory& memory);
/// The man with the ball.
[[nodiscard]] Intent decideRunner(const AttackerView& view, RunnerMemory& memory);
/// The quarterback with the ball before the exchange, his read, and his fake after it.
[[nodiscard]] Intent decidePasser(const AttackerView& view, PasserMemory& memory, bool has_ball);

/// The lane between the edge man and the next body inside him as the offense sees it: how wide it is once the
/// kicker's helmet is counted (yd; below the model's passable door it is shut), and the x to run for.
struct SeenDoor {
  bool exists = false;
  bool shut = false;
  double width = 0.0;
  double inner = 0.0;  // outer hip of the down blocks
  double outer = 0.0;  // outermost of end and kicker
};
[[nodiscard]] SeenDoor doorOf(const AttackerView& view);
[[nodiscard]] double aimNow(const AttackerView& view);

}  // namespace gapsound
