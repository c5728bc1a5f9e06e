#include "scenario/check.hpp"

#include <fmt/format.h>

#include "base/error.hpp"
#include "cli/print.hpp"
#include "cli/session.hpp"
#include "cli/verbs.hpp"

namespace gapsound {
namespace {

Answer gapAnswer(const GapOwner& gap) {
  if (gap.owners.empty()) return {{"gap", gap.gap}, {"owner", nullptr}};
  return {{"gap", gap.gap}, {"owner", fmt::format("{}", fmt::join(gap.owners, "/"))}};
}

Answer answerFor(const Setup& setup) {
  Answer gaps = Answer::array();
  for (const GapOwner& gap : gapsOf(setup)) gaps.push_back(gapAnswer(gap));
  return {{"valid", true}, {"problems", Answer::array()}, {"gaps", gaps}, {"concerns", concernsOf(setup)}};
}

Answer answerFor(const InputError& error) {
  const std::string message = error.value() + "; allowed: " + error.allowed();
  return {{"valid", false}, {"problems", {{{"path", error.path()}, {"message", message}}}}, {"gaps", Answer::array()},
          {"concerns", Answer::array()}};
}

void printWords(const Setup& setup) {
  const auto gaps = gapsOf(setup);
  fmt::print("{}\nlegal; {} gaps to fit\n\n{:<8}{}\n", setup.title, gaps.size(), "gap", "owner");
  for (const GapOwner& gap : gaps) {
    fmt::print("{:<8}{}\n", gap.gap, gap.owners.empty() ? "nobody" : fmt::format("{}", fmt::join(gap.owners, ", ")));
  }
  for (const auto& concern : concernsOf(setup)) fmt::print("\n{}", concern);
  fmt::print("\n");
}

}  // namespace

int runCheck(const PlayOptions& options) {
  const Model model = modelFor(options.model);
  try {
    const Setup setup = setupFor(options.file, options.changes, model);
    if (options.json) {
      printAnswer(answerFor(setup));
    } else {
      printWords(setup);
    }
    return 0;
  } catch (const InputError& error) {
    if (options.json) printAnswer(answerFor(error));
    throw;
  }
}

}  // namespace gapsound
