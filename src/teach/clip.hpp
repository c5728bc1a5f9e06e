#pragma once
#include <array>
#include <optional>
#include <string>
#include <vector>

#include "picture/display_list.hpp"
#include "tape/tape.hpp"

namespace gapsound {

struct ClipSide {
  Tape tape;
  std::string name;              // over its picture when there are two
  std::optional<double> lane_x;  // yd, the lane measured in the frozen picture beside the open ones
};

/// What a clip shows. One or two sides, played in step. Seconds after the snap.
struct ClipScript {
  std::string title, subtitle;
  std::vector<ClipSide> sides;
  std::string line;                       // under the frozen picture
  double slow_from = 0.0, slow_to = 0.0;  // shown at a quarter of real speed; equal: nowhere
  double freeze_at = -1.0;                // within the slow stretch; negative: nowhere
  int loops = 1;                          // times the play is shown, >= 1
  bool names = true;
  bool calipers = true;                               // in the frozen picture
  std::array<bool, 4> shown{true, true, true, true};  // offense, levels 1, 2, 3; the rest is greyed
  int fps = 25;
  double width = 1280.0, height = 720.0;  // page units = pixels, even
};

/// The usual clip of a rep: slow around the crossing and frozen there; the line says which lane the runner
/// takes and what became of its owner.
[[nodiscard]] ClipScript clipOf(const Tape& tape);
/// Two reps side by side; `difference` names what was changed between them, empty: how each ended.
[[nodiscard]] ClipScript clipOf(const Tape& a, const std::string& name_a, const Tape& b,
                                const std::string& name_b, const std::string& difference);

enum class Scene : std::uint8_t { title, play, slow, freeze, ending, caution };
struct ClipFrame {
  Scene scene = Scene::play;
  double t = 0.0;  // simulation time
};
/// Every frame of the film in order; the last picture is held with how it ended. Real speed advances 1 / fps
/// a frame, slow motion a quarter of it.
[[nodiscard]] std::vector<ClipFrame> framesOf(const ClipScript& script);
[[nodiscard]] DisplayList clipPage(const ClipScript& script, const ClipFrame& frame);

}  // namespace gapsound
