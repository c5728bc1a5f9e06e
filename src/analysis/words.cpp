#include "analysis/words.hpp"

#include <fmt/format.h>

namespace gapsound {

std::string_view saidOf(EndState state) {
  switch (state) {
    case EndState::open:
      return "was not blocked yet";
    case EndState::spilled:
      return "spilled the kick";
    case EndState::kicked:
      return "was kicked out";
    case EndState::boxed_firm:
      return "set a firm edge";
    case EndState::boxed_wide:
      return "set the edge too wide";
    case EndState::washed:
      return "was washed inside";
    case EndState::reached:
      return "was reached";
    case EndState::logged:
      return "was logged";
    case EndState::upfield:
      return "ran upfield";
    case EndState::crossed_inside:
      return "crossed inside";
    case EndState::pinned:
      return "was pinned inside";
  }
  return "";
}

std::string_view saidOf(BackerState state) {
  switch (state) {
    case BackerState::reading:
      return "was still reading";
    case BackerState::over_top:
      return "went over the top";
    case BackerState::inside_fit:
      return "fitted inside";
    case BackerState::spilled_wrapper:
      return "spilled his blocker";
    case BackerState::boxed_wrapper:
      return "turned his blocker in";
    case BackerState::kicked_out:
      return "was turned out by his blocker";
    case BackerState::too_wide:
      return "was too wide";
    case BackerState::under_pile:
      return "ran under the double team";
    case BackerState::shot_hit:
      return "shot his gap and hit";
    case BackerState::shot_miss:
      return "shot his gap and missed";
    case BackerState::late:
      return "was late";
  }
  return "";
}

bool isLost(EndState state) {
  return state != EndState::open && state != EndState::spilled && state != EndState::boxed_firm;
}

bool isLost(BackerState state) {
  switch (state) {
    case BackerState::kicked_out:
    case BackerState::too_wide:
    case BackerState::under_pile:
    case BackerState::shot_miss:
    case BackerState::late:
      return true;
    default:
      return false;
  }
}

namespace {

struct Deed {
  std::string_view now, then;
};

Deed deedOf(Fit fit) {
  switch (fit) {
    case Fit::called:
      return {"plays his call", "played his call"};
    case Fit::over_top:
      return {"goes over the top", "went over the top"};
    case Fit::inside:
      return {"fits inside the end", "fitted inside the end"};
    case Fit::new_edge:
      return {"becomes the edge", "became the edge"};
    case Fit::outside_half:
      return {"takes the outside half of the lane", "took the outside half of the lane"};
    case Fit::inside_half:
      return {"takes the inside half of the lane", "took the inside half of the lane"};
    case Fit::hold:
      return {"holds his ground", "held his ground"};
    case Fit::under:
      return {"goes underneath the first backer", "went underneath the first backer"};
    case Fit::tight_double:
      return {"goes over the double team", "went over the double team"};
    case Fit::fold:
      return {"folds inside", "folded inside"};
    case Fit::shoot:
      return {"shoots the gap", "shot the gap"};
    case Fit::hang:
      return {"hangs behind the ball", "hung behind the ball"};
    case Fit::alley:
      return {"fills the alley", "filled the alley"};
    case Fit::insert:
      return {"inserts inside the first backer", "inserted inside the first backer"};
    case Fit::cutback:
      return {"stays square for the cutback", "stayed square for the cutback"};
    case Fit::cutback_window:
      return {"comes forward into the cutback window", "came forward into the cutback window"};
    case Fit::replace_gap:
      return {"takes the gap a mate has left", "took the gap a mate had left"};
    case Fit::force_set:
      return {"sets the force", "set the force"};
    case Fit::force_tight:
      return {"squeezes the force in", "squeezed the force in"};
    case Fit::deep:
      return {"stays deep", "stayed deep"};
    case Fit::replace_force:
      return {"takes the edge for the force", "took the edge for the force"};
    case Fit::over_line:
      return {"goes over the top of the lineman in front", "went over the top of the lineman in front"};
    case Fit::slow:
      return {"stays slow behind the lineman in front", "stayed slow behind the lineman in front"};
  }
  return {};
}

}  // namespace

std::string_view saidOf(Fit fit) { return deedOf(fit).then; }
std::string_view setsOutTo(Fit fit) { return deedOf(fit).now; }

std::string_view saidOf(FaultKind kind) {
  switch (kind) {
    case FaultKind::kicked_out:
      return "came too high and let himself be kicked out";
    case FaultKind::washed:
      return "let himself be washed down the line";
    case FaultKind::reached:
      return "gave up his outside and let himself be reached";
    case FaultKind::upfield:
      return "ran too far upfield";
    case FaultKind::crossed_inside:
      return "crossed the blocker's face to the inside";
    case FaultKind::scrape_wide:
      return "scraped too wide";
    case FaultKind::scrape_late:
      return "scraped late";
    case FaultKind::wrong_key:
      return "read the back instead of his key";
    case FaultKind::no_fold:
      return "did not fold";
    case FaultKind::over_run:
      return "over-ran the ball";
    case FaultKind::too_deep:
      return "set his fit too deep";
    case FaultKind::inside_lost:
      return "lost the edge to the inside";
    case FaultKind::too_fast:
      return "came downhill too fast";
    case FaultKind::too_slow:
      return "came downhill too slowly";
    case FaultKind::late_read:
      return "read late";
    case FaultKind::flowed:
      return "flowed with the ball";
    case FaultKind::missed_tackle:
      return "let a tackle go";
    case FaultKind::whiff:
      return "missed his block";
    case FaultKind::late_pull:
      return "pulled late";
    case FaultKind::early_climb:
      return "left the double team early";
  }
  return "";
}

std::string_view saidOf(Relation relation) {
  switch (relation) {
    case Relation::designed:
      return "hit the designed lane";
    case Relation::inside:
      return "ran inside the end";
    case Relation::bounce:
      return "bounced";
    case Relation::cutback:
      return "cut back";
  }
  return "";
}

std::string yards(double value) { return fmt::format("{:.1f} yd", value); }

}  // namespace gapsound
