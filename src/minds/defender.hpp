#pragma once
#include <cstdint>
#include <vector>

#include "athlete/body.hpp"
#include "base/model.hpp"
#include "minds/glimpse.hpp"
#include "minds/intent.hpp"
#include "minds/keys.hpp"
#include "minds/team_plan.hpp"

namespace gapsound {

/// What a defender carries from one decision to the next, and what the snap's luck made of him.
struct DefenderMemory {
  double first_step_s = 0.2;  // when he first moves, s
  bool shoots = false;        // on this snap he shoots his gap
  double get_off = 1.0;       // how hard he comes off the ball, 1 = as usual
  bool left_his_man = false;  // man coverage: his eyes have come off the receiver
  ReadProgress read;
  Reading reading;
  std::uint32_t erred = 0;  // bit k: a fault of kind k has changed what he does
};

/// Everything a defender may decide from: the picture, his own call, his own body. Borrowed for one decision.
struct DefenderView {
  const Glimpse& glimpse;
  const Model& model;
  const Body& body;
  const FitJob& job;
  const TeamPlan& plan;
  const std::vector<Fault>& faults;
};

/// Amount of a fault laid on a man, 0 when he has none of that kind.
[[nodiscard]] double amountOf(const std::vector<Fault>& faults, FaultKind kind);

/// The same, noted as having changed what he does.
[[nodiscard]] double erringBy(const DefenderView& view, DefenderMemory& memory, FaultKind kind);

/// He has a receiver in man coverage and nothing has told him yet that it is a run.
[[nodiscard]] bool isOnHisMan(const DefenderView& view, DefenderMemory& memory);
/// On top of the receiver and inside of him, with his eyes on nobody else.
[[nodiscard]] Intent coverMan(const DefenderView& view, const DefenderMemory& memory);

[[nodiscard]] Intent decideDefender(const DefenderView& view, DefenderMemory& memory);

// The three levels; decideDefender chooses.
[[nodiscard]] Intent decideLineman(const DefenderView& view, DefenderMemory& memory);
[[nodiscard]] Intent decideBacker(const DefenderView& view, DefenderMemory& memory);
[[nodiscard]] Intent decideSecondary(const DefenderView& view, DefenderMemory& memory);

}  // namespace gapsound
