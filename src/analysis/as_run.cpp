#include "analysis/as_run.hpp"

namespace gapsound {
namespace {

bool kicks(const BlockJob& job) { return job.kind == BlockKind::kick || job.kind == BlockKind::log; }

}  // namespace

int runnerOf(const Tape& tape) { return tape.record.kept ? tape.setup.passer : tape.setup.carrier; }

Setup asRun(const Tape& tape) {
  Setup setup = tape.setup;
  if (!tape.record.kept) return setup;
  setup.carrier = setup.passer;
  setup.run.aim_x = setup.read.keep_aim_x;
  if (setup.run.aim_x * setup.direction > 0.0) return setup;
  setup.direction = -setup.direction;
  for (Man& man : setup.men) {
    if (kicks(man.block)) man.block.kind = BlockKind::lead;
  }
  return setup;
}

}  // namespace gapsound
