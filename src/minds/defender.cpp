#include "minds/defender.hpp"

#include "minds/pursuit.hpp"
#include "minds/traffic.hpp"

namespace gapsound {
namespace {

KeyWeights weightsOf(const DefenderView& v) {
  const Model& m = v.model;
  if (amountOf(v.faults, FaultKind::wrong_key) > 0.0) return {.back = 1.0};
  switch (v.job.level) {
    case 1:
      return {.back = 0.3, .pull = m.key_pull, .line = 1.0, .key_man = 0.6};
    case 2:
      if (v.job.key_style == KeyStyle::single) return {.back = 0.2, .pull = m.key_pull, .line = m.key_line};
      return {.back = m.key_back, .pull = m.key_pull, .line = m.key_line};
    default:
      return {.back = m.key_back_deep, .pull = 0.5 * m.key_pull, .line = 0.3, .key_man = m.key_man_deep};
  }
}

}  // namespace

double amountOf(const std::vector<Fault>& faults, FaultKind kind) {
  for (const Fault& f : faults)
    if (f.kind == kind) return f.amount;
  return 0.0;
}

double erringBy(const DefenderView& v, DefenderMemory& memory, FaultKind kind) {
  const double amount = amountOf(v.faults, kind);
  if (amount > 0.0) memory.erred |= 1U << static_cast<unsigned>(kind);
  return amount;
}

namespace {

// A man of the second level with a part outside the box plays it as the third level does, once he has read.
bool playsOutside(const DefenderView& v, const DefenderMemory& memory) {
  if (memory.reading.direction == 0) return false;
  const FitRole role = roleFor(v.job, memory.reading.direction);
  return role == FitRole::force || role == FitRole::alley;
}

Intent byLevel(const DefenderView& v, DefenderMemory& memory) {
  if (v.job.level > 1 && isOnHisMan(v, memory)) return coverMan(v, memory);
  updateRead(v.glimpse, v.model, evidenceOf(v.glimpse, weightsOf(v), v.job.key), memory.read, memory.reading);
  const bool reads = v.glimpse.clock() >= memory.read.due_s;
  if (reads) static_cast<void>(erringBy(v, memory, FaultKind::wrong_key));
  switch (v.job.level) {
    case 1:
      return decideLineman(v, memory);
    case 2:
      return playsOutside(v, memory) ? decideSecondary(v, memory) : decideBacker(v, memory);
    default:
      return decideSecondary(v, memory);
  }
}

}  // namespace

Intent decideDefender(const DefenderView& v, DefenderMemory& memory) {
  Intent intent = byLevel(v, memory);
  if (v.job.level > 1 && v.glimpse.self().engaged == kNobody)
    intent.want = roundTraffic(v.glimpse, v.model, intent.want);
  return intent;
}

}  // namespace gapsound
