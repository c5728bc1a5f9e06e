#include "scenario/assignments.hpp"

#include <algorithm>
#include <numeric>
#include <utility>

namespace gapsound {
namespace {

constexpr std::pair<BlockKind, std::string_view> kWords[] = {
    {BlockKind::none, "none"},     {BlockKind::base, "base"},   {BlockKind::down, "down"},
    {BlockKind::back, "back"},     {BlockKind::reach, "reach"}, {BlockKind::scoop, "scoop"},
    {BlockKind::cutoff, "cutoff"}, {BlockKind::post, "post"},   {BlockKind::drive, "drive"},
    {BlockKind::combo, "combo"},   {BlockKind::kick, "kick"},   {BlockKind::log, "log"},
    {BlockKind::wrap, "wrap"},     {BlockKind::lead, "lead"},   {BlockKind::insert, "insert"},
    {BlockKind::hinge, "hinge"},   {BlockKind::climb, "climb"}, {BlockKind::arc, "arc"},
    {BlockKind::fan, "fan"},       {BlockKind::stalk, "stalk"}, {BlockKind::crack, "crack"},
    {BlockKind::wall, "wall"},     {BlockKind::fake, "fake"}};

std::string idOf(const Setup& setup, int man) {
  return man == kNobody ? "" : setup.men[static_cast<std::size_t>(man)].id;
}

std::string wordOf(PullStyle pull) {
  if (pull == PullStyle::open) return "open";
  if (pull == PullStyle::skip) return "skip";
  return pull == PullStyle::flat ? "flat" : "";
}

Assignment assignmentOf(const Setup& setup, int man) {
  const BlockJob& job = setup.men[static_cast<std::size_t>(man)].block;
  Assignment line;
  line.player = idOf(setup, man);
  line.block = man == setup.carrier ? "runs" : man == setup.passer ? "snaps" : std::string(wordOf(job.kind));
  line.target = idOf(setup, job.target);
  line.with = idOf(setup, job.partner);
  line.climbs_to = idOf(setup, job.climb_to);
  line.pull = wordOf(job.pull);
  line.leaves = job.leaves;
  return line;
}

bool isLinesman(const Man& man) {
  return man.group == Group::off_tackle || man.group == Group::guard || man.group == Group::center ||
         man.group == Group::tight_end;
}

}  // namespace

std::string_view wordOf(BlockKind kind) {
  for (const auto& [known, word] : kWords) {
    if (known == kind) return word;
  }
  return "";
}

std::vector<Assignment> assignmentsOf(const Setup& setup) {
  std::vector<int> order(kOffense);
  std::iota(order.begin(), order.end(), 0);
  const auto turn = [&](int i) {
    const Man& man = setup.men[static_cast<std::size_t>(i)];
    return isLinesman(man) ? std::pair{0, -setup.direction * man.spot.x} : std::pair{1, 0.0};
  };
  std::stable_sort(order.begin(), order.end(), [&](int a, int b) { return turn(a) < turn(b); });
  std::vector<Assignment> lines;
  lines.reserve(order.size());
  for (const int man : order) lines.push_back(assignmentOf(setup, man));
  return lines;
}

}  // namespace gapsound
