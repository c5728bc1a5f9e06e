#include "app/study_job.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "app/rep.hpp"
#include "base/error.hpp"
#include "cli/session.hpp"
#include "scenario/plan.hpp"
#include "scenario/resolve.hpp"
#include "study/reps.hpp"

namespace gapsound {
namespace {

using Result = decltype(StudyPicture::result);

/// What to play and how to make a picture of what was played.
struct Work {
  std::vector<Setup> setups;
  int seeds = 0;  // of each setup
  std::function<Result(const Rows&)> result;
};

void checkRanges(const StudyOrder& order) {
  for (const SweepRange& range : order.ranges) {
    if (!valuesOf(range).empty()) continue;
    throw InputError("study", range.setting,
                     fmt::format("{:g} to {:g} by {:g}", range.low, range.high, range.step),
                     "from, to and a step above 0, at most 60 values");
  }
}

bool isSafety(const Setup& setup, const std::string& id) {
  const int man = manNamed(setup, id);
  return man != kNobody && setup.men[static_cast<std::size_t>(man)].group == Group::safety;
}

Work sweepWork(const StudyOrder& order, const Model& model) {
  checkRanges(order);
  SweepPlan plan;
  plan.n = order.n;
  std::size_t cells = 1;
  for (const SweepRange& range : order.ranges) {
    plan.axes.push_back(axisOf(range));
    cells *= plan.axes.back().values.size();
  }
  for (std::size_t cell = 0; cell < cells; ++cell) {
    plan.setups.push_back(resolve(sweptLook(order.look, order.ranges, cell), library(), model));
  }
  plan.about_safety = isSafety(plan.setups.front(), order.ranges.front().man);
  const int seeds = plan.seeds();
  auto setups = plan.setups;
  return {std::move(setups), seeds, [plan](const Rows& rows) { return sweepOf(plan, rows); }};
}

Work mistakesWork(const StudyPicture& picture) {
  const auto mistakes = everyMistake(picture.setup, false);
  return {faultSetups(picture.setup, mistakes), picture.order.n,
          [mistakes, look = picture.setup](const Rows& rows) { return faultsOf(look, mistakes, rows); }};
}

/// The run of the look in every way the library blocks it; every front that can stand against all of them.
Plan planOf(const Scenario& look) {
  Plan plan;
  plan.source = look.source;
  plan.title = look.title;
  plan.level = look.level;
  plan.clock = look.clock;
  plan.players = look.players;
  if (const Scheme* scheme = findScheme(library(), look.offense.scheme)) {
    for (const std::string& variant : variantNames(*scheme)) {
      PlanRun run;
      run.name = variant == "base" ? scheme->name : variant;
      run.offense = look.offense, run.field = look.field;
      run.offense.variant = variant;
      plan.runs.push_back(run);
    }
  }
  for (const Front& front : library().fronts) {
    PlanCall call{front.id + "  " + front.name, look.defense};
    call.defense.front = front.id, call.defense.movement = "none";
    plan.calls.push_back(call);
  }
  return plan;
}

/// The setups of one call against every run; none when it cannot be lined up against one of them.
std::vector<Setup> callSetups(const Plan& plan, std::size_t call, const Model& model) {
  std::vector<Setup> setups;
  try {
    for (std::size_t run = 0; run < plan.runs.size(); ++run)
      setups.push_back(resolve(pairWithPlayers(plan, run, call, library(), model), library(), model));
  } catch (const InputError&) {
    setups.clear();
  }
  return setups;
}

Work frontsWork(StudyPicture& picture, const Model& model) {
  Plan all = planOf(picture.order.look);
  std::vector<PlanCall> kept;
  Work work;
  for (std::size_t call = 0; call < all.calls.size(); ++call) {
    auto setups = callSetups(all, call, model);
    if (setups.empty()) continue;
    kept.push_back(all.calls[call]);
    std::move(setups.begin(), setups.end(), std::back_inserter(work.setups));
  }
  all.calls = std::move(kept);
  picture.plan = std::move(all);
  work.seeds = picture.order.n;
  work.result = [plan = picture.plan, setups = work.setups](const Rows& rows) {
    return matrixOf(plan, setups, rows);
  };
  return work;
}

Work workFor(StudyPicture& picture, const Model& model) {
  picture.setup = resolve(picture.order.look, library(), model);
  switch (picture.order.kind) {
    case StudyKind::sweep:
      return sweepWork(picture.order, model);
    case StudyKind::mistakes:
      return mistakesWork(picture);
    case StudyKind::fronts:
      return frontsWork(picture, model);
  }
  throw Error(ExitCode::ourFault, "no such study");
}

void playWork(StudyPicture& picture, const Work& work, const Model& model, const Errand::Stale& stale,
              std::atomic<double>& share, Mailbox<StudyPicture>& box) {
  constexpr int kFirst = 6;
  Rows rows(work.setups.size());
  for (int from = 0, to = std::min(kFirst, work.seeds); from < work.seeds;
       from = to, to = std::min(3 * to, work.seeds)) {
    const auto lots =
        playAll(work.setups, model, static_cast<std::uint64_t>(from) + 1, to - from, 0, [&](double done) {
          share = (from + (to - from) * done) / work.seeds;
          return !stale;
        });
    if (stale) return;
    for (std::size_t cell = 0; cell < lots.size(); ++cell) {
      std::transform(lots[cell].begin(), lots[cell].end(), std::back_inserter(rows[cell]), outcomeOf);
    }
    picture.result = work.result(rows);
    picture.played = picture.order.n * to / work.seeds;
    box.put(picture);
  }
}

const SweepResult* sweepIn(const StudyPicture& picture) { return std::get_if<SweepResult>(&picture.result); }
const FaultResult* faultsIn(const StudyPicture& picture) { return std::get_if<FaultResult>(&picture.result); }
const MatrixResult* matrixIn(const StudyPicture& picture) {
  return std::get_if<MatrixResult>(&picture.result);
}

}  // namespace

std::string findingOf(const StudyPicture& picture) {
  if (!picture.fault.empty()) return picture.fault;
  if (const auto* sweep = sweepIn(picture)) return sweep->sentence;
  if (const auto* faults = faultsIn(picture)) return faults->sentence;
  if (const auto* matrix = matrixIn(picture)) return matrix->sentence;
  return "";
}

std::size_t cellsOf(const StudyPicture& picture) {
  if (const auto* sweep = sweepIn(picture)) return sweep->cells.size();
  if (const auto* faults = faultsIn(picture)) return faults->rows.size();
  if (const auto* matrix = matrixIn(picture)) return matrix->cells.size();
  return 0;
}

Scenario lookOfCell(const StudyPicture& picture, std::size_t cell) {
  Scenario look = picture.order.look;
  if (sweepIn(picture) != nullptr) return sweptLook(look, picture.order.ranges, cell);
  if (const auto* faults = faultsIn(picture)) {
    for (const Mistake& mistake : faults->rows[cell].mistakes)
      look.faults.push_back({picture.setup.men[static_cast<std::size_t>(mistake.man)].id, mistake.fault});
  }
  if (const auto* matrix = matrixIn(picture)) {
    const MatrixCell& pair = matrix->cells[cell];
    look.defense = picture.plan.calls[pair.row].defense;
    look.offense = picture.plan.runs[pair.column].offense;
  }
  return look;
}

std::string wordsOfCell(const StudyPicture& picture, std::size_t cell) {
  if (const auto* faults = faultsIn(picture))
    return "study: " + nameOf(picture.setup, faults->rows[cell].mistakes);
  if (const auto* matrix = matrixIn(picture)) {
    const MatrixCell& pair = matrix->cells[cell];
    return "study: " + matrix->rows[pair.row] + " against " + matrix->columns[pair.column];
  }
  std::string words = "study:";
  const auto* sweep = sweepIn(picture);
  for (std::size_t k = 0; sweep != nullptr && k < picture.order.ranges.size(); ++k) {
    const SweepRange& range = picture.order.ranges[k];
    words += fmt::format(" {} {} {:g}", range.man, range.setting, sweep->cells[cell].at[k]);
  }
  return words;
}

void playStudy(const StudyOrder& order, const Model& model, const Errand::Stale& stale,
               std::atomic<double>& share, Mailbox<StudyPicture>& box) {
  StudyPicture picture;
  picture.order = order;
  try {
    const Work work = workFor(picture, model);
    playWork(picture, work, model, stale, share, box);
  } catch (const Error& error) {
    picture.fault = error.what();
    box.put(picture);
  }
}

}  // namespace gapsound
