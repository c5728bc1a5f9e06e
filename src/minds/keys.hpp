#pragma once
#include "base/model.hpp"
#include "minds/glimpse.hpp"
#include "minds/intent.hpp"
#include "minds/team_plan.hpp"

namespace gapsound {

/// How much a man's read rests on each thing he can see. Weights are shares of a full sign.
struct KeyWeights {
  double back = 0.0;     // path of the deepest back
  double pull = 0.0;     // linemen and backs crossing behind the line
  double line = 0.0;     // the rest of the line stepping sideways
  double key_man = 0.0;  // his own key blocking down on his side
};

/// Displacement across with a little of the present velocity, yd: what the eye takes for "he is going there".
[[nodiscard]] double headingX(const Glimpse& glimpse, int man);

/// Evidence for a run's side from observed movement alone: > 0 to the offense's right. Classified from
/// displacement and velocity in the glimpse; counter steps, arc releases and bluffs count as what they look
/// like.
[[nodiscard]] double evidenceOf(const Glimpse& glimpse, const KeyWeights& weights, int key_man);

/// The quarterback is seen to run with the ball: upfield, or sideways away from the back.
[[nodiscard]] bool keeperRuns(const Glimpse& glimpse);

/// The back a defense watches: the ball carrier once he is past the exchange, a quarterback once he is seen
/// to run, else the deepest back.
[[nodiscard]] int watchedBack(const Glimpse& glimpse);

/// A read in progress: concluded no earlier than `due_s`, corrected when the evidence turns round.
struct ReadProgress {
  double due_s = 0.7;           // earliest conclusion, s after the snap
  double against_since = -1.0;  // since when the evidence has contradicted him, s; -1 it does not
};
/// Updates `reading.direction`. A man who misread turns after the evidence has been against him for
/// model.read_turn_s.
void updateRead(const Glimpse& glimpse, const Model& model, double evidence, ReadProgress& progress,
                Reading& reading);

/// State of the edge man as anybody can see it: contact, helmets, place. `direction`: side of the run.
[[nodiscard]] EndState seenEnd(const Glimpse& glimpse, const Model& model, const TeamPlan::Side& side,
                               Structure structure, int direction);
/// Somebody of the line or a second back crosses behind the line.
[[nodiscard]] bool pullerSeen(const Glimpse& glimpse);
/// State of a lineman likewise; `direction` is the side the run goes to.
[[nodiscard]] LineState seenLine(const Glimpse& glimpse, const Model& model, int lineman, int direction);
/// State of the first backer likewise: a shot is told by where he and the ball are, a man under the pile by
/// the lineman who is held outside him, a late one by still being at his spot when the ball is nearly at the
/// line.
[[nodiscard]] BackerState seenBacker(const Glimpse& glimpse, const Model& model, const TeamPlan::Side& side,
                                     int direction);
/// State of the man with force likewise; `reading` until he is down.
[[nodiscard]] ForceState seenForce(const Glimpse& glimpse, const Model& model, const TeamPlan::Side& side,
                                   int direction);

}  // namespace gapsound
