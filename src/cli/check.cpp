#include "scenario/check.hpp"

#include <fmt/format.h>

#include "base/error.hpp"
#include "cli/print.hpp"
#include "cli/session.hpp"
#include "cli/verbs.hpp"
#include "scenario/assignments.hpp"
#include "scenario/bracket.hpp"

namespace gapsound {
namespace {

Answer gapAnswer(const GapOwner& gap) {
  if (gap.owners.empty()) return {{"gap", gap.gap}, {"owner", nullptr}};
  return {{"gap", gap.gap}, {"owner", fmt::format("{}", fmt::join(gap.owners, "/"))}};
}

Answer wordAnswer(const std::string& word) { return word.empty() ? Answer(nullptr) : Answer(word); }

Answer assignmentAnswer(const Assignment& a) {
  return {{"player", a.player},
          {"block", a.block},
          {"target", wordAnswer(a.target)},
          {"with", wordAnswer(a.with)},
          {"climbs_to", wordAnswer(a.climbs_to)},
          {"leaves", a.leaves},
          {"pull", wordAnswer(a.pull)}};
}

Answer bracketAnswer(const Bracket& b) {
  return {{"player", b.blocker},
          {"on", wordAnswer(b.on)},
          {"inside", wordAnswer(b.inside)},
          {"outside", wordAnswer(b.outside)}};
}

Answer answerFor(const Setup& setup, bool assignments) {
  Answer gaps = Answer::array();
  for (const GapOwner& gap : gapsOf(setup)) gaps.push_back(gapAnswer(gap));
  Answer answer = {{"valid", true},
                   {"problems", Answer::array()},
                   {"gaps", gaps},
                   {"brackets", Answer::array()},
                   {"concerns", concernsOf(setup)},
                   {"notes", setup.notes}};
  for (const Bracket& b : bracketsOf(setup)) answer["brackets"].push_back(bracketAnswer(b));
  if (!assignments) return answer;
  answer["assignments"] = Answer::array();
  for (const Assignment& a : assignmentsOf(setup)) answer["assignments"].push_back(assignmentAnswer(a));
  return answer;
}

Answer answerFor(const InputError& error) {
  const std::string message = error.value() + "; allowed: " + error.allowed();
  return {{"valid", false},
          {"problems", {{{"path", error.path()}, {"message", message}}}},
          {"gaps", Answer::array()},
          {"concerns", Answer::array()}};
}

/// "drive DT with RG, then W".
std::string wordsFor(const Assignment& a) {
  std::string words = a.block == "none" ? "free" : a.block;
  if (!a.target.empty()) words += " " + a.target;
  if (!a.with.empty()) words += " with " + a.with;
  const bool climbs = !a.climbs_to.empty() && a.climbs_to != a.target;
  if (climbs) words += (a.leaves ? ", climbs to " : ", then ") + a.climbs_to;
  if (!a.pull.empty()) words += fmt::format(" ({} pull)", a.pull);
  return words;
}

void printAssignments(const Setup& setup) {
  fmt::print("\n\n{:<8}{}\n", "man", "job");
  for (const Assignment& a : assignmentsOf(setup)) fmt::print("{:<8}{}\n", a.player, wordsFor(a));
}

void printBrackets(const Setup& setup) {
  const auto brackets = bracketsOf(setup);
  if (brackets.empty()) return;
  const auto word = [](const std::string& id) { return id.empty() ? std::string("nobody") : id; };
  fmt::print("\n{:<8}{:<10}{:<10}outside\n", "comes", "on", "inside");
  for (const Bracket& b : brackets)
    fmt::print("{:<8}{:<10}{:<10}{}\n", b.blocker, word(b.on), word(b.inside), word(b.outside));
}

void printWords(const Setup& setup, bool assignments) {
  const auto gaps = gapsOf(setup);
  fmt::print("{}\nlegal; {} gaps to fit\n\n{:<14}{}\n", setup.title, gaps.size(), "gap", "owner");
  for (const GapOwner& gap : gaps) {
    fmt::print("{:<14}{}\n", gap.gap,
               gap.owners.empty() ? "nobody" : fmt::format("{}", fmt::join(gap.owners, ", ")));
  }
  printBrackets(setup);
  for (const auto& concern : concernsOf(setup)) fmt::print("\n{}", concern);
  for (const auto& note : setup.notes) fmt::print("\n{}", note);
  if (assignments) printAssignments(setup);
  fmt::print("\n");
}

}  // namespace

int runCheck(const CheckOptions& options) {
  const Model model = modelFor(options.model);
  try {
    const Setup setup = setupFor(options.file, options.changes, model);
    if (options.json) {
      printAnswer(answerFor(setup, options.assignments));
    } else {
      printWords(setup, options.assignments);
    }
    return 0;
  } catch (const InputError& error) {
    if (options.json) printAnswer(answerFor(error));
    throw;
  }
}

}  // namespace gapsound
