#include "study/turns.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "base/error.hpp"
#include "scenario/resolve.hpp"
#include "scenario/start.hpp"

namespace gapsound {
namespace {

constexpr double kSafetyDepth = 3.0, kBackerDepth = 1.0, kLeastDepth = 3.0,
                 kDownhill = 2.0;  // yd, yd, yd, yd/s
constexpr double kSlowest = 3.0;   // yd/s

/// Collects other calls of one scenario.
class Calls {
 public:
  Calls(const Scenario& scenario, const Library& library, const Model& model)
      : scenario_(scenario), library_(library), model_(model), look_(lookAtSnap(scenario, library, model)) {}

  std::vector<OtherCall> all() {
    for (const Man& man : look_.men)
      if (!man.attacks) standing(man);
    for (const int level : {2, 3}) fitting(level);
    words();
    movements();
    return std::move(calls_);
  }

 private:
  /// Resolves the changed scenario; what is not allowed there is no other call.
  void add(OtherCall call, const Scenario& changed) {
    try {
      call.look = lookAtSnap(changed, library_, model_);
      calls_.push_back(std::move(call));
    } catch (const InputError&) {
    }
  }

  void depth(const Man& man, double by) {
    const double to = man.spot.y + by;
    if (to < kLeastDepth) return;
    Scenario changed = scenario_;
    ManSettings& settings = changed.players[man.drawn];
    settings.y.reset();
    settings.depth_yd = to;
    add({"players." + man.drawn + ".depth_yd",
         fmt::format("{:.1f}", to),
         fmt::format("{} at {:.1f} yd, not {:.1f}", man.id, to, man.spot.y),
         man.fit.level,
         1,
         {}},
        changed);
  }

  void downhill(const Man& man, double by) {
    const double to = std::min(man.fit.downhill_yps + by, man.body.top_speed);
    if (to < kSlowest || std::abs(to - man.fit.downhill_yps) < 0.5) return;
    Scenario changed = scenario_;
    changed.players[man.drawn].downhill_yps = to;
    add({"players." + man.drawn + ".downhill_yps",
         fmt::format("{:.1f}", to),
         fmt::format("{} downhill at {:.1f} yd/s, not {:.1f}", man.id, to, man.fit.downhill_yps),
         3,
         1,
         {}},
        changed);
  }

  void standing(const Man& man) {
    const bool safety = man.fit.level == 3 && man.group != Group::corner;
    if (man.fit.level == 2)
      for (const double by : {-kBackerDepth, kBackerDepth}) depth(man, by);
    if (!safety) return;
    for (const double by : {-kSafetyDepth, kSafetyDepth}) depth(man, by);
    for (const double by : {-kDownhill, kDownhill}) downhill(man, by);
  }

  void fitting(int level) {
    Scenario changed = scenario_;
    FitOff& now = changed.defense.fit_off[static_cast<std::size_t>(level - 1)];
    now = now == FitOff::call ? FitOff::man_in_front : FitOff::call;
    const char* value = now == FitOff::call ? "call" : "man_in_front";
    const char* said = now == FitOff::call ? "runs to its call" : "fits off the man in front";
    add({fmt::format("defense.fit_off.level{}", level),
         value,
         fmt::format("level {} {}", level, said),
         level,
         2,
         {}},
        changed);
  }

  void words() {
    Scenario other = scenario_;
    other.defense.structure_left.reset();
    other.defense.structure_right.reset();
    other.defense.structure = look_.structure == "box" ? "spill" : "box";
    add({"defense.call.structure",
         other.defense.structure,
         fmt::format("{}, not {}", other.defense.structure, look_.structure),
         0,
         3,
         {}},
        other);
    for (const char* word : {"overlap", "fold", "shoot", "hang"}) {
      if (scenario_.defense.bs_backer == word) continue;
      Scenario changed = scenario_;
      changed.defense.bs_backer = word;
      add({"defense.call.bs_backer",
           word,
           fmt::format("backside backer {}, not {}", word, scenario_.defense.bs_backer),
           2,
           2,
           {}},
          changed);
    }
  }

  void movements() {
    const auto front = std::find_if(library_.fronts.begin(), library_.fronts.end(),
                                    [&](const Front& f) { return f.id == look_.front; });
    if (front == library_.fronts.end()) return;
    for (const std::string& word : movementNames(*front)) {
      if (word == scenario_.defense.movement) continue;
      Scenario changed = scenario_;
      changed.defense.movement = word;
      add({"defense.call.movement",
           word,
           fmt::format("movement {}, not {}", word, scenario_.defense.movement),
           1,
           3,
           {}},
          changed);
    }
  }

  const Scenario& scenario_;
  const Library& library_;
  const Model& model_;
  Setup look_;
  std::vector<OtherCall> calls_;
};

}  // namespace

std::vector<OtherCall> otherCalls(const Scenario& scenario, const Library& library, const Model& model) {
  return Calls(scenario, library, model).all();
}

Setup lookAtSnap(const Scenario& scenario, const Library& library, const Model& model) {
  Scenario before = scenario;
  if (before.start && namesLook(before)) before.start.reset();
  Setup look = resolve(before, library, model);
  look.opening.reset();
  return look;
}

}  // namespace gapsound
