#include <fmt/core.h>

#include "base/error.hpp"
#include "cli/print.hpp"
#include "cli/session.hpp"
#include "cli/verbs.hpp"

namespace gapsound {

int runCheck(const PlayOptions& options) {
  const Session session = sessionFor(options);
  fmt::print("{}\n", session.setup.title);
  return 0;
}

}  // namespace gapsound
