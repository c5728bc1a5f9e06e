#include "football/faults.hpp"

namespace gapsound {

const std::vector<FaultFacts>& faultTable() {
  using K = FaultKind;
  static const std::vector<FaultFacts> table = {
      {K::kicked_out, "kicked_out", "yd", 1.0, 3.0, "end", "end turned out by the kick block"},
      {K::washed, "washed", "yd", 2.0, 4.0, "line", "washed down the line"},
      {K::reached, "reached", "yd", 0.5, 2.0, "line", "hooked, lost his outside"},
      {K::upfield, "upfield", "yd", 1.5, 4.0, "line", "too far upfield"},
      {K::crossed_inside, "crossed_inside", "yd", 1.0, 3.0, "line", "crossed the blocker's face inside"},
      {K::scrape_wide, "scrape_wide", "yd", 2.0, 6.0, "backer", "scrapes too wide"},
      {K::scrape_late, "scrape_late", "s", 0.3, 2.0, "backer", "scrapes late"},
      {K::wrong_key, "wrong_key", "share", 1.0, 1.0, "level2", "reads the wrong key"},
      {K::no_fold, "no_fold", "share", 1.0, 1.0, "folder", "does not fold"},
      {K::over_run, "over_run", "yd", 2.0, 6.0, "fitter", "over-runs the ball"},
      {K::too_deep, "too_deep", "yd", 2.0, 6.0, "fitter", "sets his fit too deep"},
      {K::inside_lost, "inside_lost", "yd", 1.0, 4.0, "edge", "loses the edge to the inside"},
      {K::too_fast, "too_fast", "yd/s", 2.0, 6.0, "downhill", "comes downhill too fast"},
      {K::too_slow, "too_slow", "yd/s", 2.0, 6.0, "downhill", "comes downhill too slowly"},
      {K::late_read, "late_read", "s", 0.3, 2.0, "defender", "reads late"},
      {K::flowed, "flowed", "share", 1.0, 1.0, "behind", "flows with the ball, nobody stays behind"},
      {K::missed_tackle, "missed_tackle", "share", 1.0, 1.0, "defender", "misses his first tackle"},
      {K::whiff, "whiff", "share", 1.0, 1.0, "blocker", "misses his block"},
      {K::late_pull, "late_pull", "s", 0.3, 2.0, "puller", "pulls late"},
      {K::early_climb, "early_climb", "share", 1.0, 1.0, "climber", "leaves the double team early"},
  };
  return table;
}

const FaultFacts& factsOf(FaultKind kind) { return faultTable()[static_cast<std::size_t>(kind)]; }

std::optional<FaultKind> faultNamed(std::string_view name) {
  for (const FaultFacts& facts : faultTable()) {
    if (facts.name == name) return facts.kind;
  }
  return std::nullopt;
}

}  // namespace gapsound
