#include "scenario/given_jobs.hpp"

#include <fmt/format.h>

#include <utility>

#include "base/error.hpp"
#include "base/nearest.hpp"
#include "scenario/assignments.hpp"

namespace gapsound {
namespace {

constexpr BlockKind kGivable[] = {BlockKind::base,  BlockKind::down,   BlockKind::back,   BlockKind::reach,
                                  BlockKind::scoop, BlockKind::cutoff, BlockKind::kick,   BlockKind::log,
                                  BlockKind::wrap,  BlockKind::lead,   BlockKind::insert, BlockKind::hinge,
                                  BlockKind::climb, BlockKind::arc,    BlockKind::stalk,  BlockKind::crack,
                                  BlockKind::wall};
constexpr std::pair<const char*, FitRole> kPartWords[] = {{"edge", FitRole::edge},
                                                          {"back_edge", FitRole::back_edge},
                                                          {"interior", FitRole::interior},
                                                          {"first_backer", FitRole::first_backer},
                                                          {"fill_backer", FitRole::fill_backer},
                                                          {"overlap_backer", FitRole::overlap_backer},
                                                          {"force", FitRole::force},
                                                          {"alley", FitRole::alley},
                                                          {"cutback", FitRole::cutback},
                                                          {"corner", FitRole::corner},
                                                          {"out", FitRole::out}};

[[noreturn]] void refuse(const Scenario& s, const std::string& path, const std::string& word,
                         const std::string& allowed) {
  throw InputError(s.source, path, "\"" + word + "\"", allowed);
}

Man& manAt(Setup& setup, int man) { return setup.men[static_cast<std::size_t>(man)]; }

bool isPartOfLine(FitRole role) {
  return role == FitRole::edge || role == FitRole::back_edge || role == FitRole::interior;
}

/// Parts the others act on: one man has them.
bool isOneMans(FitRole role) {
  return role == FitRole::edge || role == FitRole::back_edge || role == FitRole::first_backer ||
         role == FitRole::force || role == FitRole::alley;
}

void takePart(Setup& setup, int man, FitRole FitJob::*side, FitRole part) {
  FitRole& own = manAt(setup, man).fit.*side;
  if (own == part) return;
  for (int other = kOffense; isOneMans(part) && other < kMen; ++other) {
    if (manAt(setup, other).fit.*side == part) manAt(setup, other).fit.*side = own;
  }
  own = part;
}

void givePart(Setup& setup, int man, FitRole FitJob::*side, const std::string& word, const Scenario& scenario,
              const std::string& path) {
  const FitRole part = partNamed(word, scenario, path);
  const int level = manAt(setup, man).fit.level;
  if (isPartOfLine(part) != (level == 1))
    refuse(scenario, path, word,
           fmt::format("a part {} the line: {}", level == 1 ? "of" : "behind",
                       fmt::join(partNames(level), ", ")));
  takePart(setup, man, side, part);
}

/// What is left of a double team is his mate alone on their man.
void leaveDouble(Setup& setup, int man) {
  BlockJob& job = manAt(setup, man).block;
  if (job.partner == kNobody) return;
  BlockJob& mate = manAt(setup, job.partner).block;
  mate.partner = kNobody;
  mate.leaves = false;
  if (mate.kind == BlockKind::combo) mate.kind = BlockKind::base;
}

void giveBlock(Setup& setup, int man, const std::string& word, const Scenario& scenario,
               const std::string& path) {
  const BlockKind kind = blockNamed(word, scenario, path);
  if (manAt(setup, man).block.kind == BlockKind::none)
    refuse(scenario, path, word, "a blocker; he has the ball or takes it");
  BlockJob& job = manAt(setup, man).block;
  const bool pulls = kind == BlockKind::kick || kind == BlockKind::log || kind == BlockKind::wrap;
  leaveDouble(setup, man);
  BlockJob given;
  given.kind = kind;
  given.target = job.target;
  given.climb_to = job.climb_to;
  const Group group = manAt(setup, man).group;
  const bool lineman = group == Group::guard || group == Group::center || group == Group::off_tackle;
  if (pulls) given.pull = job.pull != PullStyle::none || !lineman ? job.pull : PullStyle::skip;
  if (pulls) given.pull_depth = job.pull_depth;
  job = given;
}

}  // namespace

BlockKind blockNamed(const std::string& word, const Scenario& scenario, const std::string& path) {
  std::vector<std::string> known;
  for (const BlockKind kind : kGivable) {
    if (wordOf(kind) == word) return kind;
    known.emplace_back(wordOf(kind));
  }
  refuse(scenario, path, word, nameHint(word, known));
}

FitRole partNamed(const std::string& word, const Scenario& scenario, const std::string& path) {
  std::vector<std::string> known;
  for (const auto& [name, part] : kPartWords) {
    if (word == name) return part;
    known.emplace_back(name);
  }
  refuse(scenario, path, word, nameHint(word, known));
}

std::vector<std::string> partNames(int level) {
  std::vector<std::string> names;
  for (const auto& [name, part] : kPartWords)
    if (isPartOfLine(part) == (level == 1)) names.emplace_back(name);
  return names;
}

int defenderNamed(const Setup& setup, const std::string& id, const Scenario& scenario,
                  const std::string& path) {
  std::vector<std::string> known;
  for (int i = kOffense; i < kMen; ++i) {
    if (setup.men[static_cast<std::size_t>(i)].id == id) return i;
    known.push_back(setup.men[static_cast<std::size_t>(i)].id);
  }
  refuse(scenario, path, id, nameHint(id, known));
}

void giveJob(Setup& setup, int man, const ManSettings& given, const Scenario& scenario) {
  const std::string path = "/players/" + manAt(setup, man).id, job = path + "/job";
  if (!isOffense(man)) {
    const auto& right = given.job_right ? given.job_right : given.job;
    const auto& left = given.job_left ? given.job_left : given.job;
    if (right) givePart(setup, man, &FitJob::if_right, *right, scenario, job);
    if (left) givePart(setup, man, &FitJob::if_left, *left, scenario, job);
    if (given.on) refuse(scenario, path + "/on", *given.on, "a blocker");
    return;
  }
  if (given.job_left || given.job_right)
    throw InputError(scenario.source, job, "left, right", "one block; a blocker has no sides");
  if (given.job) giveBlock(setup, man, *given.job, scenario, job);
  if (!given.on) return;
  BlockJob& block = manAt(setup, man).block;
  if (block.kind == BlockKind::none) refuse(scenario, path + "/on", *given.on, "a blocker");
  if (!given.job) leaveDouble(setup, man), block.partner = kNobody, block.leaves = false;
  if (block.kind == BlockKind::combo) block.kind = BlockKind::base;
  block.target = defenderNamed(setup, *given.on, scenario, path + "/on");
}

}  // namespace gapsound
