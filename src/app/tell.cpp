#include "app/tell.hpp"

#include <fmt/format.h>

namespace gapsound {
namespace {

const char* yes(bool on) { return on ? "yes" : "no"; }

std::string repLines(const Desk& desk) {
  if (!desk.rep()) return "";
  return fmt::format("seed {}\nhash {:016x}\nyards {:.2f}\n", desk.rep()->tape.seed,
                     desk.rep()->tape.record.hash, desk.rep()->tape.record.yards);
}

}  // namespace

std::string tellingOf(const Desk& desk, const std::map<std::string, PageRect>& places,
                      const Smoothness& smoothness) {
  std::string text = repLines(desk);
  const std::size_t cells = desk.study() ? cellsOf(*desk.study()) : 0;
  text += fmt::format(
      "time {:.3f}\nplaying {}\nselected {}\nunsaved {}\nfile {}\nundo {}\nheld {}\ndifference {}\n",
      desk.playback.time(), yes(desk.playback.playing()), desk.view.selected, yes(desk.document().unsaved()),
      desk.document().file(), desk.document().undoWords(), yes(desk.held() != nullptr), desk.difference());
  text += fmt::format("notice {}\nleaving {}\nbusy {}\nstudy {}\ncells {}\nstudied {}\n", desk.notice(),
                      yes(desk.leaving().has_value()), yes(desk.busy()), yes(desk.view.study_page), cells,
                      yes(desk.study() && desk.study()->done()));
  text += fmt::format("frames {}\nworst_ms {:.1f}\nfps {:.1f}\n", smoothness.frames, smoothness.worst_ms,
                      smoothness.playing_s > 0.0 ? smoothness.playing_frames / smoothness.playing_s : 0.0);
  for (const auto& [name, box] : places) {
    text += fmt::format("place {:.0f} {:.0f} {:.0f} {:.0f} {}\n", box.x, box.y, box.width, box.height, name);
  }
  return text;
}

}  // namespace gapsound
